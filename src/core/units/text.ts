import { BadInput } from "../kit/refusal.ts";

/** Longest text that is read as one value; a cell holds up to 32,767 characters. */
export const LONGEST_TEXT = 200;
/** Characters of a text that a sentence quotes. */
const QUOTED = 60;
/** Full-width forms (U+FF01 to U+FF5E) stand this far above the plain ones. */
const FULL_WIDTH = 0xfee0;

/** A text as a sentence or the pane quotes it, cut off where it is long. */
export function clipped(text: string): string {
  return text.length > QUOTED ? `${text.slice(0, QUOTED)}...` : text;
}

/** Texts of nothing but these have one form; nearly all that is read is so. */
const PLAIN = /^[ -~]*$/;

/** A text as typed on any keyboard: full-width forms become plain ones, characters without width go. */
export function plainForms(text: string): string {
  if (PLAIN.test(text)) return text;
  return text
    .replace(/[\u00ad\u200b-\u200f\u2060\ufeff]/g, "")
    .replace(/[\uff01-\uff5e]/g, (c) => String.fromCharCode(c.charCodeAt(0) - FULL_WIDTH))
    .replaceAll("\u3000", " ");
}

/**
 * The text of a measure with its ways of writing made one: plain forms, all spaces alike, one minus, one prime. Every reader of measures starts
 * with it, so that none works on more than a value can be long.
 * @throws BadInput for a text of more than 200 characters
 */
export function folded(text: string): string {
  if (text.length > LONGEST_TEXT) {
    throw new BadInput(
      `"${clipped(text)}" has ${text.length} characters`,
      `a value has at most ${LONGEST_TEXT}`,
      "Point at the cell that holds the value alone",
    );
  }
  if (PLAIN.test(text)) return text.replace(/ {2,}/g, " ").trim();
  return plainForms(text)
    .replace(/[\s\u00a0\u202f]+/g, " ")
    .replace(/[−–—‐‑]/g, "-")
    .replace(/[′’‘]/g, "'")
    .replace(/[″”“]/g, '"')
    .replaceAll("\u2044", "/")
    .trim();
}

/** A number at the start of a text, and what follows it. */
export interface Scanned {
  readonly value: number;
  readonly rest: string;
}

const DECIMAL = /^(?:\d{1,3}(?:,\d{3})+(?![\d,])(?:\.\d*)?|\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?/;
const FRACTION = /^(\d+)\/(\d+)/;
const MIXED = /^(\d+)(?: |-| - )(\d+)\/(\d+)/;

/**
 * Reads a number without a sign: `6`, `6.5`, `.5`, `1/2`, `6 1/2`, `6-1/2`, `1,200`, `1e3`.
 * @param text folded, in lower case
 * @returns undefined where the text starts with no number
 */
export function scanNumber(text: string): Scanned | undefined {
  const mixed = MIXED.exec(text);
  if (mixed !== null) return scanned(text, mixed[0], Number(mixed[1]) + Number(mixed[2]) / Number(mixed[3]));
  const fraction = FRACTION.exec(text);
  if (fraction !== null) return scanned(text, fraction[0], Number(fraction[1]) / Number(fraction[2]));
  const decimal = DECIMAL.exec(text);
  return decimal === null ? undefined : scanned(text, decimal[0], Number(decimal[0].replaceAll(",", "")));
}

function scanned(text: string, read: string, value: number): Scanned | undefined {
  const rest = text.slice(read.length);
  // A digit, a comma or a bar behind it means that it was cut in the middle.
  return Number.isFinite(value) && !/^[\d.,/]/.test(rest) ? { value, rest } : undefined;
}
