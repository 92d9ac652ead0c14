import type { Said } from "../../core/kit/refusal.ts";
import type { Table } from "../../core/kit/tape.ts";
import type { CellFunction } from "../../functions/declare/cell-function.ts";
import type { RawArgument } from "../../functions/declare/raw.ts";
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

/** The climate zone of a county, and the stations of its state. The tables hold no distances, so the nearest of the stations is the reader's to pick. */
export async function offersFor(
  { county, state, energyCode }: Place,
  functions: readonly CellFunction[],
  explain: Explainer,
): Promise<Offers> {
  const ask = async (name: string, args: readonly RawArgument[]) => {
    const fn = functions.find((f) => f.name === name);
    return fn === undefined ? undefined : explain(fn, args);
  };
  const code =
    energyCode === ""
      ? []
      : [
          [
            ["Basis", "Value", "Unit"],
            ["Energy code", energyCode, ""],
          ],
        ];
  const zone = await ask("CLIMATE_ZONE", [county, state, ...code]);
  const listed = await ask("CLIMATE_STATIONS", [
    state,
    [
      ["Basis", "Value", "Unit"],
      ["Headings", "no", ""],
    ],
  ]);
  const found = zone?.outcome.ok ? String(zone.outcome.value) : undefined;
  return {
    zone: found,
    stations: found === undefined ? [] : stationsOf(listed?.outcome, found),
    cautions: zone?.outcome.ok ? zone.cautions : [],
    refused: [zone?.outcome, found === undefined ? undefined : listed?.outcome].flatMap(saidOf),
  };
}

function stationsOf(outcome: Outcome | undefined, zone: string): Offers["stations"] {
  if (!outcome?.ok || !isTable(outcome.value)) return [];
  const rows: Table = outcome.value;
  const stations = rows.map(([name, state, , , , own]) => ({ place: `${name} ${state}`, zone: String(own) }));
  return stations.sort((a, b) => Number(b.zone === zone) - Number(a.zone === zone) || a.place.localeCompare(b.place));
}

function saidOf(outcome: Outcome | undefined): readonly Said[] {
  return outcome === undefined || outcome.ok ? [] : [outcome.said];
}
