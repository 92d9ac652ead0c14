import { sentence } from "../../core/kit/refusal.ts";
import type { Cell, Table } from "../../core/kit/tape.ts";
import { NAMESPACE } from "../../functions/declare/cell-function.ts";
import { addressText, type Host, type NamedCell, type NamedRows } from "../../workbook/host.ts";
import type { CellAddress } from "../../workbook/ledger.ts";
import { BASIS_NAME } from "../../workbook/named-rows.ts";
import { runs } from "../parts/cells.ts";
import { closesAtEnd } from "../working/argument-places.ts";
import type { Findings, FoundSentence } from "./findings.ts";
import type { SurveyedCell } from "./survey.ts";
import type { Looked } from "./workbook-scan.ts";

export const BASIS_SHEET = "Basis and cautions";

/** A cell holds 32,767 characters; a list of cells stops long before. */
const LONGEST_LIST = 2_000;
const WIDTH = 4;
const DIGITS = 6;
const STARTS_WITH_OURS = new RegExp(String.raw`^=\s*${NAMESPACE}\.\w+\(`, "i");

/** What the sheet is made from. */
export interface Report {
  readonly found: Findings;
  readonly cells: readonly SurveyedCell[];
  /** undefined where the worksheets could not be looked at */
  readonly looked: Looked | undefined;
  /** the range Basis; undefined where there is none */
  readonly basis: NamedRows | undefined;
  /** cells with a name of their own, those that are typed and those that are calculated */
  readonly named: readonly NamedCell[];
}

/** What the sheet is made from beside what was found, as the host has it now. */
export async function inputsOf(host: Host | undefined): Promise<Pick<Report, "basis" | "named">> {
  const [basis, named] = await Promise.all([host?.readName?.(BASIS_NAME), host?.namedCells?.()]);
  return { basis, named: named ?? [] };
}

/**
 * The worksheet for the file or the engineer: what was put in, what came out, and what to know before using it. A list that is not whole says so on top.
 */
export function basisRows({ found, cells, looked, basis, named }: Report): Table {
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
    ...listed(["Input", "Value", "Unit", "Cell"], [...basisInputs(basis), ...typed(named)]),
    ...listed(["Result", "Value", "Unit", "Cell"], [...namedResults(named, cells), ...results(cells, named)]),
    [],
    ["Kind", "What", "Functions", "Cells"],
    ...found.errors.map((e) => [`Error ${e.code}`, sentence(e.said), e.fn.name, addressText(e.address)]),
    ...(looked?.errors ?? []).map((e) => [`Error ${e.error}`, e.said.why, "", addressText(e.address)]),
    ...sentences("Caution: editions", found.mixed),
    ...sentences("Caution for these cells", found.inputCautions),
    ...sentences("Caution for every use", found.standingCautions),
    ...sentences("Assumption", found.assumptions),
    ...sentences("Source", found.sources),
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

/** A list behind an empty row, or nothing. */
function listed(heading: readonly string[], rows: readonly Cell[][]): Cell[][] {
  return rows.length === 0 ? [] : [[], [...heading], ...rows];
}

/** What stands before a cell says what it is; its name says where it is used. */
function called(label: string, name: string): string {
  return label === "" ? name : `${label} (${name})`;
}

/** A result in as many digits as somebody reads; the cell has them all. */
function short(value: Cell): Cell {
  return typeof value === "number" ? Number(value.toPrecision(DIGITS)) : value;
}

/** The rows of the basis that hold something. */
function basisInputs(basis: NamedRows | undefined): Cell[][] {
  if (basis === undefined) return [];
  const { first, rows } = basis;
  return rows.flatMap(([name = "", value = "", unit = ""], i) => {
    if (i === 0 || name === "" || value === "") return [];
    return [[name, value, unit, addressText({ ...first, row: first.row + i, column: first.column + 1 })]];
  });
}

/** Cells with a name whose value somebody typed. */
function typed(named: readonly NamedCell[]): Cell[][] {
  return named.flatMap(({ name, address, value, formula, label, unit }) =>
    formula !== "" || value === "" ? [] : [[called(label, name), value, unit, addressText(address)]],
  );
}

/** Cells with a name whose value is calculated, by a function of ours or of the spreadsheet's own. */
function namedResults(named: readonly NamedCell[], cells: readonly SurveyedCell[]): Cell[][] {
  const units = new Map(cells.map(({ address, calls }) => [addressText(address), calls[0]?.fn.returns.unit]));
  return named.flatMap(({ name, address, value, formula, label, unit }) => {
    if (formula === "") return [];
    const at = addressText(address);
    // A formula that is a call of ours and nothing around it has the unit of its function.
    const own = STARTS_WITH_OURS.test(formula) && closesAtEnd(formula) ? units.get(at) : undefined;
    return [[called(label, name), short(value), own || unit, at]];
  });
}

/** Cells of ours without a name, by their outermost function. */
function results(cells: readonly SurveyedCell[], named: readonly NamedCell[]): Cell[][] {
  const known = new Set(named.map(({ address }) => addressText(address)));
  return cells.flatMap(({ address, calls: [call] }) => {
    const at = addressText(address);
    if (call === undefined || known.has(at)) return [];
    const { fn, outcome } = call;
    if (!outcome.ok) return [[fn.name, outcome.code, "", at]];
    const { value } = outcome;
    const shown = Array.isArray(value) ? `table of ${count(value.length, "row")}` : short(value as Cell);
    return [[fn.name, shown, fn.returns.unit, at]];
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
