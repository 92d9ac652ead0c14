import type { CellFunction } from "./cell-function.ts";

/** What a table or a length takes from a basis beside its own terms. */
export function sheetTerms(fn: CellFunction): readonly ("headings" | "lengths")[] {
  if (!fn.takesBasis) return [];
  if (fn.returns.kind === "table") return ["headings", "lengths"];
  return fn.returns.unit === "ft" || fn.returns.unit === "in" ? ["lengths"] : [];
}
