import { type LateTable, provideTable } from "../../core/kit/late-tables.ts";
import type { CellFunction } from "../declare/cell-function.ts";
import type { RawArgument } from "../declare/param.ts";
import { explain, type Outcome, type Working } from "./invoke.ts";
import { remembered } from "./remember.ts";

const LOADERS: Readonly<Record<LateTable, () => Promise<string>>> = {
  "climate stations": async () =>
    (await import(/* webpackChunkName: "climate-stations" */ "../../core/enclosure/tables/stations.ts")).STATIONS,
  "county zones": async () =>
    (await import(/* webpackChunkName: "county-zones" */ "../../core/enclosure/tables/counties.ts")).COUNTY_ZONES,
};

/** How long a table that could not be loaded is not asked for again, in milliseconds: a cell that is calculated again at once gets its sentence. */
const REST_MS = 5000;

const loading = new Map<LateTable, Promise<boolean>>();
const resting = new Set<LateTable>();

/** Loads a table, once however many ask for it; false where it cannot be had. */
function loadTable(table: LateTable): Promise<boolean> {
  const begun = loading.get(table);
  if (begun !== undefined) return begun;
  const load = LOADERS[table]().then(
    (text) => {
      provideTable(table, text);
      return true;
    },
    () => {
      loading.delete(table);
      resting.add(table);
      setTimeout(() => resting.delete(table), REST_MS);
      return false;
    },
  );
  loading.set(table, load);
  return load;
}

/** What answers a call: at once, or by a promise that never fails. */
export type Answer = (fn: CellFunction, raw: readonly RawArgument[]) => Outcome | Promise<Outcome>;

/** What works out a call: at once, or by a promise that never fails. */
export type Explainer = (fn: CellFunction, raw: readonly RawArgument[]) => Working | Promise<Working>;

/** The answer of a call; a promise, which never fails, only where a table has to be loaded for it. */
export function answered(fn: CellFunction, raw: readonly RawArgument[]): Outcome | Promise<Outcome> {
  return withTables(() => remembered(fn, raw), needOf);
}

/** The working of a call; a promise, which never fails, only where a table has to be loaded for it. */
export function explained(fn: CellFunction, raw: readonly RawArgument[]): Working | Promise<Working> {
  return withTables(
    () => explain(fn, raw),
    ({ outcome }) => needOf(outcome),
  );
}

function needOf(outcome: Outcome): LateTable | undefined {
  return outcome.ok ? undefined : outcome.needs;
}

/** Where a table cannot be loaded, what was found without it stands: a sentence that says so. */
function withTables<T>(work: () => T, need: (found: T) => LateTable | undefined): T | Promise<T> {
  const found = work();
  const table = need(found);
  if (table === undefined || resting.has(table)) return found;
  return loadTable(table).then((loaded) => (loaded ? withTables(work, need) : found));
}
