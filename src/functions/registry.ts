import { anchorageFunctions } from "./anchorage/index.ts";
import { costFunctions } from "./cost/index.ts";
import { cuttingFunctions } from "./cutting/index.ts";
import type { CellFunction } from "./declare/cell-function.ts";
import { enclosureFunctions } from "./enclosure/index.ts";
import { fastenersFunctions } from "./fasteners/index.ts";
import { laborFunctions } from "./labor/index.ts";
import { liftingFunctions } from "./lifting/index.ts";
import { loadsFunctions } from "./loads/index.ts";
import { takeoffFunctions } from "./takeoff/index.ts";
import { unitFunctions } from "./units/index.ts";
import { windFunctions } from "./wind/index.ts";
import { woodFunctions } from "./wood/index.ts";

/** Every function, family by family, in the order in which lists show them. */
export const registry: readonly CellFunction[] = [
  ...unitFunctions,
  ...windFunctions,
  ...loadsFunctions,
  ...woodFunctions,
  ...fastenersFunctions,
  ...anchorageFunctions,
  ...enclosureFunctions,
  ...takeoffFunctions,
  ...cuttingFunctions,
  ...liftingFunctions,
  ...laborFunctions,
  ...costFunctions,
];

const byName = new Map(registry.map((fn) => [fn.name, fn]));

/** The function of a name in cells (any case, without the namespace), or undefined. */
export function functionNamed(name: string): CellFunction | undefined {
  return byName.get(name.toUpperCase());
}
