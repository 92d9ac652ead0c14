import { BadInput } from "../kit/refusal.ts";
import { INCHES_IN } from "./length.ts";
import { type Rational, times } from "./rational.ts";
import { clipped, folded, scanNumber } from "./text.ts";
import { kindOf, ratio, type Unit, unitOf, unitText } from "./unit.ts";

/** Quantities other than lengths: reading them, and converting between units of one kind. */

/** A scale of temperature: K = (reading + shift) x degree. Alone, F, C and K are readings; beside other units they are differences. */
interface Scale {
  readonly shift: number;
  readonly degree: number;
}
/** NIST SP 811 (2008) B.8. */
const FAHRENHEIT: Scale = { shift: 459.67, degree: 5 / 9 };
const CELSIUS: Scale = { shift: 273.15, degree: 1 };
const KELVIN: Scale = { shift: 0, degree: 1 };
const SCALES: ReadonlyMap<string, Scale> = new Map([
  ["f", FAHRENHEIT],
  ["degf", FAHRENHEIT],
  ["fahrenheit", FAHRENHEIT],
  ["c", CELSIUS],
  ["degc", CELSIUS],
  ["celsius", CELSIUS],
  ["k", KELVIN],
  ["kelvin", KELVIN],
]);

/** One side of a conversion. */
interface Side {
  readonly unit: Unit;
  /** where it is a reading of temperature */
  readonly scale: Scale | undefined;
}

const sides = new Map<string, Side | undefined>();
/** Spellings that are remembered; more are read anew. */
const MOST_REMEMBERED = 500;

function side(text: string): Side | undefined {
  if (sides.has(text)) return sides.get(text);
  const unit = text.length > 60 ? undefined : unitOf(text);
  const read = unit === undefined ? undefined : { unit, scale: SCALES.get(unitText(text).replaceAll(" ", "")) };
  if (sides.size < MOST_REMEMBERED) sides.set(text, read);
  return read;
}

/** True where `word` is a unit that can be read here. */
export function isUnit(word: string): boolean {
  return folded(word) !== "" && side(word) !== undefined;
}

function sideOf(word: string): Side {
  const read = isUnit(word) ? side(word) : undefined;
  if (read !== undefined) return read;
  throw new BadInput(
    `"${clipped(word)}" is not a unit that is known here`,
    "units are written as the trade writes them",
    "Use one such as ft, in, m, mm, mph, psf, plf, psi, kPa, lb, kip, kN, F, C, perm, R, RSI, board foot or square",
  );
}

const ratios = new Map<string, Rational | undefined>();

/**
 * Converts a value between units of the same kind. A pound converts as a mass or as a force, whichever the other side is, under standard gravity.
 * Temperatures convert as readings; `delta F` and `delta C` are differences.
 *
 * @throws BadInput for an unknown unit, or two that do not measure the same thing
 */
export function convert(value: number, from: string, to: string): number {
  const [source, target] = [sideOf(from), sideOf(to)];
  if (source.scale !== undefined && target.scale !== undefined) {
    return temperature(value, source.scale, target.scale);
  }
  const by = source.scale === undefined && target.scale === undefined ? factor(from, source, to, target) : undefined;
  if (by !== undefined) return times(value, by);
  throw new BadInput(
    `${clipped(from)} does not convert to ${clipped(to)}`,
    `${clipped(from)} measures ${measured(source)}, ${clipped(to)} ${measured(target)}`,
    inverse(source.unit, target.unit)
      ? `One is 1 over the other: convert to the unit of ${clipped(from)}'s own kind and take 1 over it`
      : `Give a unit of the same kind as ${clipped(to)}`,
  );
}

/** Whether one measures 1 over what the other measures, as U and R. */
function inverse(a: Unit, b: Unit): boolean {
  return a.powers.some((p) => p !== 0) && a.powers.every((p, i) => p + (b.powers[i] ?? 0) === 0);
}

function factor(from: string, source: Side, to: string, target: Side): Rational | undefined {
  const key = `${from}\n${to}`;
  if (!ratios.has(key) && ratios.size < MOST_REMEMBERED) ratios.set(key, ratio(source.unit, target.unit));
  return ratios.get(key) ?? ratio(source.unit, target.unit);
}

function temperature(value: number, from: Scale, to: Scale): number {
  return from === to ? value : ((value + from.shift) * from.degree) / to.degree - to.shift;
}

function measured(side: Side): string {
  return side.scale === undefined ? kindOf(side.unit) : "a temperature";
}

/**
 * Reads a number, with or without a unit, from text: `24`, `1,200 lb`, `2.4 kPa`, `1/2 lb`.
 * @param bareUnit unit of a bare number and of the result; "" for a pure number, which takes no fraction: 1/2 may be a date
 * @throws BadInput when the text is no number, or its unit does not measure the same thing as `bareUnit`
 */
export function parseQuantity(text: string, bareUnit: string): number {
  const tidied = folded(text).toLowerCase();
  const body = tidied.replace(/^[-+] ?/, "");
  const number = scanNumber(body);
  const read = body.slice(0, body.length - (number?.rest.length ?? 0));
  if (number === undefined || (bareUnit === "" && read.includes("/"))) {
    const like = bareUnit === "" ? "a plain number such as 24" : `a number of ${bareUnit}, or a number with its unit`;
    throw new BadInput(
      `"${clipped(text)}" is not a number`,
      "decimals take a . and thousands may take a ,",
      `Write ${like}`,
    );
  }
  const value = tidied.startsWith("-") && number.value !== 0 ? -number.value : number.value;
  const unit = number.rest.trim();
  if (unit === "") return value;
  if (bareUnit === "") {
    throw new BadInput(
      `"${clipped(text)}" carries a unit`,
      "this input is a plain number without one",
      "Leave the unit away",
    );
  }
  return convert(value, unit, bareUnit);
}

/** Inches to another unit of length by name. */
export function fromInches(inches: number, unit: keyof typeof INCHES_IN): number {
  return inches / INCHES_IN[unit];
}
