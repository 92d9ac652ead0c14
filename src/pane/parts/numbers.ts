import type { Cell, Table } from "../../core/kit/tape.ts";

/** Digits that count in a shown number; whole parts are always shown whole. */
const DIGITS = 5;

/**
 * A number as the pane shows it: five significant digits, whole parts never shortened. Zeros at the end mean that the number was rounded there; a
 * number that needs fewer digits is shown with fewer. The full value belongs beside it (title, copy): `fullText`.
 */
export function shownNumber(value: number): string {
  if (value === 0) return "0";
  if (!Number.isFinite(value)) return String(value);
  // Rounding may carry into a further place: 0.999999 is as large as 1.0000.
  const size = Math.floor(Math.log10(Math.abs(Number(value.toPrecision(DIGITS)))));
  if (size >= 15 || size < -4) return powerOfTen(value);
  // Binary fractions leave dust in the 16th digit; it is not worth digits.
  const clean = Number(value.toPrecision(12));
  const decimals = Math.max(0, DIGITS - 1 - size);
  const rounded = clean.toFixed(decimals);
  const exact = Number(rounded) === clean;
  return grouped(exact ? String(Number(rounded)) : rounded);
}

function powerOfTen(value: number): string {
  const exact = Number(value.toPrecision(DIGITS)) === value;
  const [digits = "", power = ""] = value.toExponential(exact ? undefined : DIGITS - 1).split("e");
  return `${digits.replace("-", MINUS)} × 10${superscript(power.replace("+", ""))}`;
}

const MINUS = "−";

/** Commas from 10,000 on; four digits read well without. */
function grouped(text: string): string {
  const [whole = "", part] = text.replace("-", "").split(".");
  const commas = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, ",") : whole;
  return `${text.startsWith("-") ? MINUS : ""}${commas}${part === undefined ? "" : `.${part}`}`;
}

const SUPERSCRIPTS: Readonly<Record<string, string>> = {
  "-": "⁻",
  "0": "⁰",
  "1": "¹",
  "2": "²",
  "3": "³",
  "4": "⁴",
  "5": "⁵",
  "6": "⁶",
  "7": "⁷",
  "8": "⁸",
  "9": "⁹",
};

function superscript(text: string): string {
  return [...text].map((c) => SUPERSCRIPTS[c] ?? c).join("");
}

/** A cell as the pane shows it. */
export function shownCell(value: Cell): string {
  if (typeof value === "number") return shownNumber(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return value;
}

/** A cell with every digit, as a spreadsheet takes it back. */
export function fullText(value: Cell): string {
  return typeof value === "boolean" ? shownCell(value) : String(value);
}

/** A value to paste into a spreadsheet: rows on lines, cells between tabs. */
export function copyText(value: Cell | Table): string {
  if (!isTable(value)) return pasted(value);
  return value.map((row) => row.map(pasted).join("\t")).join("\n");
}

/** One cell of it. A text that begins like a formula gets an apostrophe in front, so that it stays a text where it is pasted. */
function pasted(cell: Cell): string {
  const text = fullText(cell).replace(/[\t\r\n]+/g, " ");
  return typeof cell === "string" && /^\s*[=+\-@]/.test(text) ? `'${text}` : text;
}

export function isTable(value: Cell | Table): value is Table {
  return Array.isArray(value);
}
