import type { CellFunction } from "../../functions/declare/cell-function.ts";
import { type ExcelFunction, excelFunction } from "./functions.ts";
import { ledger, searches } from "./session.ts";

/** Functions as Excel calls them, by their ids. */
export function calculationsOf(functions: readonly CellFunction[]): ReadonlyMap<string, ExcelFunction> {
  return new Map(functions.map((fn) => [fn.id, excelFunction(fn, ledger, searches.answer)]));
}
