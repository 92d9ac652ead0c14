import { registry } from "../../functions/registry.ts";
import { type ExcelFunction, excelFunction } from "./functions.ts";
import { ledger, searches } from "./session.ts";

/** Every function as Excel calls it, by its id. */
export const calculations: ReadonlyMap<string, ExcelFunction> = new Map(
  registry.map((fn) => [fn.id, excelFunction(fn, ledger, searches.answer)]),
);
