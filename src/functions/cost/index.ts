import type { CellFunction } from "../declare/cell-function.ts";
import { bid, costOrder } from "./bid.ts";
import { escalate, margin, markup, perArea } from "./price.ts";
import { contingencyTable, range } from "./risk.ts";

/** The functions of this family, in the order in which lists show them. */
export const costFunctions: readonly CellFunction[] = [
  margin,
  markup,
  escalate,
  range,
  contingencyTable,
  costOrder,
  bid,
  perArea,
];
