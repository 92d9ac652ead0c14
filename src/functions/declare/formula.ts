import type { CellFunction, ErasedRefusal } from "./cell-function.ts";
import type { RawArgument, TermParam } from "./param.ts";
import { quote } from "./raw.ts";
import { sheetTerms } from "./sheet-terms.ts";
import { keyOfTerm } from "./words.ts";

/** A call written as a formula, from the arguments of an example. */
export function formulaOf(fn: CellFunction, args: Readonly<Record<string, unknown>>, namespace: string): string {
  const given = places(fn, args);
  while (given.length > 0 && given.at(-1) === undefined) given.pop();
  return `=${namespace}.${fn.name}(${given.map(literal).join(", ")})`;
}

/** The arguments of an example in their places, as a host would hand them over. */
export function positional(fn: CellFunction, args: Readonly<Record<string, unknown>>): RawArgument[] {
  return places(fn, args).map((value) => (value ?? null) as RawArgument);
}

/** The arguments of a refused call: those of the example with what differs from it. */
export function refusedArguments(fn: CellFunction, refused: ErasedRefusal): Readonly<Record<string, unknown>> {
  const all = Object.entries({ ...fn.example.args, ...refused.args });
  return Object.fromEntries(all.filter(([, value]) => value !== null));
}

/** By place; what has none goes into a basis in the last place. */
function places(fn: CellFunction, args: Readonly<Record<string, unknown>>): unknown[] {
  const terms = [...fn.named.map(({ param }) => (param as TermParam<unknown, unknown>).term), ...sheetTerms(fn)];
  const rows = terms.flatMap((term) => {
    const value = args[keyOfTerm(term)];
    return value === undefined ? [] : [[term, value]];
  });
  return fn.params.map(({ name, param }) => {
    if (param.kind !== "basis") return args[name];
    return rows.length === 0 ? undefined : [["Basis", "Value"], ...rows];
  });
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
