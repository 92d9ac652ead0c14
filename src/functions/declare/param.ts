import type { Raw, RawArgument } from "./raw.ts";

/** What reading an argument leaves beside its value. */
export interface Notes {
  assume(sentence: string): void;
  caution(sentence: string): void;
}

/** An argument as read, and the words the pane shows for it. */
export interface Reading<T> {
  readonly value: T;
  readonly shown: string;
}

export interface Limits {
  readonly min?: number;
  readonly max?: number;
  /** the value must be above this */
  readonly above?: number;
  /** the value must be below this */
  readonly below?: number;
  /** rule or table that sets the limit; a value outside is then #N/A, else #VALUE! */
  readonly source?: string;
}

/**
 * A range that sound inputs keep to; outside it the result stands, with a caution. Where a declaration names no source, its bounds are common practice,
 * no source: far enough apart that ordinary work stays inside, near enough that another unit falls out.
 */
export interface Usual {
  readonly min: number;
  readonly max: number;
  /** of the size, whatever the sign: a load that may lift */
  readonly eitherSign?: true;
  /** ends the caution: "is it an allowable-stress speed?" */
  readonly ask: string;
}

export type ParamKind = "number" | "length" | "quantity" | "choice" | "text" | "flag" | "list" | "table" | "basis";

/** Facts for help, metadata, forms and tests; no behaviour. */
export interface ParamFacts {
  readonly kind: ParamKind;
  /** what it is, in a few words, without the unit */
  readonly says: string;
  /** unit of a bare number, "" where there is none */
  readonly unit: string;
  readonly limits?: Limits;
  readonly usual?: Usual;
  readonly choices?: readonly string[];
  /** what the values of `choices` mean, in the same order */
  readonly choicesSay?: readonly string[];
  readonly columns?: readonly ColumnFacts[];
}

/** A column of a table argument. */
export interface ColumnFacts extends ParamFacts {
  readonly name: string;
  readonly optional: boolean;
  /** words that name the column in a header row */
  readonly heads: readonly string[];
}

/**
 * A parameter: how one argument is read.
 * `T` is the value the calculation gets, `E` what an example (and a user) may write.
 */
export interface Param<T, E> extends ParamFacts {
  /** @param at how a sentence names the argument: "speed", "thickness in row 4 of layers" */
  read(raw: RawArgument, at: string, notes: Notes): Reading<T>;
  /** words that name it in a header row, when it is used as a column */
  readonly heads?: readonly string[];
  /** carries `E` for the compiler; never set */
  readonly example?: E;
}

/** A parameter that may be left out. */
export interface OptionalParam<T, E> extends Param<T, E> {
  readonly optional: true;
  /** what a missing argument stands for, in the words of the pane */
  readonly omitted: string;
  /** the value that a missing argument stands for; undefined where the calculation goes another way */
  readonly standIn: T;
}

/**
 * A parameter that a basis can hold, by the term of the glossary that names its row. In a call it may always be left out.
 */
export interface TermParam<T, E> extends OptionalParam<T, E> {
  readonly term: string;
  /** the calculation refuses where neither the call nor a basis holds it */
  readonly needed: boolean;
  /** a broader term that is looked for where this one stands nowhere */
  readonly fallback?: string;
}

export function isTerm(param: Param<unknown, unknown>): param is TermParam<unknown, unknown> {
  return "term" in param;
}

export function isOptional(param: Param<unknown, unknown>): param is OptionalParam<unknown, unknown> {
  return "optional" in param && param.optional === true;
}

/**
 * Makes a parameter optional.
 * @param standIn the value taken when it is left out; undefined when the calculation goes another way then
 * @param omitted the assumption that the pane lists: "topographic factor {}: flat site", where {} is the stand-in; "" where leaving it out assumes nothing
 */
export function optional<T, E>(param: Param<T, E>, standIn: T, omitted: string): OptionalParam<T, E>;
export function optional<T, E>(
  param: Param<T, E>,
  standIn: undefined,
  omitted: string,
): OptionalParam<T | undefined, E>;
export function optional<T, E>(
  param: Param<T, E>,
  standIn: T | undefined,
  omitted: string,
): OptionalParam<T | undefined, E> {
  return { ...param, read: param.read, optional: true, standIn, omitted: omitted.replace("{}", String(standIn)) };
}

export type { Raw, RawArgument };
