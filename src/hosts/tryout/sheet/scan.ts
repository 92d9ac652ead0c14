import type { FWorkbook } from "@univerjs/sheets/facade";
import { callsOurs } from "../../../workbook/formula.ts";
import { type FoundCell, isErrorText, type Scan } from "../../../workbook/scan.ts";

/** See `Host.scan`. */
export function scanSheets(workbook: FWorkbook): Scan {
  const cells: FoundCell[] = [];
  for (const sheet of workbook.getSheets()) {
    const name = sheet.getSheetName();
    sheet
      .getSheet()
      .getCellMatrix()
      .forValue((row, column, cell) => {
        const formula = sheet.getRange(row, column).getFormula();
        if (formula === "") return;
        const error = isErrorText(cell?.v) ? cell.v : "";
        const ours = callsOurs(formula);
        if (ours || error !== "") cells.push({ address: { sheet: name, row, column }, formula, error, ours });
      });
  }
  return { cells, unread: [] };
}
