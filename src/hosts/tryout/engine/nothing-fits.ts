import {
  type ArrayValueObject,
  type BaseFunction,
  type BaseValueObject,
  functionStatistical,
  NumberValueObject,
} from "@univerjs/engine-formula";

const LARGEST_AND_LEAST: ReadonlySet<string> = new Set(["MAXIFS", "MINIFS"]);

let patched = false;

/** Where nothing fits their rules the engine's MAXIFS and MINIFS give a table without a cell, which is no number to anything that reads it. A spreadsheet gives 0. */
export function giveZeroWhereNothingFits(): void {
  if (patched) return;
  patched = true;
  for (const [kind, name] of functionStatistical) {
    if (!LARGEST_AND_LEAST.has(String(name))) continue;
    const made = (kind as { readonly prototype: BaseFunction }).prototype;
    const { calculate } = made;
    made.calculate = function (...values: BaseValueObject[]) {
      const found = calculate.apply(this, values);
      return found.isArray() && isBare(found as ArrayValueObject) ? NumberValueObject.create(0) : found;
    };
  }
}

function isBare(table: ArrayValueObject): boolean {
  return table.getRowCount() <= 1 && table.getColumnCount() <= 1 && !(table.get(0, 0)?.isNumber() ?? false);
}
