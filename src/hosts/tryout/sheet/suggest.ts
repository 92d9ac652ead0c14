import type { Univer } from "@univerjs/core";
import { FunctionType } from "@univerjs/engine-formula";
import { IDescriptionService } from "@univerjs/preset-sheets-core";
import { type CellFunction, NAMESPACE } from "../../../functions/declare/cell-function.ts";
import { find } from "../../../functions/find/find.ts";

type Item = ReturnType<IDescriptionService["getSearchListByNameFirstLetter"]>[number];

/** Shorter than this a word could mean anything. */
const SHORTEST = 3;

/** The engine's list of names finds a function by its beginning alone, SILL.; with this it finds `dew` and `drywall` too. */
export function offerOurNames(univer: Univer, functions: readonly CellFunction[]): void {
  const service = univer.__getInjector().get(IDescriptionService);
  const known = service.getSearchListByNameFirstLetter.bind(service);
  service.getSearchListByNameFirstLetter = (typed) => {
    const own = known(typed);
    // A name that is whole already must stay what it is when Enter is pressed.
    const whole = own.some(({ name }) => name.toUpperCase() === typed.toUpperCase());
    return whole ? own : [...own, ...ours(typed, functions)];
  };
}

function ours(typed: string, functions: readonly CellFunction[]): Item[] {
  if (typed.length < SHORTEST || typed.toUpperCase().startsWith(NAMESPACE)) return [];
  const starting = functions.filter(({ name }) => name.startsWith(typed.toUpperCase()));
  const found = starting.length > 0 ? starting : find(functions, typed);
  return found.map(({ name, summary }) => ({
    name: `${NAMESPACE}.${name}`,
    desc: summary,
    functionType: FunctionType.User,
  }));
}
