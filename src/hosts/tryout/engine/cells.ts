import { CellValueType, type ICellData, type Nullable } from "@univerjs/core";
import type { FormulaDataModel } from "@univerjs/engine-formula";
import type { FWorksheet } from "@univerjs/sheets/facade";
import type { Cell } from "../../../core/kit/tape.ts";

/** What a cell holds, whether it was typed, calculated or spilled; undefined for a blank one. Number formats do not touch it. */
export function cellValue(sheet: FWorksheet, row: number, column: number, model: FormulaDataModel): Cell | undefined {
  const own = contents(sheet.getSheet().getCellRaw(row, column));
  const spilled = model.getArrayFormulaCellData()[sheet.getWorkbook().getUnitId()]?.[sheet.getSheetId()];
  return own ?? contents(spilled?.[row]?.[column]);
}

function contents(cell: Nullable<ICellData>): Cell | undefined {
  if (!cell) return undefined;
  // Text with formats inside stands in a document of its own, which ends with a line break.
  const value = cell.v ?? cell.p?.body?.dataStream.replace(/\r?\n$/, "");
  if (value === null || value === undefined) return undefined;
  return cell.t === CellValueType.BOOLEAN ? value === 1 || value === true || value === "TRUE" : value;
}
