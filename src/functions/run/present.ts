import type { Cell, Table } from "../../core/kit/tape.ts";
import { formatLength, INCHES_IN } from "../../core/units/length.ts";
import type { CellFunction } from "../declare/cell-function.ts";

/** A result as it goes into the sheet: headings on top, lengths as the basis asks. */
export function presented(
  fn: CellFunction,
  value: Cell | Table,
  args: Readonly<Record<string, unknown>>,
): Cell | Table {
  const inFeet = args.lengths === "feet and inches";
  if (!Array.isArray(value)) return inFeet ? written(value as Cell, fn.returns.unit) : value;
  const columns = fn.returns.columns ?? [];
  const rows = inFeet
    ? (value as Table).map((row) => row.map((cell, i) => written(cell, columns[i]?.unit ?? "")))
    : (value as Table);
  return withHeadings(fn, args) ? [headings(fn, inFeet), ...rows] : rows;
}

/** Tables of several rows have headings unless told otherwise; a result that is always one row has none unless asked. */
function withHeadings(fn: CellFunction, args: Readonly<Record<string, unknown>>): boolean {
  if (fn.returns.kind !== "table") return false;
  if (!fn.takesBasis) return false;
  return args.headings === undefined ? !fn.oneRow : args.headings === true;
}

function headings(fn: CellFunction, inFeet: boolean): readonly string[] {
  return (fn.returns.columns ?? []).map(({ name, unit }) =>
    unit === "" || (inFeet && isLength(unit)) ? name : `${name}, ${unit}`,
  );
}

function isLength(unit: string): unit is "ft" | "in" {
  return unit === "ft" || unit === "in";
}

function written(cell: Cell, unit: string): Cell {
  return typeof cell === "number" && isLength(unit) ? formatLength(cell * INCHES_IN[unit], SIXTEENTHS) : cell;
}

/** Lengths are written to the sixteenth of an inch. */
const SIXTEENTHS = 16;

/** Whether the first row of a table result is its headings. */
export function hasHeadings(fn: CellFunction, value: Table): boolean {
  const names = (fn.returns.columns ?? []).map((column) => column.name);
  const first = value[0] ?? [];
  return first.length > 0 && first.every((cell, i) => typeof cell === "string" && cell.split(",")[0] === names[i]);
}

/** A result without the headings that the sheet shows on top. */
export function withoutHeadings(fn: CellFunction, value: Cell | Table): Cell | Table {
  return Array.isArray(value) && hasHeadings(fn, value as Table) ? (value as Table).slice(1) : value;
}
