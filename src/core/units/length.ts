import { BadInput } from "../kit/refusal.ts";
import { clipped, folded, scanNumber } from "./text.ts";

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

const WORDS: Readonly<Record<LengthUnit, readonly string[]>> = {
  in: ['"', "''", "in", "inch", "inches"],
  ft: ["'", "ft", "foot", "feet"],
  yd: ["yd", "yard", "yards"],
  mm: ["mm"],
  cm: ["cm"],
  m: ["m", "meter", "meters", "metre", "metres"],
};
const UNIT_OF = new Map(
  Object.entries(WORDS).flatMap(([unit, words]) => words.map((word) => [word, unit as LengthUnit] as const)),
);

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

/**
 * Reads a length as builders write it: `12'-6 1/2"`, `12' 6.5"`, `12 ft 6.5 in`, `6-1/2"`, `150.5in`, `3.8 m`, `-2'`,
 * with Unicode primes and fractions. General unit libraries read `12 ft 6.5 in` as an area and `6-1/2 in` as 5.5 in.
 *
 * @param text the length; a bare number is taken in `bareUnit`
 * @returns inches
 * @throws BadInput when the text is no length
 */
export function parseLength(text: string, bareUnit: LengthUnit): number {
  const tidied = folded(folded(text).replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (f) => ` ${VULGAR[f]}`)).toLowerCase();
  const inches = unsigned(tidied.replace(/^[-+] ?/, ""), bareUnit);
  if (inches === undefined || !Number.isFinite(inches)) {
    throw new BadInput(
      `"${clipped(text)}" is not a length`,
      "a length is a number or feet and inches, with . for decimals",
      `Write it like 12'-6 1/2", 12 ft 6.5 in, 150.5 in or 3.8 m`,
    );
  }
  // No minus before nothing: 0 and -0 are one length.
  return tidied.startsWith("-") && inches !== 0 ? -inches : inches;
}

function unsigned(body: string, bareUnit: LengthUnit): number | undefined {
  const first = measure(body);
  if (first === undefined) return undefined;
  const unit = first.word === "" ? bareUnit : UNIT_OF.get(first.word);
  if (unit === undefined) return undefined;
  const length = first.value * INCHES_IN[unit];
  if (first.rest === "") return length;
  if (first.word === "" || unit !== "ft") return undefined;
  const second = measure(first.rest.replace(/^ ?[-,]? ?/, ""));
  if (second === undefined || second.rest !== "") return undefined;
  const inches = second.word === "" || UNIT_OF.get(second.word) === "in";
  return inches ? length + second.value : undefined;
}

interface Measure {
  readonly value: number;
  readonly word: string;
  readonly rest: string;
}

/** A number with the word or mark behind it, and what follows. */
function measure(text: string): Measure | undefined {
  const number = scanNumber(text);
  if (number === undefined) return undefined;
  const after = number.rest.trimStart();
  const word = /^(?:"|''|'|[a-z]+)/.exec(after)?.[0] ?? "";
  return { value: number.value, word, rest: after.slice(word.length).replace(/^\./, "").trimStart() };
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
