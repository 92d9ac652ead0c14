import type { CellFunction } from "../../functions/declare/cell-function.ts";
import type { Working } from "../../functions/run/invoke.ts";
import type { Explainer } from "../../functions/run/tables-on-demand.ts";
import type { CellAddress, LedgerEntry } from "../../workbook/ledger.ts";

/** A picture of the workbook, for a cell that has none of its own. */
export interface Sample {
  readonly address: CellAddress;
  readonly fn: CellFunction;
  readonly working: Working;
}

/** What says most of a building at a glance comes first. */
const FIRST = ["DEW_PROFILE", "WALL_COLUMNS", "WIND_CLADDING_SCHEDULE"];
/** Calls that are looked at for a picture, so that the pane stands at once in a large workbook. */
const MOST_TRIED = 40;

/** The first picture among the cells, of what needs no search and no table that is still to be loaded. */
export function sampleOf(
  entries: readonly LedgerEntry[],
  functions: readonly CellFunction[],
  explain: Explainer,
): Sample | undefined {
  const calls = entries.flatMap(({ address, calls: all }) => {
    const call = all.at(-1);
    const fn = functions.find(({ id }) => id === call?.id);
    return call === undefined || fn === undefined || fn.heavy || !call.outcome.ok ? [] : [{ address, fn, call }];
  });
  const rank = ({ fn }: { readonly fn: CellFunction }) =>
    (FIRST.indexOf(fn.name) + FIRST.length + 1) % (FIRST.length + 1);
  for (const { address, fn, call } of [...calls].sort((a, b) => rank(a) - rank(b)).slice(0, MOST_TRIED)) {
    const working = explain(fn, call.args);
    if (!(working instanceof Promise) && working.pictures.length > 0) return { address, fn, working };
  }
  return undefined;
}
