import { BadInput } from "../kit/refusal.ts";

/** Inches in one of each unit of length. Exact: NIST SP 811 (2008) B.8, the international foot of 0.3048 m. */
export const INCHES_IN = {
  in: 1,
  ft: 12,
  yd: 36,
  mm: 1 / 25.4,
  cm: 1 / 2.54,
  m: 100 / 2.54,
} as const;

export type LengthUnit = keyof typeof INCHES_IN;

const WORDS: Readonly<Record<string, LengthUnit>> = {
  '"': "in",
  "''": "in",
  in: "in",
  inch: "in",
  inches: "in",
  "'": "ft",
  ft: "ft",
  foot: "ft",
  feet: "ft",
  yd: "yd",
  yard: "yd",
  yards: "yd",
  mm: "mm",
  cm: "cm",
  m: "m",
  meter: "m",
  meters: "m",
  metre: "m",
  metres: "m",
};

const VULGAR: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅓": "1/3",
  "⅔": "2/3",
};

/** `6`, `6.5`, `.5`, `1/2`, `6 1/2`, `6-1/2`, `1,200`, `1e3` */
const NUMBER = String.raw`(?:\d+[ -]+\d+/\d+|\d+/\d+|\d{1,3}(?:,\d{3})+(?:\.\d+)?|(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)`;
const FEET_AND_INCHES = new RegExp(
  String.raw`^(${NUMBER})\s*(?:'|ft|feet|foot)\.?(?!')(?:\s*[-,]?\s*(${NUMBER})\s*(?:"|''|inches|inch|in)?\.?)?$`,
);
const ONE_UNIT = new RegExp(String.raw`^(${NUMBER})\s*("|''|'|[a-z]+)?\.?$`);

/** The unit of length that a word or mark means, or undefined. */
export function lengthUnit(word: string): LengthUnit | undefined {
  const key = tidy(word).replace(/\.$/, "");
  return Object.hasOwn(WORDS, key) ? WORDS[key] : undefined;
}

/**
 * Reads a length as builders write it: `12'-6 1/2"`, `12' 6.5"`, `12 ft 6.5 in`, `6-1/2"`, `150.5in`, `3.8 m`, `-2'`,
 * with Unicode primes and fractions. General unit libraries read `12 ft 6.5 in` as an area and `6-1/2 in` as 5.5 in.
 *
 * @param text the length; a bare number is taken in `bareUnit`
 * @returns inches
 * @throws BadInput when the text is no length
 */
export function parseLength(text: string, bareUnit: LengthUnit): number {
  const tidied = tidy(text);
  const negative = /^-/.test(tidied);
  const body = tidied.replace(/^[-+]\s*/, "");
  const inches = feetAndInches(body) ?? oneUnit(body, bareUnit);
  if (inches === undefined || !Number.isFinite(inches)) {
    throw new BadInput(
      `"${text}" is not a length`,
      "a length is a number or feet and inches, with . for decimals",
      `Write it like 12'-6 1/2", 12 ft 6.5 in, 150.5 in or 3.8 m`,
    );
  }
  return negative ? -inches : inches;
}

function feetAndInches(body: string): number | undefined {
  const match = FEET_AND_INCHES.exec(body);
  if (match?.[1] === undefined) return undefined;
  const feet = parseNumber(match[1]);
  const inches = match[2] === undefined ? 0 : parseNumber(match[2]);
  return feet * INCHES_IN.ft + inches;
}

function oneUnit(body: string, bareUnit: LengthUnit): number | undefined {
  const match = ONE_UNIT.exec(body);
  if (match?.[1] === undefined) return undefined;
  const unit = match[2] === undefined ? bareUnit : lengthUnit(match[2]);
  return unit === undefined ? undefined : parseNumber(match[1]) * INCHES_IN[unit];
}

function parseNumber(text: string): number {
  const mixed = /^(?:(\d+)[ -]+)?(\d+)\/(\d+)$/.exec(text);
  if (mixed === null) return Number(text.replaceAll(",", ""));
  return Number(mixed[1] ?? 0) + Number(mixed[2]) / Number(mixed[3]);
}

function tidy(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (f) => ` ${VULGAR[f]}`)
    .replace(/[′’‘]/g, "'")
    .replace(/[″”“]/g, '"')
    .replace(/[−–—‐‑]/g, "-")
    .replace(/\u2044/g, "/")
    .replace(/[\u00a0\s]+/g, " ")
    .trim()
    .toLowerCase();
}

/**
 * A length as feet, inches and a reduced fraction: `12'-6 1/2"`. Rounds half away from zero and carries.
 * @param inches any finite length
 * @param denominator finest fraction of an inch, a whole number from 1 to 128
 */
export function formatLength(inches: number, denominator: number): string {
  const parts = Math.round(Math.abs(inches) * denominator);
  const perFoot = INCHES_IN.ft * denominator;
  const feet = Math.floor(parts / perFoot);
  const whole = Math.floor((parts % perFoot) / denominator);
  const over = parts % denominator;
  const divisor = gcd(over, denominator);
  const fraction = over === 0 ? "" : ` ${over / divisor}/${denominator / divisor}`;
  return `${inches < 0 && parts > 0 ? "-" : ""}${feet}'-${whole}${fraction}"`;
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}
