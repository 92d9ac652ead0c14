import { type LateTable, NeedsTable } from "../../core/kit/late-tables.ts";
import type { PictureBase } from "../../core/kit/picture.ts";
import { BadInput, OutOfRange, Refusal } from "../../core/kit/refusal.ts";
import { type Cell, type Step, type Table, Tape } from "../../core/kit/tape.ts";
import { type CellFunction, HEADERS } from "../declare/cell-function.ts";
import { isOptional, type Notes, type RawArgument } from "../declare/param.ts";
import { isBlank, isRange, quote } from "../declare/raw.ts";
import { capital } from "../declare/scalar.ts";
import { zeroForBlank } from "../declare/table.ts";

/** What a cell gets. */
export type Outcome =
  | { readonly ok: true; readonly value: Cell | Table }
  | {
      readonly ok: false;
      readonly code: "#VALUE!" | "#N/A";
      readonly says: string;
      /** a table that must be loaded first; the same call may then succeed (see data.ts) */
      readonly needs?: LateTable;
    };

/** An argument as the pane shows it. */
export interface ShownArgument {
  readonly name: string;
  readonly says: string;
  readonly unit: string;
  /** what was read; for an omitted argument what stands in for it; "" when it was not reached */
  readonly shown: string;
  readonly omitted: boolean;
}

/** A calculation with everything that the pane shows of it. */
export interface Working {
  readonly outcome: Outcome;
  readonly arguments: readonly ShownArgument[];
  readonly steps: readonly Step[];
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
  readonly sources: readonly string[];
  readonly pictures: readonly PictureBase[];
}

/** Calculates one call. Never throws: an input that cannot be worked with gives a sentence. */
export function invoke(fn: CellFunction, raw: readonly RawArgument[]): Outcome {
  return calculate(fn, raw, undefined, []);
}

/** Calculates one call again and keeps the working. */
export function explain(fn: CellFunction, raw: readonly RawArgument[]): Working {
  const tape = new Tape();
  const shown: ShownArgument[] = [];
  for (const sentence of fn.assumptions) tape.assume(sentence);
  for (const sentence of fn.cautions) tape.caution(sentence);
  const outcome = calculate(fn, raw, tape, shown);
  return {
    outcome,
    arguments: shown,
    steps: tape.steps,
    assumptions: tape.assumptions,
    cautions: tape.cautions,
    sources: fn.sources,
    pictures: tape.pictures,
  };
}

const SILENT: Notes = { assume: () => {}, caution: () => {} };

function calculate(
  fn: CellFunction,
  raw: readonly RawArgument[],
  tape: Tape | undefined,
  shown: ShownArgument[],
): Outcome {
  try {
    const args = readArguments(fn, raw, tape ?? SILENT, tape === undefined ? undefined : shown);
    const value = fn.run(args, tape);
    if (!isSound(value)) return fault(fn, "the result is not a number");
    const withHeadings = args[HEADERS] === true && fn.returns.kind === "table";
    return { ok: true, value: withHeadings ? [headings(fn), ...(value as Table)] : value };
  } catch (error) {
    if (error instanceof Refusal) {
      return { ok: false, code: error instanceof BadInput ? "#VALUE!" : "#N/A", says: error.message };
    }
    if (error instanceof NeedsTable) return notLoaded(error.table);
    return fault(fn, error instanceof Error ? error.message : String(error));
  }
}

function readArguments(
  fn: CellFunction,
  raw: readonly RawArgument[],
  notes: Notes,
  shown: ShownArgument[] | undefined,
): Record<string, unknown> {
  const args: Record<string, unknown> = {};
  if (raw.slice(fn.params.length).some((extra) => extra !== null && extra !== undefined)) {
    throw new BadInput(
      `${fn.name} was given ${raw.length} arguments`,
      `it takes at most ${fn.params.length}: ${fn.params.map((p) => p.name).join(", ")}`,
      "Take the extra ones away",
    );
  }
  fn.params.forEach(({ name, param }, i) => {
    const given = raw[i];
    const facts = { name, says: param.says, unit: param.unit };
    const zero = isOptional(param) && !isRange(given) && zeroForBlank(given, param);
    if (isOptional(param) && (zero || isOmitted(given))) {
      args[name] = param.standIn;
      const how = zero ? "is 0, read as a blank cell" : "is left out";
      if (param.omitted !== "") notes.assume(`${capital(spoken(name))} ${how}: ${param.omitted}.`);
      shown?.push({ ...facts, shown: param.omitted, omitted: true });
      return;
    }
    const reading = param.read(given, spoken(name), notes);
    args[name] = reading.value;
    shown?.push({ ...facts, shown: reading.shown, omitted: false });
  });
  return args;
}

/** A parameter's name as a sentence says it: insideFilm -> inside film */
function spoken(name: string): string {
  return name.replace(/[a-z][A-Z](?![A-Z])/g, (pair) => `${pair[0]} ${pair[1]?.toLowerCase()}`);
}

/** Left out, a blank cell, or a range of nothing but blanks. */
function isOmitted(raw: RawArgument): boolean {
  return isRange(raw) ? raw.every((row) => row.every(isBlank)) : isBlank(raw);
}

function headings(fn: CellFunction): readonly string[] {
  return (fn.returns.columns ?? []).map((c) => (c.unit === "" ? c.name : `${c.name}, ${c.unit}`));
}

function isSound(value: Cell | Table): boolean {
  if (Array.isArray(value)) {
    const width = (value as Table)[0]?.length ?? 0;
    return (
      width > 0 && (value as Table).every((row) => row.length === width && row.every((cell) => isSound(cell as Cell)))
    );
  }
  return typeof value === "number" ? Number.isFinite(value) : value !== undefined && value !== null;
}

/** What stands where a table stays away, as when the connection breaks between opening the workbook and the first use of the table. */
function notLoaded(table: LateTable): Outcome {
  const { message } = new OutOfRange(
    `The table of ${table} could not be loaded`,
    "it is fetched from where the add-in came from when a cell first asks for it",
    "Check the connection, then calculate the cell again",
  );
  return { ok: false, code: "#N/A", says: message, needs: table };
}

/** A result that cannot be is a fault of the program, and says so. */
function fault(fn: CellFunction, detail: string): Outcome {
  return {
    ok: false,
    code: "#VALUE!",
    says: `${fn.name} failed: this is a fault of the program, not of the inputs (${detail}). Do not use this cell, and report the formula with its inputs.`,
  };
}

/** A call written as a formula, from the arguments of an example. */
export function formulaOf(fn: CellFunction, args: Readonly<Record<string, unknown>>, namespace: string): string {
  const given = fn.params.map(({ name }) => args[name]);
  while (given.length > 0 && given.at(-1) === undefined) given.pop();
  return `=${namespace}.${fn.name}(${given.map(literal).join(", ")})`;
}

/** The arguments of an example in their places, as a host would hand them over. */
export function positional(fn: CellFunction, args: Readonly<Record<string, unknown>>): RawArgument[] {
  return fn.params.map(({ name }) => (args[name] ?? null) as RawArgument);
}

/** A value as a formula writes it. */
export function literal(value: unknown): string {
  if (Array.isArray(value)) {
    // A spreadsheet refuses an array constant whose rows differ in length.
    const width = Math.max(...value.map((row) => (row as unknown[]).length));
    const line = (row: unknown[]) => Array.from({ length: width }, (_, i) => cellLiteral(row[i] ?? null)).join(",");
    return `{${value.map((row) => line(row as unknown[])).join(";")}}`;
  }
  return value === undefined ? "" : cellLiteral(value);
}

function cellLiteral(value: unknown): string {
  if (typeof value === "string") return `"${value.replaceAll('"', '""')}"`;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return value === null ? '""' : quote(value as number);
}
