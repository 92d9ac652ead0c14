import { callsOurs } from "../../workbook/formula.ts";
import type { CellAddress, Ledger } from "../../workbook/ledger.ts";
import { cellsOf } from "./sheet/blocks.ts";
import { runInExcel } from "./sheet/run.ts";

/**
 * Takes cells out of the ledger when they no longer call a function of ours: cleared, overwritten, moved by inserted rows, or gone with their sheet.
 * What the functions calculate comes into the ledger by itself.
 */
export async function watchWorkbook(ledger: Ledger): Promise<void> {
  await runInExcel(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.onChanged.add((change) => check(ledger, change));
    worksheets.onDeleted.add(() => checkSheets(ledger));
    if (Office.context.requirements.isSetSupported("ExcelApi", "1.17")) {
      worksheets.onNameChanged.add(async ({ nameBefore, nameAfter }) => rename(ledger, nameBefore, nameAfter));
    }
    await context.sync();
  });
}

/** Compares the ledger with the formulas of the cells that were edited, or of the whole sheet where cells were moved. */
async function check(ledger: Ledger, change: Excel.WorksheetChangedEventArgs): Promise<void> {
  if (ledger.size === 0) return;
  await runInExcel(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(change.worksheetId);
    await context.sync();
    if (sheet.isNullObject) return;
    sheet.load("name");
    const edited = change.changeType === "RangeEdited" && !change.address.includes(",");
    const area = edited ? sheet.getRange(change.address) : sheet.getRange();
    area.load("rowIndex,columnIndex,rowCount,columnCount");
    const ours = new Set<string>();
    for (const { row, column } of await cellsOf(sheet, callsOurs, area)) ours.add(`${row},${column}`);
    await context.sync();
    const { name } = sheet;
    ledger.retain(
      (address) => address.sheet !== name || !isInside(address, area) || ours.has(`${address.row},${address.column}`),
    );
  });
}

function isInside({ row, column }: CellAddress, area: Excel.Range): boolean {
  const down = row - area.rowIndex;
  const along = column - area.columnIndex;
  return down >= 0 && down < area.rowCount && along >= 0 && along < area.columnCount;
}

async function checkSheets(ledger: Ledger): Promise<void> {
  await runInExcel(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name");
    await context.sync();
    const names = new Set(worksheets.items.map(({ name }) => name));
    ledger.retain(({ sheet }) => names.has(sheet));
  });
}

/** Excel does not calculate again when a sheet gets another name. */
function rename(ledger: Ledger, before: string, after: string): void {
  for (const { address, calls } of ledger.entries()) {
    if (address.sheet !== before) continue;
    for (const call of calls) ledger.record({ ...address, sheet: after }, call);
  }
  ledger.retain(({ sheet }) => sheet !== before);
}
