import type { Said } from "../../core/kit/refusal.ts";
import type { Host } from "../../workbook/host.ts";
import type { CellAddress } from "../../workbook/ledger.ts";
import { type Coverage, coverage } from "../../workbook/scan.ts";
import { noteFor } from "../working/cell-notes.ts";

/** A cell that shows an error of the spreadsheet's own, whether or not a function of ours stands in it. */
export interface SheetError {
  readonly address: CellAddress;
  readonly error: string;
  readonly formula: string;
  readonly said: Said;
}

/** What a look at all worksheets adds to what the functions have told. */
export interface Looked {
  readonly coverage: Coverage;
  readonly errors: readonly SheetError[];
  readonly unread: readonly string[];
}

/** Looks at every worksheet: cells that hold our functions, and errors of any kind that no function of ours has explained. */
export async function look(host: Host): Promise<Looked> {
  const scan = await host.scan();
  const explained = (address: CellAddress) => host.ledger.at(address)?.calls.some((call) => !call.outcome.ok) === true;
  return {
    coverage: coverage(scan, host.ledger),
    errors: scan.cells
      .filter(({ error, address }) => error !== "" && !explained(address))
      .map(({ address, error, formula }) => ({
        address,
        error,
        formula,
        said: noteFor({ formula, value: error, names: [], known: [] }),
      })),
    unread: scan.unread.map(({ sheet, says }) => `${sheet}: ${says}`),
  };
}
