import { clipped } from "../../core/units/text.ts";

/** What hosts hand over, before anything is read. */

/** An error in a cell, as a host names it: "#DIV/0!" */
export interface CellError {
  readonly error: string;
}

/** One cell: an omitted argument is null, a blank cell null or 0 depending on the host. */
export type Raw = number | string | boolean | null | undefined | CellError;

/** One argument: a cell, or a range as rows of cells. */
export type RawArgument = Raw | readonly (readonly Raw[])[];

export function isCellError(raw: RawArgument): raw is CellError {
  return typeof raw === "object" && raw !== null && !Array.isArray(raw) && "error" in raw;
}

export function isRange(raw: RawArgument): raw is readonly (readonly Raw[])[] {
  return Array.isArray(raw);
}

/** True for an omitted argument, an empty cell and a text of nothing but spaces. */
export function isBlank(raw: Raw): boolean {
  return raw === null || raw === undefined || (typeof raw === "string" && raw.trim() === "");
}

/** A cell as a sentence quotes it: a long text is clipped. */
export function quote(raw: Raw): string {
  if (raw === null || raw === undefined) return "blank";
  if (typeof raw === "object") return raw.error;
  if (typeof raw !== "string") return String(raw);
  return `"${clipped(raw)}"`;
}
