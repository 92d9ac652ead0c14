import { MONTH_NAMES } from "../../core/enclosure/climate/climate.ts";
import { STATION_SOURCE } from "../../core/enclosure/climate/stations.ts";
import { dewMonths } from "../../core/enclosure/moisture/dew-months.ts";
import { dewWood, WOOD_LIMIT_SOURCES, type WoodMonth } from "../../core/enclosure/moisture/dew-wood.ts";
import { DRY_OUTS } from "../../core/enclosure/moisture/wetting-year.ts";
import { ifGiven } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { choice } from "../declare/word.ts";
import { ISO_13788, STEADY } from "./dew.ts";
import { familyFunction } from "./family.ts";
import { insideFilm, MATERIAL_DATA, outsideFilm } from "./heat.ts";
import { layerRows, layers } from "./layers.ts";
import { readAssembly } from "./read/layer.ts";
import { shown } from "./shown.ts";
import { airOfYear, CLIMATE_PLACES, cautionSunByStation } from "./terms/climate-terms.ts";

/** A month, or the year in the last row: there the change is what is left at the end and the standing water the peak. */
interface YearRow {
  readonly month: string;
  readonly outdoorF: number | "";
  readonly outdoorPa: number | "";
  readonly indoorPa: number | "";
  readonly change: number;
  readonly standing: number;
  readonly where: string;
}

const yearColumns = columnsOf<YearRow>(
  ["month", "", (r) => r.month],
  ["outdoor", "F", (r) => r.outdoorF],
  ["outdoor vapor", "Pa", (r) => r.outdoorPa],
  ["indoor vapor", "Pa", (r) => r.indoorPa],
  ["change", "oz/ft2", (r) => r.change],
  ["standing", "oz/ft2", (r) => r.standing],
  ["where", "", (r) => r.where],
);

/** A year of one condition: 20 C and 50 %. */
const SAME_AIR = MONTH_NAMES.map((m) => [m, "20 C", 50] as const);

const dewMonthsFunction = familyFunction({
  name: "DEW_MONTHS",
  summary: "Condensation and drying month by month through a year, at any number of planes, with the verdict.",
  params: { layers: layers() },
  placed: {
    ...CLIMATE_PLACES,
    waterLimit: ifGiven(
      "water limit",
      "by the layers: 1.64 oz/ft2 (0.5 kg/m2), and no more than 5 % of the mass of solid wood or 3 % of a wood panel (DIN 4108-3)",
    ),
    dryOut: optional(
      choice(DRY_OUTS, {
        says: "a month in which a plane dries out",
        means: {
          zero: "the plane is set to no water at the month's end (ISO 13788)",
          split: "the month is divided when it dries and solved again",
        },
      }),
      "zero",
      "a plane that dries in a month holds no water at its end (ISO 13788)",
    ),
    insideFilm,
    outsideFilm,
  },
  returns: yearColumns.table(
    "twelve months from the first wet one, then the year: what stays at its end, the peak, and the verdict",
  ),
  sources: [
    ISO_13788,
    "DIN 4108-3 5.2.2 (most water, and most gain of wood)",
    `Climate of stations: ${STATION_SOURCE}`,
    MATERIAL_DATA,
  ],
  assumptions: STEADY,
  cautions: [preliminary("moisture")],
  example: {
    args: {
      layers: [["plain layer", "1 in", "RSI 1", "sd 1 m"]],
      climateStation: SAME_AIR,
      indoorMoisture: [["same as outside", "20 C", 50]],
    },
    gives: [...SAME_AIR.map(([m]) => [m, 68, 1168, 1168, 0, 0, ""]), ["year", "", "", "", 0, 0, "no condensation"]],
    within: 0.5,
    source: "DIN 4108-3 Table A.3: 20 C, 50 % is 1168 Pa; with the same air on both sides no vapor moves",
  },
  refuses: [
    { args: { climateStation: "Birmingham AL" }, says: "no year of hours is held in that state" },
    { args: { insideFilm: "-1" }, says: "an air film is an R or one of a few words" },
    {
      args: { layers: [["plain layer", "1 in", "RSI 1", 0]] },
      says: "vapor cannot be followed through a layer whose resistance is not known",
    },
    {
      args: { layers: [["plain layer", "1 in", 0, "sd 1 m"]] },
      says: "it is none of the built-in materials and its row gives no R or conductivity",
    },
    { args: { waterLimit: -1 }, says: "it must be above 0 and at most 100" },
    { args: { climateStation: "51.5 N 0.1 W" }, says: "the nearest is Caribou Municipal Arpt ME, 2973 miles" },
    { args: { climateStation: "44.48 N 73.15 E" }, says: "the stations stand in the United States, west of it" },
    { args: { climateStation: "95 N 73 W" }, says: "the method holds from -90 to 90 deg (degrees from the equator)" },
    { args: { climateStation: "44 N 190 W" }, says: "the method holds from -180 to 180 deg (degrees from Greenwich)" },
  ],
  notFor:
    "Rain, leaks, sun on wet cladding and moving air need a transient simulation; green roofs and crawl spaces too.",
  run(a, tape) {
    const assembly = readAssembly(layerRows(a.layers), a.insideFilm, a.outsideFilm, tape);
    cautionSunByStation(a.climateStation, assembly, tape);
    const year = dewMonths(assembly, airOfYear(a, false, tape), a.dryOut, a.waterLimit, tape);
    const rows: YearRow[] = year.months.map((m) => ({
      month: m.name,
      outdoorF: m.outdoorF,
      outdoorPa: m.outdoorPa,
      indoorPa: m.indoorPa,
      change: m.changeOzFt2,
      standing: m.standingOzFt2,
      where: m.where,
    }));
    const blank = { outdoorF: "", outdoorPa: "", indoorPa: "" } as const;
    const last: YearRow = {
      month: "year",
      ...blank,
      change: year.endOzFt2,
      standing: year.peakOzFt2,
      where: year.verdict,
    };
    const rule = "months, then the end and the peak of the year with the verdict";
    const says = { symbol: "year", rule, unit: "oz/ft2", clause: "ISO 13788:2012 6.4 to 6.6" };
    return shown(yearColumns, [...rows, last], tape, says);
  },
});

const woodColumns = columnsOf<WoodMonth>(
  ["layer", "", (r) => r.layer],
  ["month", "", (r) => r.month],
  ["moisture", "%", (r) => r.moisturePct],
  ["limit", "%", (r) => r.limitPct],
  ["verdict", "", (r) => r.verdict],
);

const dewWoodFunction = familyFunction({
  name: "DEW_WOOD",
  summary: "Moisture content of each wood layer month by month, against decay and mold.",
  params: { layers: layers() },
  placed: CLIMATE_PLACES,
  returns: woodColumns.table("twelve rows for each wood layer, from the first wet month"),
  sources: [ISO_13788, "USDA FPL Wood Handbook GTR-190 eq. 4-5 (moisture content)", ...WOOD_LIMIT_SOURCES],
  assumptions: STEADY,
  cautions: [preliminary("moisture")],
  example: {
    args: {
      layers: [["plywood", 0.5]],
      climateStation: MONTH_NAMES.map((m) => [m, 70, 50] as const),
      indoorMoisture: [["same as outside", 70, 50]],
    },
    gives: MONTH_NAMES.map((m) => ["row 1, plywood", m, 9.2, 20, "dry enough"]),
    within: 0.05,
    source:
      "USDA FPL Wood Handbook GTR-190 Table 4-2: 70 F, 50 % is 9.2 %; with the same air on both sides the layer is at 50 %",
  },
  refuses: [
    { args: { layers: [["a board", 0.5]] }, says: "it is none of the built-in materials" },
    { args: { layers: [["plywood", 0]] }, says: "its R comes from thickness and conductivity" },
    {
      args: { layers: [["plywood", 0.5, -1]] },
      says: "it is an R of the layer (0 or more), an R per inch or a conductivity above 0",
    },
    {
      args: { layers: [["plywood", 0.5, 1000]] },
      says: "the method holds from 0 to 200 h ft2 F/Btu (layers of a building)",
    },
    { args: { layers: [["plywood", -1]] }, says: "it must be from 0 to 120 in" },
    {
      args: {
        layers: [
          ["gypsum board", 0.5],
          ["mineral wool board", 4],
        ],
      },
      says: "moisture content is worked out for lumber, panels and sheathing",
    },
  ],
  notFor: "Wood wetted by leaks or built in green is not in balance with monthly air: measure it.",
  run(a, tape) {
    const assembly = readAssembly(layerRows(a.layers), "wall", "winter", tape);
    cautionSunByStation(a.climateStation, assembly, tape);
    const rows = dewWood(assembly, airOfYear(a, false, tape), "zero", tape);
    const rule = "each wood layer, month by month";
    return shown(woodColumns, rows, tape, { symbol: "moisture", rule, clause: "USDA FPL Wood Handbook eq. 4-5" });
  },
});

export const enclosureMonthsFunctions = [dewMonthsFunction, dewWoodFunction] as const;
