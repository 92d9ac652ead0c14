import { type LateTable, NeedsTable } from "../../core/kit/late-tables.ts";
import type { PictureBase } from "../../core/kit/picture.ts";
import { BadInput, Refusal, type Said } from "../../core/kit/refusal.ts";
import { type Cell, type Step, type Table, Tape } from "../../core/kit/tape.ts";
import type { CellFunction } from "../declare/cell-function.ts";
import type { Notes, RawArgument } from "../declare/param.ts";
import { readArguments, type ShownArgument } from "./arguments.ts";
import { presented } from "./present.ts";

/** What a cell gets. */
export type Outcome =
  | { readonly ok: true; readonly value: Cell | Table }
  | {
      readonly ok: false;
      readonly code: "#VALUE!" | "#N/A";
      /** what is wrong, why, what to do; hosts join the parts by `sentence` */
      readonly said: Said;
      /** a table that must be loaded first; the same call may then succeed (see tables-on-demand.ts) */
      readonly needs?: LateTable;
    };

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
  const tape = begun(fn);
  const shown: ShownArgument[] = [];
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

/** A tape with what holds for every use of a function. */
function begun(fn: CellFunction): Tape {
  const tape = new Tape();
  for (const sentence of fn.assumptions) tape.assume(sentence);
  for (const sentence of fn.cautions) tape.caution(sentence);
  return tape;
}

/** What the arguments of a search bring up before it is made. */
export function asRead(
  fn: CellFunction,
  raw: readonly RawArgument[],
): Pick<Working, "arguments" | "assumptions" | "cautions"> {
  const tape = begun(fn);
  const shown: ShownArgument[] = [];
  try {
    fn.asks(readArguments(fn, raw, tape, shown), tape);
  } catch {
    // A call that cannot be read has its refusal for an outcome.
  }
  return { arguments: shown, assumptions: tape.assumptions, cautions: tape.cautions };
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
    return { ok: true, value: presented(fn, value, args) };
  } catch (error) {
    if (error instanceof Refusal) {
      const { what, why, todo } = error;
      return { ok: false, code: error instanceof BadInput ? "#VALUE!" : "#N/A", said: { what, why, todo } };
    }
    if (error instanceof NeedsTable) return notLoaded(error.table);
    return fault(fn, error instanceof Error ? error.message : String(error));
  }
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
  return {
    ok: false,
    code: "#N/A",
    said: {
      what: `The table of ${table} could not be loaded`,
      why: "it is fetched from where the add-in came from when a cell first asks for it",
      todo: "Check the connection, then calculate the cell again",
    },
    needs: table,
  };
}

/** A result that cannot be is a fault of the program, and says so. */
function fault(fn: CellFunction, detail: string): Outcome {
  return {
    ok: false,
    code: "#VALUE!",
    said: {
      what: `${fn.name} failed`,
      why: `this is a fault of the program, not of the inputs (${detail})`,
      todo: "Do not use this cell, and report the formula with its inputs",
    },
  };
}
