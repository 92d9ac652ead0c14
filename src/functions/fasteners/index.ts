import type { CellFunction } from "../declare/cell-function.ts";
import { capacityFunctions } from "./capacity.ts";
import { furringFunctions } from "./furring.ts";
import { rowFunctions } from "./rows.ts";

/** The functions of this family, in the order in which lists show them. */
export const fastenersFunctions: readonly CellFunction[] = [...capacityFunctions, ...rowFunctions, ...furringFunctions];
