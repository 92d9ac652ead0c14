import { cToF, M_IN_FT } from "../../core/enclosure/air/si.ts";
import { leastDegreeDays } from "../../core/enclosure/climate/degree-days.ts";
import { byDistance, stationBeside } from "../../core/enclosure/climate/nearest.ts";
import {
  NORMALS_SOURCE,
  type NormalsPlace,
  normals,
  STATION_SOURCE,
  type Station,
  stations,
} from "../../core/enclosure/climate/stations.ts";
import { type MaterialFacts, materialFacts } from "../../core/enclosure/layers/material-list.ts";
import { MATERIALS } from "../../core/enclosure/tables/materials.ts";
import { BadInput } from "../../core/kit/refusal.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { MATERIAL_DATA, R_UNIT } from "./heat.ts";
import { readPoint } from "./read/coordinates.ts";
import { findMaterial, nearMaterials } from "./read/material.ts";
import { placesOf } from "./read/station.ts";
import { shown } from "./shown.ts";

const find = (says: string) => optional(text({ says }), undefined, "all are listed");

const materialColumns = columnsOf<MaterialFacts>(
  ["material", "", (r) => r.name],
  ["R per in", R_UNIT, (r) => r.rPerIn ?? ""],
  ["k", "Btu in/(h ft2 F)", (r) => r.kBtuIn ?? ""],
  ["perm in", "perm in", (r) => r.permIn ?? ""],
  ["mu", "", (r) => r.mu ?? ""],
  ["density", "pcf", (r) => r.densityPcf ?? ""],
  ["thickness", "", (r) => r.thickness],
  ["source", "", (r) => r.source],
);

/** Materials of whose name, or another name, a word begins with each one; a whole name alone is that material. */
function foundMaterials(words: string | undefined) {
  if (words === undefined) return MATERIALS;
  const exact = findMaterial(words);
  if (exact?.name === words.trim().toLowerCase()) return [exact];
  const wanted = words.toLowerCase().split(/\s+/);
  const fits = MATERIALS.filter((m) =>
    wanted.every((w) =>
      [m.name, ...m.also].some((n) => n.split(/[\s-]+/).some((own) => own.toLowerCase().startsWith(w))),
    ),
  );
  if (fits.length > 0) return fits;
  const near = nearMaterials(words);
  throw new BadInput(
    `No material is called "${words}"`,
    `${MATERIALS.length} are built in`,
    near.length > 0 ? `Near names: ${near.join(", ")}` : "Leave the word out to see them all",
  );
}

const materials = familyFunction({
  name: "MATERIALS",
  summary: "The built-in materials with their R, conductivity, vapor permeability, density and source.",
  params: { find: find("a word of the name, such as foam; blank for all") },
  placed: {},
  returns: materialColumns.table("a row for each material"),
  sources: [MATERIAL_DATA, "Perm by dry cup (25 % RH); perm = 57.2135 ng/(s m2 Pa)"],
  example: {
    args: { find: "plywood" },
    gives: [["plywood", 1.2, 0.832]],
    within: 0.005,
    source:
      "ASHRAE Handbook Fundamentals 2005, Douglas-fir plywood 0.12 W/(m K): 0.832 Btu in/(h ft2 F) and R 1.20 an inch, as a US national laboratory's open data set prints",
  },
  refuses: [{ args: { find: "-1" }, says: "62 are built in" }],
  notFor: "A product's own figure from its data sheet is better: give it in the layer's row.",
  run(a, tape) {
    const facts = foundMaterials(a.find).map(materialFacts);
    return shown(materialColumns, facts, tape, { symbol: "materials", rule: "those that the word names" });
  },
});

/** A place with the station that stands nearest, where one is to be named. */
interface ListedPlace {
  readonly place: Station | NormalsPlace;
  readonly nearest: string;
  /** to that station, or from the point that was asked for */
  readonly miles: number | "";
}

const hours = <T>(l: ListedPlace, of: (station: Station) => T) => (l.place.kind === "station" ? of(l.place) : "");

const stationColumns = columnsOf<ListedPlace>(
  ["station", "", (l) => l.place.name],
  ["state", "", (l) => l.place.state],
  ["elevation", "ft", (l) => hours(l, (s) => s.elevationM / M_IN_FT)],
  ["degree-days", "F day", (l) => hours(l, (s) => s.hdd65F)],
  ["design", "F", (l) => hours(l, (s) => cToF(s.cold99C))],
  ["zone", "", (l) => l.place.zone],
  ["holds", "", (l) => hours(l, () => "a year of hours") || "mean temperatures only"],
  ["mean temperature", "F", (l) => cToF(l.place.tempC.reduce((sum, t) => sum + t, 0) / l.place.tempC.length)],
  ["least degree-days", "F day", (l) => leastDegreeDays(l.place.tempC)],
  ["latitude", "deg", (l) => l.place.latDeg],
  ["longitude", "deg", (l) => l.place.lonDeg],
  ["nearest with a year", "", (l) => l.nearest],
  ["distance", "mi", (l) => l.miles],
);

/** How many stations a point of the map brings. */
const NEAREST = 5;

function foundStations(words: string | undefined): readonly ListedPlace[] {
  const point = words === undefined ? undefined : readPoint(words);
  if (point !== undefined) {
    return byDistance(point)
      .slice(0, NEAREST)
      .map(({ station, miles }) => ({ place: station, nearest: "", miles }));
  }
  const places = words === undefined ? [...stations(), ...normals()] : placesOf(words);
  if (places.length > 0) return places.map(listed);
  const all = stations();
  throw new BadInput(
    `No station is called "${words}"`,
    `climate is kept for ${all.length} stations in ${new Set(all.map((s) => s.state)).size} states (${STATION_SOURCE})`,
    "Use a city, a state, or latitude and longitude such as 44.48 N 73.15 W, or leave the word out to see them all",
  );
}

function listed(place: Station | NormalsPlace): ListedPlace {
  const near = place.kind === "normals" ? stationBeside(place) : undefined;
  if (near === undefined) return { place, nearest: "", miles: "" };
  return { place, nearest: `${near.station.name} ${near.station.state}`, miles: near.miles };
}

const climateStations = familyFunction({
  name: "CLIMATE_STATIONS",
  summary:
    "The stations whose climate is kept, with elevation, degree-days, winter design temperature and zone; by coordinates, the nearest ones.",
  params: {
    find: find(
      "city, state or number of the station, such as VT, or latitude and longitude such as 44.48 N 73.15 W; blank for all",
    ),
  },
  placed: {},
  returns: stationColumns.table(
    "a row for each station; states without one have their mean temperatures and the nearest station",
  ),
  sources: [
    STATION_SOURCE,
    `States without a station: ${NORMALS_SOURCE}; zone of the county by the Department of Energy's list of 2010; their latitude and longitude from memory, for the nearest station alone`,
    "Degree-days to base 65 F; zone as the companion of the weather file prints it; distance along the great circle",
  ],
  cautions: [
    "The design temperature is what 99 % of the hours of a typical year exceed, from the hours of the file: no code's or handbook's design value.",
    "Least degree-days are those of the monthly means: at the 91 stations the true number is 0 to 265 F day more.",
  ],
  example: {
    args: { find: "Burlington VT" },
    gives: [["Burlington International Ap", "VT", 331]],
    within: 1.7,
    source:
      "companion file of the TMY3 weather file 726170 (US Department of Energy): elevation 101 m, half a meter is 1.6 ft",
  },
  refuses: [{ args: { find: "6" }, says: "climate is kept for 91 stations in 42 states (a US national" }],
  notFor: "Design temperatures for sizing a furnace or a cooler come from the code's or handbook's own list.",
  run(a, tape) {
    const says = { symbol: "stations", rule: "those that the word names", clause: STATION_SOURCE };
    return shown(stationColumns, foundStations(a.find), tape, says);
  },
});

export const enclosureListFunctions = [materials, climateStations] as const;
