import { BadInput, OutOfRange, plain } from "../../core/kit/refusal.ts";
import { type LengthUnit, parseLength } from "../../core/units/length.ts";
import { fromInches, parseQuantity } from "../../core/units/quantity.ts";
import { parseSlope } from "../../core/units/slope.ts";
import { clipped, LONGEST_TEXT, plainForms } from "../../core/units/text.ts";
import { dateForLength, isDate } from "./dates.ts";
import type { Limits, Notes, Param, ParamKind, Reading, Usual } from "./param.ts";
import { isBlank, isCellError, isRange, quote, type Raw, type RawArgument } from "./raw.ts";

export interface NumberOptions extends Limits {
  readonly says: string;
  readonly usual?: Usual;
  readonly heads?: readonly string[];
}

/** The one cell of an argument: a 1x1 range counts as its cell; errors and blanks get their sentence. */
export function oneCell(raw: RawArgument, at: string, wants: string): Exclude<Raw, null | undefined | object> {
  const cell = isRange(raw) ? singleCell(raw, at) : raw;
  if (isCellError(cell)) {
    throw new BadInput(
      `The cell for ${at} holds ${cell.error}`,
      "an error cannot be calculated with",
      "Mend that cell first",
    );
  }
  if (isBlank(cell) || cell === null || cell === undefined) {
    throw new BadInput(`${capital(at)} is missing`, "the argument is left out or its cell is blank", `Give ${wants}`);
  }
  if (typeof cell === "number" && !Number.isFinite(cell)) {
    throw new BadInput(`${capital(at)} is not a finite number`, "it cannot be calculated with", `Give ${wants}`);
  }
  if (typeof cell === "string") return ordinary(cell, at, wants);
  // A zero has no sign in a cell.
  return cell === 0 ? 0 : (cell as number | boolean);
}

/** A text of a length that can be an argument, as a plain keyboard types it. */
function ordinary(text: string, at: string, wants: string): string {
  if (text.length <= LONGEST_TEXT) return plainForms(text);
  throw new BadInput(
    `${capital(at)} is a text of ${text.length} characters`,
    `at most ${LONGEST_TEXT} are read here`,
    `Give ${wants}`,
  );
}

function singleCell(rows: readonly (readonly Raw[])[], at: string): Raw {
  if (rows.length === 1 && rows[0]?.length === 1) return rows[0][0];
  throw new BadInput(
    `${capital(at)} is a range of ${rows.length} x ${rows[0]?.length ?? 0} cells`,
    "this argument takes one value",
    "Point at a single cell",
  );
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Limits and usual range of a number that has been read. */
function check(value: number, at: string, unit: string, o: Limits, usual: Usual | undefined, notes: Notes): void {
  if (!inside(o, value)) {
    const Kind = o.source === undefined ? BadInput : OutOfRange;
    const date = isDate(value) ? " (a date arrives as such a number)" : "";
    throw new Kind(
      `${capital(at)} is ${withUnit(value, unit)}${date}`,
      `it must be ${limitText(o, unit)}${o.source === undefined ? "" : ` (${o.source})`}`,
      otherUnit(value, unit, o) ?? "Use a value inside that range",
    );
  }
  if (usual !== undefined) askUnusual(value, at, unit, usual, notes);
}

function askUnusual(value: number, at: string, unit: string, usual: Usual, notes: Notes): void {
  const size = usual.eitherSign ? Math.abs(value) : value;
  if (size >= usual.min && size <= usual.max) return;
  const side = size < usual.min ? `below the usual ${plain(usual.min)}` : `above the usual ${plain(usual.max)}`;
  const sign = usual.eitherSign ? " of either sign" : "";
  notes.caution(`${capital(at)} of ${withUnit(value, unit)} is ${side}${sign}: ${usual.ask}`);
}

/** How to write a length that is right in the other unit of the tape: feet where inches are read, inches where feet are. */
function otherUnit(value: number, unit: string, o: Limits): string | undefined {
  const times = unit === "in" ? 12 : unit === "ft" ? 1 / 12 : undefined;
  if (times === undefined || value <= 0 || !inside(o, value * times)) return undefined;
  const other = unit === "in" ? "ft" : "in";
  return `Use a value inside that range; if ${other} is meant, type "${plain(value)} ${other}"`;
}

/** Whether a number lies inside limits. */
export function inside(o: Limits, value: number): boolean {
  const low = (o.min !== undefined && value < o.min) || (o.above !== undefined && value <= o.above);
  const high = (o.max !== undefined && value > o.max) || (o.below !== undefined && value >= o.below);
  return !low && !high && Number.isFinite(value);
}

/** "from 15 to 500 ft", "above 0", "at most 1" */
export function limitText(o: Limits, unit: string): string {
  const u = unit === "" ? "" : ` ${unit}`;
  if (o.min !== undefined && o.max !== undefined) return `from ${plain(o.min)} to ${plain(o.max)}${u}`;
  const words: string[] = [];
  if (o.min !== undefined) words.push(`at least ${plain(o.min)}${u}`);
  if (o.above !== undefined) words.push(`above ${plain(o.above)}${u}`);
  if (o.max !== undefined) words.push(`at most ${plain(o.max)}${u}`);
  if (o.below !== undefined) words.push(`below ${plain(o.below)}${u}`);
  return words.join(" and ") || "a finite number";
}

function withUnit(value: number, unit: string): string {
  return unit === "" ? plain(value) : `${plain(value)} ${unit}`;
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
      check(read.value, at, unit, limits, isNone(cell) ? undefined : usual, notes);
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
  const fromText = (text: string) => parseQuantity(text.replace(unit, "").trim(), "");
  return numeric("number", unit, o, fromText);
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
  return numeric(
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

export interface ChoiceOptions<C extends string> {
  readonly says: string;
  /** other ways to write a choice, in lower case: { "2016": "7-16" } */
  readonly also?: Readonly<Record<string, C>>;
  /** what each choice means, for help */
  readonly means?: Readonly<Record<C, string>>;
  readonly heads?: readonly string[];
}

/** One of a few words, in any case; numbers are read as their digits. */
export function choice<const C extends string>(choices: readonly C[], o: ChoiceOptions<C>): Param<C, C> {
  const words = new Map<string, C>(Object.entries<C>(o.also ?? {}));
  for (const c of [...choices].reverse()) words.set(c.toLowerCase(), c);
  const wants = `one of ${choices.join(", ")}`;
  return {
    kind: "choice",
    says: o.says,
    unit: "",
    choices,
    ...(o.means === undefined ? {} : { choicesSay: choices.map((c) => o.means?.[c] ?? "") }),
    ...(o.heads === undefined ? {} : { heads: o.heads }),
    read(raw, at) {
      const cell = oneCell(raw, at, wants);
      const found = words.get(String(cell).trim().toLowerCase());
      if (found !== undefined) return { value: found, shown: found };
      const date = typeof cell === "number" && isDate(cell);
      throw new BadInput(
        `${capital(at)} is ${quote(cell)}`,
        date ? "the spreadsheet seems to have turned the text into a date" : `it must be ${wants}`,
        date ? `Type it as text, with ' in front: ${wants}` : "Type one of these",
      );
    },
  };
}

/** Free text: a name, a label, a length to be read by the function itself. */
export function text(o: { readonly says: string; readonly heads?: readonly string[] }): Param<string, string | number> {
  return {
    kind: "text",
    says: o.says,
    unit: "",
    ...(o.heads === undefined ? {} : { heads: o.heads }),
    read(raw, at) {
      const cell = oneCell(raw, at, o.says);
      const value = String(cell).trim();
      return { value, shown: value };
    },
  };
}

/** Yes or no, also TRUE and FALSE, 1 and 0. */
export function flag(o: { readonly says: string; readonly heads?: readonly string[] }): Param<boolean, boolean> {
  return {
    kind: "flag",
    says: o.says,
    unit: "",
    choices: ["yes", "no"],
    ...(o.heads === undefined ? {} : { heads: o.heads }),
    read(raw, at) {
      const cell = oneCell(raw, at, "yes or no");
      const key = String(cell).trim().toLowerCase();
      if (["true", "1", "yes", "y"].includes(key)) return { value: true, shown: "yes" };
      if (["false", "0", "no", "n"].includes(key)) return { value: false, shown: "no" };
      throw new BadInput(`${capital(at)} is ${quote(cell)}`, "yes or no is wanted here", "Type yes or no");
    },
  };
}
