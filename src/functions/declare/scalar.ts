import { BadInput, plain } from "../../core/kit/refusal.ts";
import { type LengthUnit, parseLength } from "../../core/units/length.ts";
import { fromInches, parseQuantity } from "../../core/units/quantity.ts";
import { parseSlope } from "../../core/units/slope.ts";
import { clipped } from "../../core/units/text.ts";
import { capital, oneCell } from "./cell.ts";
import { dateForLength, isDate } from "./dates.ts";
import { checkLimits, inside, withUnit } from "./limits.ts";
import type { Limits, Param, ParamKind, Reading, Usual } from "./param.ts";
import { isRange, quote } from "./raw.ts";

export interface NumberOptions extends Limits {
  readonly says: string;
  readonly usual?: Usual;
  readonly heads?: readonly string[];
}

/** A number as read; its words are made only where somebody looks at them. A class, since objects with a getter of their own are slow to make. */
class Read implements Reading<number> {
  readonly value: number;
  readonly #words: (value: number) => string;
  constructor(value: number, words: (value: number) => string) {
    this.value = value;
    this.#words = words;
  }
  get shown(): string {
    return this.#words(this.value);
  }
}

/** The word for nothing, where a 0 could be a blank cell. */
export function isNone(cell: unknown): boolean {
  return typeof cell === "string" && cell.trim().toLowerCase() === "none";
}

const wordsIn = (unit: string) => (value: number) => withUnit(value, unit);

/** A number that was typed as text, with what was typed where that says more. */
function asTyped(text: string, value: number, shown: string): string {
  return text === String(value) || text === shown ? shown : `${clipped(text)} = ${shown}`;
}

/** Limits without those that a narrower one makes idle: "above 0" beside "at least 0". */
function narrowed(limits: Limits): Limits {
  const { min, max, above, below, ...rest } = limits;
  return {
    ...rest,
    ...(above === undefined ? {} : { above }),
    ...(below === undefined ? {} : { below }),
    ...(min === undefined || (above !== undefined && above >= min) ? {} : { min }),
    ...(max === undefined || (below !== undefined && below <= max) ? {} : { max }),
  };
}

/** A parameter that is a number in the end; `fromText` reads text in the unit of a bare number. */
function numeric(
  kind: ParamKind,
  unit: string,
  o: NumberOptions,
  fromText: (text: string) => number,
  fromNumber?: (value: number, at: string) => Reading<number>,
): Param<number, number | string> {
  const { says, usual, heads, ...given } = o;
  const limits = narrowed(given);
  const wants = `${says}${unit === "" ? "" : ` in ${unit}`}`;
  const words = wordsIn(unit);
  return {
    kind,
    says,
    unit,
    limits,
    ...(usual === undefined ? {} : { usual }),
    ...(heads === undefined ? {} : { heads }),
    read(raw, at, notes) {
      const cell = oneCell(raw, at, wants);
      if (typeof cell === "boolean") {
        throw new BadInput(`${capital(at)} is ${quote(cell)}`, "a number is wanted here", `Give ${says}`);
      }
      const read = typeof cell === "number" ? readNumber(cell, at) : readText(cell, at);
      // Who writes none means nothing, and is not asked whether the cell is blank.
      checkLimits(read.value, at, unit, limits, isNone(cell) ? undefined : usual, notes);
      return read;
    },
  };

  function readNumber(value: number, at: string): Reading<number> {
    return fromNumber === undefined ? new Read(value, words) : fromNumber(value, at);
  }

  function readText(text: string, at: string): Reading<number> {
    try {
      const value = isNone(text) && inside(limits, 0) ? 0 : fromText(text);
      return new Read(value, () => asTyped(text.trim(), value, words(value)));
    } catch (refusal) {
      if (refusal instanceof BadInput) throw new BadInput(`${capital(at)}: ${refusal.what}`, refusal.why, refusal.todo);
      throw refusal;
    }
  }
}

/** A pure number: a factor, a coefficient, a count. */
export function number(o: NumberOptions): Param<number, number | string> {
  return numeric("number", "", o, (text) => parseQuantity(text, ""));
}

/** A number in a unit that is never converted, such as air changes or dollars an hour. */
export function measure(unit: string, o: NumberOptions): Param<number, number | string> {
  const fromText = (text: string) => parseQuantity(withoutUnit(text.trim(), unit), "");
  return numeric("number", unit, o, fromText);
}

/** A number without its unit, which stands behind it; a sign of money may stand before it. */
function withoutUnit(text: string, unit: string): string {
  const bare = text.endsWith(unit) ? text.slice(0, -unit.length).trim() : text;
  if (/[\d.]$/.test(bare)) return bare.startsWith("$") && unit.startsWith("$") ? bare.slice(1).trim() : bare;
  return text;
}

/** A whole number. */
export function whole(o: NumberOptions): Param<number, number | string> {
  const inner = number(o);
  return {
    ...inner,
    read(raw, at, notes) {
      const reading = inner.read(raw, at, notes);
      if (Number.isInteger(reading.value)) return reading;
      throw new BadInput(
        `${capital(at)} is ${plain(reading.value)}`,
        "a whole number is wanted here",
        "Round it yourself",
      );
    },
  };
}

/** A length: a number in `unit`, or feet-and-inches or metric text. Where it has a usual range, a number that is likely a date is refused. */
export function length(unit: LengthUnit, o: NumberOptions): Param<number, number | string> {
  const fromText = (text: string) => fromInches(parseLength(text, unit), unit);
  const words = wordsIn(unit);
  return numeric("length", unit, o, fromText, (value, at) => {
    if (o.usual !== undefined && value > o.usual.max && isDate(value)) throw dateForLength(capital(at), value, unit);
    return new Read(value, words);
  });
}

/** Any other quantity: a number in `unit`, or text with a unit. */
export function quantity(unit: string, o: NumberOptions): Param<number, number | string> {
  return numeric("quantity", unit, o, (text) => parseQuantity(text, unit));
}

/** A temperature reading, a number in F or text such as `20 C`. */
export function temperature(o: NumberOptions): Param<number, number | string> {
  return quantity("F", o);
}

/** A roof slope in degrees, from text that says how it is meant: `6:12`, `50%`, `26.57 deg`. A bare number is refused: 8 may be 8:12 or 8 degrees. */
export function slope(o: NumberOptions): Param<number, string> {
  const refuse = (written: string, at: string): never => {
    throw new BadInput(
      `${capital(at)} is the bare number ${written}`,
      "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12 into an ordinary cell becomes a time",
      'Write it as text: "6:12", "26.6 deg" or "50%"',
    );
  };
  const bare = /^[-+]?(\d+\.?\d*|\.\d+)$/;
  const inner = numeric("quantity", "deg", o, parseSlope, (value, at) => refuse(plain(value), at));
  return {
    ...inner,
    read(raw, at, notes) {
      const cell = isRange(raw) ? raw[0]?.[0] : raw;
      if (typeof cell === "string" && bare.test(cell.trim())) refuse(clipped(cell.trim()), at);
      return inner.read(raw, at, notes);
    },
  } as Param<number, string>;
}

/** A share below this is likely a percent that was divided by a hundred twice, or 0.1% where 0.1 is meant. */
const TINY_SHARE = 0.005;

/** A share: 10% or 0.1. A bare number above `max` (1 unless told) is refused with how to write it. */
export function share(o: NumberOptions): Param<number, number | string> {
  const max = o.max ?? 1;
  const words = (value: number) => `${plain(value)} (${plain(value * 100)}%)`;
  const asShare = (value: number, written: () => string): number => {
    if (value > max && value <= 100)
      throw new BadInput(
        `${written()} is above ${plain(max)}`,
        "a share is written as a part of one",
        `Type ${plain(value)}% or ${plain(value / 100)}`,
      );
    return value;
  };
  const inner = numeric(
    "number",
    "",
    { min: 0, ...o, max },
    (text) => percentText(text) ?? asShare(parseQuantity(text, ""), () => text),
    (value, at) =>
      new Read(
        asShare(value, () => `${capital(at)} of ${plain(value)}`),
        words,
      ),
  );
  return {
    ...inner,
    read(raw, at, notes) {
      const reading = inner.read(raw, at, notes);
      const { value } = reading;
      if (value > 0 && value < TINY_SHARE) {
        notes.caution(`${capital(at)} is ${words(value)}, less than half a percent: is ${plain(value * 100)} meant?`);
      }
      return reading;
    },
  };
}

function percentText(text: string): number | undefined {
  const match = /^([-+]?\d+(?:\.\d+)?|[-+]?\.\d+)\s*%$/.exec(text.trim());
  return match === null ? undefined : Number(match[1]) / 100;
}

/** Below this a relative humidity is more likely a slip than a climate. */
const DRY_PERCENT = 5;

/** Relative humidity in percent: 50, "50%", or a percent cell (0.5; up to 1 is read as a share, as number or as text). */
export function humidity(o: NumberOptions): Param<number, number | string> {
  const fromBare = (value: number) => (value > 0 && value <= 1 ? value * 100 : value);
  const words = wordsIn("%");
  return numeric(
    "quantity",
    "%",
    {
      ...(o.above === undefined ? { min: 0 } : {}),
      max: 100,
      usual: { min: DRY_PERCENT, max: 100, ask: "is it a percent?" },
      ...o,
    },
    (text) => {
      const part = percentText(text);
      return part === undefined ? fromBare(parseQuantity(text, "")) : part * 100;
    },
    (value) =>
      new Read(fromBare(value), (read) =>
        read === value ? words(value) : `${plain(value)} read as a share: ${words(read)}`,
      ),
  );
}

/** The parameter's value made into another, with its own refusals. */
export function mapped<A, B, E>(inner: Param<A, E>, map: (value: A, at: string) => B, says?: string): Param<B, E> {
  const { example: _example, ...facts } = inner;
  return {
    ...facts,
    ...(says === undefined ? {} : { says }),
    read(raw, at, notes) {
      const reading = inner.read(raw, at, notes);
      return { value: map(reading.value, at), shown: reading.shown };
    },
  };
}
