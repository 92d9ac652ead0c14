import type { Param } from "../../declare/param.ts";

/** A term of the basis: how its value is read, what else it is called, and what stands in where nobody gives it. */
export interface Entry<T, E> {
  readonly param: Param<T, E>;
  readonly aliases: readonly string[];
  readonly omitted: string;
}

/** A term that has a value where nobody gives it. */
export interface Defaulted<T, E> extends Entry<T, E> {
  readonly standIn: T;
}

/** A term without a default. */
export function entry<T, E>(param: Param<T, E>, aliases: readonly string[]): Entry<T, E> {
  return { param, aliases, omitted: "" };
}

/**
 * A term with a default.
 * @param omitted the assumption that the working lists, where {} is the default
 */
export function defaulted<T, E>(
  param: Param<T, E>,
  aliases: readonly string[],
  standIn: NoInfer<T>,
  omitted: string,
): Defaulted<T, E> {
  return { param, aliases, standIn, omitted: omitted.replace("{}", String(standIn)) };
}
