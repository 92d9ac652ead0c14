import type { ICellData, IRange, Nullable } from "@univerjs/core";
import { BaseReferenceObject } from "@univerjs/engine-formula";

type AllSpills = Parameters<BaseReferenceObject["setArrayFormulaRange"]>[0];
/** By row and column of a formula, the cells that it fills. */
type Spills = Readonly<Record<number, Nullable<Readonly<Record<number, Nullable<IRange>>>>>>;

/** Which cells spill, by the values that they had when the calculation began. */
const spillsOf = new WeakMap<object, AllSpills>();
let patched = false;

/**
 * The engine keeps what a formula spilled until the calculation ends. A table that got shorter, or became an error, was read with its old rows below it by
 * every formula that takes a range with room for it: a deleted window still counted. So cells of a formula that this calculation has made anew, and
 * has not filled again, are empty.
 */
export function keepSpillsFresh(): void {
  if (patched) return;
  patched = true;
  const references = BaseReferenceObject.prototype;
  // A range is made of its two corners, and they are told which cells spill but the range is not.
  const tell = references.setArrayFormulaRange;
  references.setArrayFormulaRange = function (ranges) {
    tell.call(this, ranges);
    spillsOf.set(this.getArrayFormulaCellData(), ranges);
  };
  const read = references.getCellData;
  references.getCellData = function (row, column): Nullable<ICellData> {
    const cell = read.call(this, row, column);
    const before = this.getCurrentActiveArrayFormulaCellData()?.getValue(row, column);
    return cell && cell === before && isMadeAnew(this, row, column) ? null : cell;
  };
}

/** Whether the formula whose table holds the cell was calculated in this calculation. */
function isMadeAnew(reference: BaseReferenceObject, row: number, column: number): boolean {
  const made = reference.getCurrentRuntimeSheetData();
  const all = spillsOf.get(reference.getArrayFormulaCellData());
  const spills: Spills | undefined = all?.[reference.getUnitId()]?.[reference.getSheetId()] ?? undefined;
  if (made === undefined || spills === undefined) return false;
  return Object.values(spills).some((line) =>
    Object.values(line ?? {}).some(
      (at) => at && holds(at, row, column) && Boolean(made.getValue(at.startRow, at.startColumn)),
    ),
  );
}

function holds({ startRow, endRow, startColumn, endColumn }: IRange, row: number, column: number): boolean {
  return row >= startRow && row <= endRow && column >= startColumn && column <= endColumn;
}
