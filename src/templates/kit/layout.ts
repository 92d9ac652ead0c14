import type { Cell } from "../../core/kit/tape.ts";
import { GLOSSARY } from "../../functions/basis/glossary/index.ts";
import { termOf } from "../../functions/basis/words.ts";
import type { Param } from "../../functions/declare/param.ts";
import { functionNamed } from "../../functions/registry.ts";
import { inNamespace, ourNames } from "../../workbook/formula.ts";
import { columnLetters } from "../../workbook/host.ts";
import { formatOf, NOTHING_FOR_ZERO, widthOf } from "./formats.ts";
import {
  heading,
  label,
  note,
  type Role,
  type SheetTemplate,
  type TemplateCell,
  title,
  type WorkbookTemplate,
} from "./template.ts";

/**
 * Worksheets declared by names: blocks stand one below the other, tables that spill stand side by side below them all, so that none can grow into
 * another. No address is typed: formulas use names, and names come from the blocks.
 */

type Line = readonly (TemplateCell | undefined)[];

/** A name for cells of a block; row and column count from the block's first cell. */
interface Named {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** Lines of a fixed height with the names of cells in them. */
export interface Block {
  readonly lines: readonly Line[];
  readonly names: readonly Named[];
}

/** A table that spills, with room for it to grow. */
export interface Spill {
  readonly heading: string;
  readonly formula: string;
  /** name for its cells, those that are still free counted */
  readonly name?: string;
  /** rows kept free, the row of headings counted */
  readonly room: number;
  /** columns of what is no function of ours */
  readonly columns?: number;
  readonly says?: string;
}

/** A file takes no longer text to show while a cell is selected. */
const LONGEST = 255;

interface Entry {
  readonly label: string;
  readonly name?: string;
  readonly unit?: string;
  readonly note?: string;
  readonly format?: string;
}

export interface InputEntry extends Entry {
  readonly value: Cell;
  readonly choices?: readonly string[];
}

export interface ResultEntry extends Entry {
  readonly formula: string;
  /** further cells that a result of one row fills */
  readonly more?: number;
}

/** The sheet's title and what to do on it. */
export function top(text: string, ...notes: readonly string[]): Block {
  return { lines: [[title(text)], ...notes.map((words) => [note(words)])], names: [] };
}

/** Values to type, each in a marked cell with its unit and where it comes from. */
export function inputs(words: string, entries: readonly InputEntry[]): Block {
  const lines = entries.map((entry) => [
    label(entry.label),
    inputCell(entry.value, { ...entry, hint: hintFor(entry) }),
    label(entry.unit ?? ""),
    note(entry.note ?? ""),
  ]);
  return { lines: [headings(words, "Value", "Unit", "Where it comes from"), ...lines], names: namesOf(entries) };
}

/** What is asked for in a cell, shown while it is selected. */
function hintFor({ label: what, unit = "", note: says = "" }: InputEntry): string {
  const asked = unit === "" ? what : `${what}, ${unit}`;
  return (says === "" ? asked : `${asked}: ${says}`).slice(0, LONGEST);
}

/** A share of one, shown in percent. */
export interface Percent {
  readonly percent: number;
}

export const percent = (value: number): Percent => ({ percent: value });

/** What a basis row holds: the term as the glossary has it, its value, its unit and where it comes from. */
export type BasisRow = readonly [term: string, value: Cell | Percent, unit?: string, note?: string];

/** A basis by groups of rows: a named range of name, value and unit, its notes outside. */
export function basis(name: string, groups: Readonly<Record<string, readonly BasisRow[]>>): Block {
  const lines: Line[] = [headings("Basis", "Value", "Unit", "Where it comes from")];
  for (const [group, rows] of Object.entries(groups)) {
    lines.push([{ is: group, role: "heading" }]);
    for (const [term, value, unit = "", says = ""] of rows) {
      const facts = termFacts(term);
      const cell =
        typeof value === "object"
          ? inputCell(value.percent / 100, { ...facts, format: "0.0%" })
          : inputCell(value, facts);
      lines.push([label(term), cell, label(unit), note(says)]);
    }
  }
  return { lines, names: [{ name, row: 0, column: 0, rows: lines.length, columns: 3 }] };
}

/** What the glossary says of a term, for the cell that holds its value. */
function termFacts(name: string): { readonly choices?: readonly string[]; readonly hint?: string } {
  const term = termOf(name);
  if (term === undefined) throw new Error(`The glossary has no term ${name}`);
  const { says, choices = [] } = GLOSSARY[term].param as Param<unknown, unknown>;
  const fits = choices.length > 0 && choices.join(",").length <= LONGEST && !choices.some((c) => /[",]/.test(c));
  return { hint: says.slice(0, LONGEST), ...(fits ? { choices } : {}) };
}

/**
 * A table to type into, with its headings and some rows to spare, all under one name; its formulas have one number format, or one by heading.
 * @param named names for columns of it, by their headings, which are left out: what stands beside them in a row may go by them and not round in a circle
 */
export function table(
  name: string,
  says: string,
  columns: readonly string[],
  rows: readonly (readonly Cell[])[],
  spare = 4,
  format: string | Readonly<Record<string, string>> = "#,##0.0",
  named: Readonly<Record<string, string>> = {},
): Block {
  const blank = Array.from({ length: spare }, () => columns.map(() => "" as Cell));
  const lines = [...rows, ...blank].map((row) =>
    columns.map((column, c) => tableCell(row[c] ?? "", formatIn(format, column))),
  );
  const ofColumns = columns.flatMap((column, c) => {
    const own = named[column];
    return own === undefined ? [] : [{ name: own, row: 2, column: c, rows: lines.length, columns: 1 }];
  });
  return {
    lines: [[{ is: says, role: "heading" }], columns.map((column) => heading(column)), ...lines],
    names: [{ name, row: 1, column: 0, rows: lines.length + 1, columns: columns.length }, ...ofColumns],
  };
}

function formatIn(format: string | Readonly<Record<string, string>>, column: string): string {
  return typeof format === "string" ? format : (format[column] ?? NOTHING_FOR_ZERO);
}

/** Results, one a line; the unit and the format come from the function. */
export function results(words: string, entries: readonly ResultEntry[]): Block {
  const lines = entries.map((entry) => {
    const returns = returnsOf(entry.formula);
    const [first, ...others] = returns?.columns ?? [];
    const unit = entry.unit ?? first?.unit ?? returns?.unit ?? "";
    const format = entry.format ?? formatOf(unit, first?.name);
    const cell: TemplateCell = { is: entry.formula, role: "result", format };
    const more = others.slice(0, entry.more ?? 0).map((column) => room(formatOf(column.unit, column.name)));
    return [label(entry.label), cell, ...more, label(unit), note(entry.note ?? "")];
  });
  return { lines: [headings(words, "Result", "Unit", ""), ...lines], names: namesOf(entries) };
}

/** Sentences that say whether the numbers hold together: a formula that gives "ok" or what is wrong. */
export function checks(
  entries: readonly { readonly label: string; readonly formula: string; readonly name?: string }[],
): Block {
  const lines = entries.map((entry) => [label(entry.label), { is: entry.formula, role: "check" } as TemplateCell]);
  return { lines: [headings("Checks", "", "", ""), ...lines], names: namesOf(entries) };
}

/** A worksheet of blocks and, below them, tables that spill side by side. */
export interface LaidSheet {
  readonly sheet: SheetTemplate;
  readonly names: readonly (readonly [string, string])[];
}

export function sheet(name: string, says: string, given: readonly Block[], spills: readonly Spill[] = []): LaidSheet {
  const blocks = withCaution(given, spills);
  const rows: (TemplateCell | undefined)[][] = [];
  const names: [string, string][] = [];
  for (const block of blocks) {
    if (rows.length > 0) rows.push([]);
    for (const named of block.names) names.push([named.name, reference(name, named, rows.length)]);
    rows.push(...block.lines.map((line) => [...line]));
  }
  if (spills.length > 0) rows.push([]);
  const first = rows.length;
  const widths = widthsOf(rows);
  let column = 0;
  for (const spill of spills) {
    const columns = columnsOf(spill);
    place(rows, first, column, spill, columns);
    if (spill.name !== undefined) {
      const box = { name: spill.name, row: 1, column, rows: spill.room, columns: columns.length };
      names.push([spill.name, reference(name, box, first)]);
    }
    columns.forEach(({ width }, c) => {
      widths[column + c] = Math.max(widths[column + c] ?? 0, width);
    });
    column += columns.length + 1;
    widths[column - 1] ??= GAP;
  }
  const own = rows.map((row) => row.map(inOwnNamespace));
  return { sheet: { name, says, widths: Array.from(widths, (width) => width ?? GAP), rows: own }, names };
}

const PRELIMINARY = /^Preliminary /;

/** Under the title of a sheet that calls a function with preliminary results it says so. */
function withCaution(blocks: readonly Block[], spills: readonly Spill[]): readonly Block[] {
  const [first, ...others] = blocks;
  const cells = blocks.flatMap(({ lines }) => lines.flat().map((cell) => String(cell?.is ?? "")));
  const called = [...cells, ...spills.map(({ formula }) => formula)].flatMap((formula) =>
    ourNames(inNamespace(formula)).map((own) => functionNamed(own)),
  );
  const isPreliminary = called.some((fn) => fn?.cautions.some((caution) => PRELIMINARY.test(caution)));
  return first === undefined || !isPreliminary
    ? blocks
    : [{ ...first, lines: [...first.lines, [note(CAUTION)]] }, ...others];
}

const CAUTION =
  "Preliminary figures for planning: the adopted code with its local amendments and a licensed professional decide. The view Cautions of the pane lists what else to know.";

/** A workbook of such sheets. */
export function workbook(name: string, sheets: readonly LaidSheet[]): WorkbookTemplate {
  return { name, sheets: sheets.map((laid) => laid.sheet), names: sheets.flatMap((laid) => laid.names) };
}

/** Width of a column that stands between two tables, in characters. */
const GAP = 3;
const NARROWEST = 9;
const WIDEST = 50;

function place(
  rows: (TemplateCell | undefined)[][],
  first: number,
  column: number,
  spill: Spill,
  columns: readonly { readonly format: string }[],
): void {
  const lines: Line[] = [
    [heading(spill.heading), ...columns.slice(1).map(() => heading(""))],
    ...Array.from({ length: spill.room }, (_, r) =>
      columns.map(({ format }, c) =>
        r === 0 && c === 0 ? { is: spill.formula, role: "label" as Role } : room(format),
      ),
    ),
  ];
  lines.forEach((line, r) => {
    const row = rows[first + r] ?? [];
    rows[first + r] = row;
    line.forEach((cell, c) => {
      while (row.length < column + c) row.push(undefined);
      row[column + c] = cell;
    });
  });
}

/** A cell that stays empty but has a format, for what spills into it. */
function room(format: string): TemplateCell {
  return { is: "", format };
}

/** The columns of what a formula spills, from the outermost function of ours in it. */
function columnsOf({ formula, columns: count = 1 }: Spill): { format: string; width: number }[] {
  const columns = returnsOf(formula)?.columns ?? Array.from({ length: count }, () => ({ name: "", unit: "" }));
  return columns.map(({ name, unit }, c) => ({
    format: formatOf(unit, name),
    width: Math.max(
      widthOf(name),
      Math.min(
        WIDEST,
        Math.max(c === 0 || name === "" ? 18 : NARROWEST, name.length + (unit === "" ? 2 : unit.length + 4)),
      ),
    ),
  }));
}

/** A cell of a table is typed, or comes from another sheet. */
function tableCell(value: Cell, format: string): TemplateCell {
  const formula = typeof value === "string" && value.startsWith("=");
  return formula ? { is: value, role: "result", format } : inputCell(value, {});
}

function inOwnNamespace(cell: TemplateCell | undefined): TemplateCell | undefined {
  const formula = typeof cell?.is === "string" && cell.is.startsWith("=");
  return formula ? { ...cell, is: inNamespace(String(cell.is)) } : cell;
}

function returnsOf(formula: string) {
  const [name] = ourNames(inNamespace(formula));
  return name === undefined ? undefined : functionNamed(name)?.returns;
}

function inputCell(
  value: Cell,
  entry: { readonly format?: string; readonly choices?: readonly string[]; readonly hint?: string },
): TemplateCell {
  return {
    is: value,
    role: "input",
    ...(entry.format === undefined ? {} : { format: entry.format }),
    ...(entry.choices === undefined ? {} : { choices: entry.choices }),
    ...(entry.hint === undefined ? {} : { hint: entry.hint }),
  };
}

function headings(...words: readonly string[]): Line {
  return words.map((word) => heading(word));
}

/** Entries stand below the block's headings, their values in the second column. */
function namesOf(entries: readonly { readonly name?: string }[]): Named[] {
  return entries.flatMap(({ name }, i) =>
    name === undefined ? [] : [{ name, row: i + 1, column: 1, rows: 1, columns: 1 }],
  );
}

function reference(sheetName: string, box: Omit<Named, "name">, above: number): string {
  const quoted = /^[A-Za-z_][A-Za-z0-9_]*$/.test(sheetName) ? sheetName : `'${sheetName.replaceAll("'", "''")}'`;
  const at = (row: number, column: number) => `$${columnLetters(column)}$${row + 1}`;
  const first = at(above + box.row, box.column);
  const last = at(above + box.row + box.rows - 1, box.column + box.columns - 1);
  return `${quoted}!${first === last ? first : `${first}:${last}`}`;
}

/** From the texts of labels, inputs and headings; notes and titles run over into the free cells beside them. */
function widthsOf(rows: readonly Line[]): number[] {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, c) => {
      if (cell === undefined || cell.role === "note" || cell.role === "title" || cell.role === "check") return;
      const formula = typeof cell.is === "string" && cell.is.startsWith("=");
      const length = formula ? NARROWEST : String(cell.is).length + 2;
      widths[c] = Math.min(WIDEST, Math.max(widths[c] ?? NARROWEST, length));
    });
  }
  return widths;
}
