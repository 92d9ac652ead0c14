import { sentence } from "../../core/kit/refusal.ts";
import type { Cell, Table } from "../../core/kit/tape.ts";
import { NAMESPACE } from "../../functions/declare/cell-function.ts";
import { addressText } from "../../workbook/host.ts";
import type { CellAddress } from "../../workbook/ledger.ts";
import { runs } from "../parts/cells.ts";
import type { Findings, FoundSentence } from "./findings.ts";
import type { SurveyedCell } from "./survey.ts";
import type { Looked } from "./workbook-scan.ts";

export const BASIS_SHEET = "Basis and cautions";

/** A cell holds 32,767 characters; a list of cells stops long before. */
const LONGEST_LIST = 2_000;
const WIDTH = 4;

/** What the sheet is made from. */
export interface Report {
  readonly found: Findings;
  readonly cells: readonly SurveyedCell[];
  /** undefined where the worksheets could not be looked at */
  readonly looked: Looked | undefined;
}

/**
 * The worksheet for the file or the engineer: what the numbers are, what they rest on, and what to know before using them. A list that is not whole says so
 * on top.
 */
export function basisRows({ found, cells, looked }: Report): Table {
  const cautions = found.inputCautions.length + found.standingCautions.length + found.mixed.length;
  const errors = found.errors.length + (looked?.errors.length ?? 0);
  const rows: Cell[][] = [
    [BASIS_SHEET],
    ["Project", ""],
    ["Date", ""],
    ["Prepared by", ""],
    [
      "Preliminary figures for planning. The adopted code with its local amendments and a licensed professional decide.",
    ],
    ...incomplete(looked),
    [
      `${count(found.cells, "cell")} with ${NAMESPACE} functions: ${count(errors, "error")}, ${count(cautions, "caution")}, ${count(found.assumptions.length, "assumption")}.`,
    ],
    [],
    ["Kind", "What", "Functions", "Cells"],
    ...found.errors.map((e) => [`Error ${e.code}`, sentence(e.said), e.fn.name, addressText(e.address)]),
    ...(looked?.errors ?? []).map((e) => [`Error ${e.error}`, e.said.why, "", addressText(e.address)]),
    ...sentences("Caution: editions", found.mixed),
    ...sentences("Caution for these cells", found.inputCautions),
    ...sentences("Caution for every use", found.standingCautions),
    ...sentences("Assumption", found.assumptions),
    ...sentences("Source", found.sources),
    [],
    ["Result", "Value", "Unit", "Cell"],
    ...cells.flatMap(results),
  ];
  return rows.map((row) => [...row, ...Array<string>(WIDTH - row.length).fill("")]);
}

/** A sheet that lists only what has calculated must say so. */
function incomplete(looked: Looked | undefined): string[][] {
  if (looked === undefined) return [["The worksheets could not be looked at: this list may not be whole."]];
  const missing = looked.coverage.waiting.length;
  const whole =
    missing === 0 ? [] : [[`NOT WHOLE: ${looked.coverage.says}. Calculate the rest and write this sheet again.`]];
  return [...whole, ...looked.unread.map((says) => [`Not read: ${says}`])];
}

function results({ address, calls }: SurveyedCell): Cell[][] {
  return calls.slice(0, 1).map(({ fn, outcome }) => {
    if (!outcome.ok) return [fn.name, outcome.code, "", addressText(address)];
    const { value } = outcome;
    const shown = Array.isArray(value) ? `table of ${count(value.length, "row")}` : (value as Cell);
    return [fn.name, shown, fn.returns.unit, addressText(address)];
  });
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
