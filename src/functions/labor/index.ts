import type { CellFunction } from "../declare/cell-function.ts";
import { compare } from "./compare.ts";
import { laborRate, schedule } from "./crew.ts";
import { days, hours, learning } from "./hours.ts";

/** The functions of this family, in the order in which lists show them. */
export const laborFunctions: readonly CellFunction[] = [hours, days, learning, compare, laborRate, schedule];
