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

/** Longest text that an argument may be; a cell holds up to 32,767 characters. */
export const LONGEST_TEXT = 200;

/** Characters of a text that a sentence quotes. */
const QUOTED = 60;

/** A cell as a sentence quotes it: a long text is clipped. */
export function quote(raw: Raw): string {
  if (raw === null || raw === undefined) return "blank";
  if (typeof raw === "object") return raw.error;
  if (typeof raw !== "string") return String(raw);
  return `"${clipped(raw)}"`;
}

/** A text as a sentence or the pane shows it. */
export function clipped(text: string): string {
  return text.length > QUOTED ? `${text.slice(0, QUOTED)}...` : text;
}

/** Full-width forms (U+FF01 to U+FF5E) stand this far above the plain ones. */
const FULL_WIDTH = 0xfee0;

/** A text as typed on any keyboard: full-width forms become plain ones, characters without width go. */
export function folded(text: string): string {
  return text
    .replace(/[\u200B-\u200D\u2060\uFEFF]/g, "")
    .replace(/[\uFF01-\uFF5E]/g, (c) => String.fromCharCode(c.charCodeAt(0) - FULL_WIDTH))
    .replace(/\u3000/g, " ");
}
