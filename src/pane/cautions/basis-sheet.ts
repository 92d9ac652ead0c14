import { sentence } from "../../core/kit/refusal.ts";
import type { Table } from "../../core/kit/tape.ts";
import { NAMESPACE } from "../../functions/declare/cell-function.ts";
import { addressText } from "../../workbook/host.ts";
import type { CellAddress } from "../../workbook/ledger.ts";
import { runs } from "../parts/cells.ts";
import type { Findings, FoundSentence } from "./findings.ts";

export const BASIS_SHEET = "Basis and cautions";

/** A cell holds 32,767 characters; a list of cells stops long before. */
const LONGEST_LIST = 2_000;

/** The worksheet for the file or the engineer: what the numbers rest on, and what to know before using them. */
export function basisRows(found: Findings): Table {
  const cautions = found.inputCautions.length + found.standingCautions.length;
  const rows: string[][] = [
    [BASIS_SHEET],
    [
      "Preliminary figures for planning. The adopted code with its local amendments and a licensed professional decide.",
    ],
    [
      `${count(found.cells, "cell")} with ${NAMESPACE} functions: ${count(found.errors.length, "error")}, ${count(cautions, "caution")}, ${count(found.assumptions.length, "assumption")}.`,
    ],
    [],
    ["Kind", "What", "Functions", "Cells"],
    ...found.errors.map((e) => [`Error ${e.code}`, sentence(e.said), e.fn.name, addressText(e.address)]),
    ...sentences("Caution for these cells", found.inputCautions),
    ...sentences("Caution for every use", found.standingCautions),
    ...sentences("Assumption", found.assumptions),
    ...sentences("Source", found.sources),
  ];
  const width = 4;
  return rows.map((row) => [...row, ...Array<string>(width - row.length).fill("")]);
}

function sentences(kind: string, found: readonly FoundSentence[]): string[][] {
  return found.map((f) => [kind, f.sentence, f.functions.join(", "), cellList(f.cells)]);
}

function cellList(cells: readonly CellAddress[]): string {
  const texts = runs(cells).map((r) => r.text);
  let list = "";
  for (const [i, text] of texts.entries()) {
    if (list.length + text.length > LONGEST_LIST) return `${list} and ${texts.length - i} more places`;
    list += list === "" ? text : `, ${text}`;
  }
  return list;
}

/** "1 cell", "2 cells", "no cell" */
export function count(n: number, word: string): string {
  return n === 0 ? `no ${word}` : `${n.toLocaleString("en-US")} ${word}${n === 1 ? "" : "s"}`;
}
