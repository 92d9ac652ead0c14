import { BadInput } from "../../core/kit/refusal.ts";
import { clipped } from "../../core/units/text.ts";
import { capital } from "./cell.ts";
import { type ColumnFacts, isOptional, type Notes, type OptionalParam, type Param, type ParamFacts } from "./param.ts";
import { isBlank, isCellError, isRange, quote, type Raw, type RawArgument } from "./raw.ts";

type Columns = Readonly<Record<string, Param<unknown, unknown> | OptionalParam<unknown, unknown>>>;

/** A row as read: a value for each column (undefined where an optional cell is blank), and the row's number in the range, from 1. */
export type RowOf<C extends Columns> = {
  readonly [K in keyof C]: C[K] extends Param<infer T, unknown> ? T : never;
} & { readonly row: number };

/** Rows as an example writes them. */
export type ExampleRows = readonly (readonly (string | number | boolean | null)[])[];

export interface TableOptions {
  readonly says: string;
  /** least and greatest number of rows that hold something */
  readonly minRows?: number;
  readonly maxRows?: number;
  /** the reader itself deals with a row that sums the others */
  readonly knowsTotals?: true;
  /** two rows alike in everything are likely one that was copied twice */
  readonly unlike?: true;
}

/**
 * A range with one row for each part, layer or line. A header row with known words is skipped and may reorder the columns of the rows
 * below it, up to the next one: tables may be stacked with their headings. Blank rows are skipped; a row that cannot be read fails with its number. In a row, an optional number column takes a 0 that its limits forbid as blank,
 * since one host hands a blank cell over as 0.
 */
export function table<const C extends Columns>(columns: C, o: TableOptions): Param<readonly RowOf<C>[], ExampleRows> {
  const names = Object.keys(columns) as (keyof C & string)[];
  const facts: ColumnFacts[] = names.map((name) => {
    const { read: _read, example: _example, heads, ...rest } = columns[name] as Param<unknown, unknown>;
    return { ...rest, name, optional: isOptional(columns[name] as Param<unknown, unknown>), heads: heads ?? [] };
  });

  return {
    kind: "table",
    says: o.says,
    unit: "",
    columns: facts,
    read(raw, at, notes) {
      const cells = asRange(raw, at);
      let order: readonly number[] = names.map((_, i) => i);
      const rows: RowOf<C>[] = [];
      const zeros = new Map<string, number[]>();
      for (let i = 0; i < cells.length; i++) {
        const line = cells[i] ?? [];
        // a later row of headings begins a table that was stacked below the first
        const header = headerOrder(line, facts, i === 0 ? at : `row ${i + 1} of ${at}`);
        if (header !== undefined) order = header;
        if (header !== undefined || blankRow(line, facts, order)) continue;
        rows.push(readRow(line, order, i + 1, at, notes, zeros));
        if (o.maxRows !== undefined && rows.length > o.maxRows) throw tooManyRows(at, o.maxRows);
      }
      const min = o.minRows ?? 1;
      if (rows.length < min) {
        const has = rows.length === 0 ? "has no row that holds anything" : `has ${rows.length} rows`;
        throw new BadInput(
          `${capital(at)} ${has}`,
          `at least ${min} ${min === 1 ? "row is" : "rows are"} wanted, with columns ${names.map(spaced).join(", ")}`,
          `Fill in ${o.says}`,
        );
      }
      if (o.knowsTotals !== true) askTotal(rows, facts[0]?.name ?? "", at, notes);
      if (o.unlike === true) askAlike(rows, at, notes);
      const typed = cells.some((line) => line.some(isBlank));
      for (const [name, rowsOf] of zeros)
        sayZeros(`${spaced(name)} of row ${rowsOf.join(", ")} of ${at}`, typed, notes);
      return { value: rows, shown: `${rows.length} ${rows.length === 1 ? "row" : "rows"}` };
    },
  };

  function readRow(
    line: readonly Raw[],
    order: readonly number[],
    row: number,
    at: string,
    notes: Notes,
    zeros: Map<string, number[]>,
  ): RowOf<C> {
    const out: Record<string, unknown> = { row };
    names.forEach((name, i) => {
      const param = columns[name] as Param<unknown, unknown>;
      const where = `${spaced(name)} in row ${row} of ${at}`;
      const index = order[i] ?? -1;
      const cell = index < 0 ? null : (line[index] ?? null);
      if (index > 0 && isUnfound(cell) && line.slice(index).every(isUnfound)) throw narrowRow(where);
      if (isOptional(param) && (isBlank(cell) || zeroForBlank(cell, param))) {
        out[name] = param.standIn;
        if (cell === 0) zeros.set(name, [...(zeros.get(name) ?? []), row]);
      } else out[name] = param.read(cell, where, notes).value;
    });
    return out as RowOf<C>;
  }
}

const isUnfound = (cell: Raw): boolean => isCellError(cell) && cell.error === "#N/A";

/** VSTACK fills the rows of a narrower table up with #N/A, which may as well be a lookup that found nothing. */
function narrowRow(where: string): BadInput {
  return new BadInput(
    `The cell for ${where} and all behind it hold #N/A`,
    "nothing was found there, or VSTACK stacked a narrower table",
    'Mend the lookup, or give both tables the same columns: IFNA(VSTACK(first, second), "") leaves the others blank',
  );
}

/**
 * Says which zeros were read as blank cells. A range that also holds true blanks comes from a host that tells them apart, so its zeros were typed and
 * there is a caution; in any other the zeros may be the host's own, and the working alone says it.
 */
function sayZeros(where: string, typed: boolean, notes: Notes): void {
  const said = `The 0 in ${where} is read as a blank cell`;
  if (typed) notes.caution(`${said}. To write nothing, type none.`);
  else notes.assume(`${said}; to write nothing, type none.`);
}

/** One host hands a blank cell over as 0: a 0 that the parameter cannot be stands for a blank. */
function zeroForBlank(cell: Raw, param: ParamFacts): boolean {
  const { kind, limits } = param;
  if (cell !== 0) return false;
  if (kind === "table" || kind === "list" || kind === "flag") return kind !== "flag";
  if (kind === "text" || kind === "choice") return param.choices?.includes("0") !== true;
  return (limits?.min ?? -1) > 0 || (limits?.above ?? -1) >= 0;
}

function asRange(raw: RawArgument, at: string): readonly (readonly Raw[])[] {
  if (isRange(raw)) return raw;
  if (isCellError(raw)) {
    throw new BadInput(`${capital(at)} is ${raw.error}`, "an error cannot be calculated with", "Mend the range first");
  }
  return [[raw]];
}

const TOTAL = /^(?:grand |sub-?)?total\b|^sum\b/i;

/** A row that sums those above it, as a worksheet has it at the end or below each part, would count once more. */
function askTotal(rows: readonly { readonly row: number }[], first: string, at: string, notes: Notes): void {
  for (const row of rows.slice(1)) {
    const name = (row as Readonly<Record<string, unknown>>)[first];
    if (typeof name !== "string" || !TOTAL.test(name)) continue;
    const said = `is named ${clipped(name)} and counts like any other: does it sum the rows above?`;
    notes.caution(`Row ${row.row} of ${at} ${said}`);
    return;
  }
}

/** Rows that are the same in every column. */
function askAlike(rows: readonly { readonly row: number }[], at: string, notes: Notes): void {
  const seen = new Set<string>();
  const again = rows.filter(({ row: _, ...rest }) => {
    const before = seen.size;
    return seen.add(JSON.stringify(rest)).size === before;
  });
  if (again.length === 0) return;
  const listed = again.map(({ row }) => row).join(", ");
  notes.caution(`Row ${listed} of ${at} is the same as one above: was it copied twice?`);
}

/** A row is blank when nothing is in it, or nothing but the zeros that stand for blanks: beside a blank name, or where no column that is wanted can be 0. */
function blankRow(line: readonly Raw[], facts: readonly ColumnFacts[], order: readonly number[]): boolean {
  if (line.every(isBlank)) return true;
  if (!line.every((cell) => isBlank(cell) || cell === 0)) return false;
  const isName = (f: ColumnFacts) => f.kind === "text" || (f.kind === "choice" && f.choices?.includes("0") !== true);
  const wanted = facts.filter((f, i) => !f.optional && (order[i] ?? -1) >= 0);
  return wanted.some(isName) || (wanted.length > 0 && wanted.every((f) => zeroForBlank(0, f)));
}

function tooManyRows(at: string, most: number): BadInput {
  return new BadInput(
    `${capital(at)} has more than ${most} rows`,
    `at most ${most} can be worked with`,
    "Point at the rows that count, or split the range",
  );
}

/**
 * The place of each column when the row is a header: every filled cell a known word, two at least (one for a single column).
 * @throws BadInput for a row of words of which two name columns and another none, or that leaves out a column that must be there
 */
function headerOrder(line: readonly Raw[], facts: readonly ColumnFacts[], at: string): readonly number[] | undefined {
  const filled = line.filter((cell) => !isBlank(cell) && cell !== 0);
  if (filled.length < Math.min(2, facts.length) || !filled.every((cell) => typeof cell === "string")) return undefined;
  const parts = line.map((cell) => (typeof cell === "string" ? headingParts(cell) : undefined));
  const found = facts.map((f) => parts.findIndex((heading) => heading !== undefined && names(f, heading)));
  const used = new Set(found.filter((i) => i >= 0));
  if (used.size < Math.min(2, facts.length)) return undefined;
  const unknown = line.findIndex((cell, i) => typeof cell === "string" && !isBlank(cell) && !used.has(i));
  if (unknown >= 0) {
    throw new BadInput(
      `The heading ${quote(line[unknown])} of ${at} is not known`,
      `its columns are ${facts.map((f) => spaced(f.name)).join(", ")}`,
      "Mend the heading, or take the row of headings away",
    );
  }
  unitsAgree(line, facts, found, at);
  const missing = facts.find((f, i) => !f.optional && (found[i] ?? -1) < 0);
  if (missing !== undefined) {
    throw new BadInput(
      `The headings of ${at} leave out ${spaced(missing.name)}`,
      "that column must be there",
      "Add it, or take the row of headings away",
    );
  }
  return found;
}

/** The name of a column as people write it. */
const spaced = (name: string): string => name.replace(/(?<=[a-z])[A-Z]/g, (c) => ` ${c.toLowerCase()}`);

/** Words that name a column of a table, found once for each declared column. */
const COLUMN_WORDS = new WeakMap<ColumnFacts, ReadonlySet<string>>();

function wordsOf(fact: ColumnFacts): ReadonlySet<string> {
  const known = COLUMN_WORDS.get(fact);
  if (known !== undefined) return known;
  const words = new Set([spaced(fact.name).toLowerCase(), fact.name.toLowerCase(), ...fact.heads]);
  COLUMN_WORDS.set(fact, words);
  return words;
}

/** Whether a heading names a column: by its words, hyphens aside, or by words and unit. */
function names(fact: ColumnFacts, { word, unit }: HeadingParts): boolean {
  const words = wordsOf(fact);
  const known = (name: string) =>
    words.has(name) || (name.includes("-") && name.replaceAll("-", "") === fact.name.toLowerCase());
  return known(word) || (unit !== "" && known(`${word} ${unit}`));
}

/** Units as headings print them behind the name: "length ft", "length, ft", "length (ft)", "rate h/unit", "high $" */
const HEADING_UNIT = /^(?:ft2?|in2?|mm|cm|m|yd3?|lb|psf|plf|psi|pcf|h|%|deg|f|\$|(?:\$|h|lb|in)\/\w+|plf or lb)$/;

interface HeadingParts {
  readonly word: string;
  readonly unit: string;
}

function headingParts(cell: string): HeadingParts {
  const text = cell.toLowerCase().replace(/\s+/g, " ").trim();
  const [, name = text, inside = ""] = /^(.*?)\s*[([,]\s*(.*?)[)\]]?$/.exec(text) ?? [];
  if (name !== text) return { word: name, unit: inside };
  const space = text.lastIndexOf(" ");
  const last = text.slice(space + 1);
  return space > 0 && HEADING_UNIT.test(last)
    ? { word: text.slice(0, space).trim(), unit: last }
    : { word: text, unit: "" };
}

const LENGTH_UNITS = new Set(["ft", "in", "mm", "cm", "m", "yd"]);

/** A heading may not say another unit of length than the one that its column is read in. */
function unitsAgree(line: readonly Raw[], facts: readonly ColumnFacts[], found: readonly number[], at: string): void {
  facts.forEach((fact, i) => {
    const cell = line[found[i] ?? -1];
    const unit = typeof cell === "string" ? headingParts(cell).unit : "";
    if (unit === fact.unit || !LENGTH_UNITS.has(unit) || !LENGTH_UNITS.has(fact.unit)) return;
    throw new BadInput(
      `The heading ${quote(cell)} of ${at} says ${unit}`,
      `a bare number in this column is read in ${fact.unit}`,
      `Write the numbers in ${fact.unit}, or each with its unit and the heading without one`,
    );
  });
}

/** A range of single values, read row by row; blanks are skipped. */
export function list<T, E>(
  item: Param<T, E>,
  o: { readonly says: string; readonly min?: number; readonly max?: number },
): Param<readonly T[], E | readonly (readonly E[])[]> {
  const { read: _read, example: _example, ...facts } = item;
  return {
    ...facts,
    kind: "list",
    says: o.says,
    read(raw, at, notes) {
      const cells = isRange(raw) ? raw.flat() : [raw];
      const values: T[] = [];
      const zeros: number[] = [];
      cells.forEach((cell, i) => {
        if (isBlank(cell)) return;
        if (zeroForBlank(cell, item)) zeros.push(i + 1);
        else values.push(item.read(cell, `value ${i + 1} of ${at}`, notes).value);
      });
      if (zeros.length > 0) sayZeros(`value ${zeros.join(", ")} of ${at}`, cells.some(isBlank), notes);
      const min = o.min ?? 1;
      if (values.length < min || values.length > (o.max ?? Number.POSITIVE_INFINITY)) {
        throw new BadInput(
          `${capital(at)} holds ${values.length} values`,
          `from ${min}${o.max === undefined ? "" : ` to ${o.max}`} are wanted`,
          `Give ${o.says}`,
        );
      }
      return { value: values, shown: `${values.length} ${values.length === 1 ? "value" : "values"}` };
    },
  };
}
