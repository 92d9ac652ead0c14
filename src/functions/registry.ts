import { cuttingFunctions } from "./cutting.ts";
import type { CellFunction } from "./declare.ts";
import { enclosureFunctions } from "./enclosure.ts";
import { loadsFunctions } from "./loads.ts";
import { takeoffFunctions } from "./takeoff.ts";
import { unitFunctions } from "./units.ts";
import { windFunctions } from "./wind.ts";

/** Every function, family by family, in the order in which lists show them. */
export const registry: readonly CellFunction[] = [
  ...unitFunctions,
  ...windFunctions,
  ...loadsFunctions,
  ...enclosureFunctions,
  ...takeoffFunctions,
  ...cuttingFunctions,
];

const byName = new Map(registry.map((fn) => [fn.name, fn]));

/** The function of a name in cells (any case, without the namespace), or undefined. */
export function functionNamed(name: string): CellFunction | undefined {
  return byName.get(name.toUpperCase());
}
