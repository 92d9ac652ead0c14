import type { FUniver } from "@univerjs/core/facade";
import { NAMESPACE } from "../../../functions/declare/cell-function.ts";
import type { CellAddress, Ledger } from "../../../workbook/ledger.ts";

/** Changes after which cells stand elsewhere or carry another sheet's name, so that everything calculates again. */
const MOVES = /^sheet\.mutation\.((insert|remove|move|reorder)-(row|rows|col|columns|range|sheet)|set-worksheet-name)$/;
const OURS = new RegExp(String.raw`\b${NAMESPACE}\.`, "i");
/** How long the workbook must be quiet before the ledger is compared with it, in milliseconds. */
const PAUSE_MS = 250;

/** Takes cells out of the ledger that were cleared, moved or hold other formulas now. Returns what ends it. */
export function keepInStep(api: FUniver, ledger: Ledger): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let moved = false;
  const watch = api.onCommandExecuted(({ id }) => {
    if (!id.startsWith("sheet.mutation.")) return;
    moved ||= MOVES.test(id);
    clearTimeout(timer);
    timer = setTimeout(() => {
      ledger.retain((address) => OURS.test(formulaOf(api, address)));
      if (moved) api.getFormula().executeCalculation();
      moved = false;
    }, PAUSE_MS);
  });
  return () => {
    clearTimeout(timer);
    watch.dispose();
  };
}

/** Formula of a cell with its "=", or "" where there is none or no such cell. */
export function formulaOf(api: FUniver, { sheet, row, column }: CellAddress): string {
  const found = api.getActiveWorkbook()?.getSheetByName(sheet);
  if (!found || row >= found.getMaxRows() || column >= found.getMaxColumns()) return "";
  return found.getRange(row, column).getFormula();
}
