import type { Param, TermParam } from "../declare/param.ts";
import type { Defaulted, Entry } from "./glossary/entry.ts";
import { GLOSSARY, type TermName } from "./glossary/index.ts";

type Glossary = typeof GLOSSARY;
type ValueOf<K extends TermName> = Glossary[K] extends { param: Param<infer T, infer _E> } ? T : never;
type ExampleOf<K extends TermName> = Glossary[K] extends { param: Param<infer _T, infer E> } ? E : never;
type DefaultedTerm = { [K in TermName]: Glossary[K] extends Defaulted<infer _T, infer _E> ? K : never }[TermName];

/** Facts that one function says in its own words. */
export interface TermOptions {
  readonly says?: string;
}

function made<T, E>(
  name: TermName,
  standIn: T,
  omitted: string,
  need: boolean,
  { says }: TermOptions = {},
): TermParam<T, E> {
  const { param } = GLOSSARY[name] as Entry<unknown, unknown>;
  return {
    ...param,
    ...(says === undefined ? {} : { says }),
    read: param.read as TermParam<T, E>["read"],
    optional: true,
    standIn,
    omitted: omitted.replace("{}", String(standIn)),
    term: name,
    needed: need,
  } as TermParam<T, E>;
}

/** A term without which the calculation refuses. */
export function needed<K extends TermName>(name: K, options?: TermOptions): TermParam<ValueOf<K>, ExampleOf<K>> {
  // The stand-in is never taken: the reader refuses first.
  return made(name, undefined as ValueOf<K>, "", true, options);
}

/**
 * A term without which the calculation goes another way.
 * @param omitted what it does then, in the words of the pane; "" where leaving it out assumes nothing
 */
export function ifGiven<K extends TermName>(
  name: K,
  omitted = "",
  options?: TermOptions,
): TermParam<ValueOf<K> | undefined, ExampleOf<K>> {
  return made<ValueOf<K> | undefined, ExampleOf<K>>(name, undefined, omitted, false, options);
}

/** A term with the glossary's default, or with one of the function's own and its sentence ({} is the value). */
export function orElse<K extends DefaultedTerm>(name: K): TermParam<ValueOf<K>, ExampleOf<K>>;
export function orElse<K extends TermName>(
  name: K,
  standIn: NoInfer<ValueOf<K>>,
  omitted: string,
  options?: TermOptions,
): TermParam<ValueOf<K>, ExampleOf<K>>;
export function orElse<K extends TermName>(
  name: K,
  standIn?: ValueOf<K>,
  omitted?: string,
  options?: TermOptions,
): TermParam<ValueOf<K>, ExampleOf<K>> {
  const known = GLOSSARY[name] as Partial<Defaulted<ValueOf<K>, ExampleOf<K>>>;
  const value = standIn ?? (known.standIn as ValueOf<K>);
  return made(name, value, omitted ?? known.omitted ?? "", false, options);
}

/** A narrow term, such as membrane waste, that falls back on a broad one with a default. */
export function narrow<K extends TermName, B extends DefaultedTerm>(
  name: K,
  broad: B,
): TermParam<ValueOf<K>, ExampleOf<K>> {
  const { standIn, omitted } = GLOSSARY[broad] as Defaulted<unknown, unknown>;
  return { ...made<ValueOf<K>, ExampleOf<K>>(name, standIn as ValueOf<K>, omitted, false), fallback: broad };
}
