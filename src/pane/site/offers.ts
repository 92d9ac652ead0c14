import type { Said } from "../../core/kit/refusal.ts";
import type { Table } from "../../core/kit/tape.ts";
import type { CellFunction } from "../../functions/declare/cell-function.ts";
import type { RawArgument } from "../../functions/declare/raw.ts";
import { stateCode } from "../../functions/enclosure/read/state.ts";
import type { Outcome } from "../../functions/run/invoke.ts";
import type { Explainer } from "../../functions/run/tables-on-demand.ts";
import { isTable } from "../parts/numbers.ts";

/** What a county and its state bring; the reader takes it or leaves it. */
export interface Offers {
  readonly zone: string | undefined;
  /** stations of the state as the functions read them, those in the county's zone first */
  readonly stations: readonly { readonly place: string; readonly zone: string }[];
  readonly cautions: readonly string[];
  readonly refused: readonly Said[];
}

export interface Place {
  readonly county: string;
  readonly state: string;
  /** edition of the energy code, "" for the one that is assumed: the maps differ */
  readonly energyCode: string;
}

const HEADING = ["Basis", "Value", "Unit"];
const NONE: Offers = { zone: undefined, stations: [], cautions: [], refused: [] };

/** The climate zone of a county, and the stations of its state. Which of them stands nearest is the reader's to pick. */
export async function offersFor(
  { county, state, energyCode }: Place,
  functions: readonly CellFunction[],
  explain: Explainer,
): Promise<Offers> {
  const ask = async (name: string, args: readonly RawArgument[]) => {
    const fn = functions.find((f) => f.name === name);
    return fn === undefined ? undefined : explain(fn, args);
  };
  const edition = energyCode === "" ? [] : [[HEADING, ["Energy code", energyCode, ""]]];
  const zone = await ask("CLIMATE_ZONE", [county, state, ...edition]);
  if (zone === undefined) return NONE;
  if (!zone.outcome.ok) return { ...NONE, refused: [zone.outcome.said] };
  const found = String(zone.outcome.value);
  const code = stateCode(state) ?? state;
  const listed = await ask("CLIMATE_STATIONS", [code, [HEADING, ["Headings", "no", ""]]]);
  const stations = stationsOf(listed?.outcome, found);
  const refused = stations.length > 0 ? [] : [noStation(code, listed?.outcome)];
  return { zone: found, stations, cautions: zone.cautions, refused };
}

/** Columns of CLIMATE_STATIONS that say what is held of a place, and which station stands nearest to one without a year. */
const HOLDS = 6;
const NEAREST = 11;

const rowsOf = (outcome: Outcome | undefined): Table =>
  outcome?.ok === true && isTable(outcome.value) ? outcome.value : [];
const hasYear = (row: Table[number]) => row[HOLDS] === "a year of hours";

function stationsOf(outcome: Outcome | undefined, zone: string): Offers["stations"] {
  const stations = rowsOf(outcome)
    .filter(hasYear)
    .map(([name, state, , , , own]) => ({ place: `${name} ${state}`, zone: String(own) }));
  return stations.sort((a, b) => Number(b.zone === zone) - Number(a.zone === zone) || a.place.localeCompare(b.place));
}

function noStation(code: string, outcome: Outcome | undefined): Said {
  const near = [...new Set(rowsOf(outcome).flatMap((row) => (hasYear(row) ? [] : [String(row[NEAREST])])))];
  return {
    what: `No climate station is kept for ${code}`,
    why: "the stations stand in other states",
    todo: `Pick one of a state beside it${near.length > 0 ? `, such as ${near.join(" or ")}` : ": CLIMATE_STATIONS lists them"}`,
  };
}
