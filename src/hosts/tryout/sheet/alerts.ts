import type { Univer } from "@univerjs/core";
import { CellAlertManagerService } from "@univerjs/preset-sheets-core";
import { sentence } from "../../../core/kit/refusal.ts";
import type { Ledger } from "../../../workbook/ledger.ts";
import type { SheetNames } from "../engine/engine.ts";

/** Lets the note that the engine shows over a cell with an error say what the function says, where one of ours refused. */
export function explainErrors(univer: Univer, ledger: Ledger, names: SheetNames): void {
  const service = univer.__getInjector().get(CellAlertManagerService);
  const show = service.showAlert.bind(service);
  service.showAlert = (alert) => {
    const { unitId, subUnitId, row, col } = alert.location;
    const entry = ledger.at({ sheet: names(unitId, subUnitId), row, column: col });
    const refused = entry?.calls.map((call) => call.outcome).findLast((outcome) => !outcome.ok);
    if (refused === undefined || refused.ok) show(alert);
    else show({ ...alert, title: refused.code, message: sentence(refused.said), width: 280 });
  };
}
