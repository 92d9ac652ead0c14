import { M_IN_FT } from "../../core/enclosure/air/si.ts";
import { normalsDegreeDays } from "../../core/enclosure/climate/degree-days.ts";
import { NORMALS_SOURCE, STATION_SOURCE } from "../../core/enclosure/climate/stations.ts";
import { heatLoss, lossPerDegree, yearlyHeatLoss } from "../../core/enclosure/loss/heat-loss.ts";
import { BadInput } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import type { AirRow } from "../basis/glossary/air-rows.ts";
import { ifGiven, needed } from "../basis/term.ts";
import { preliminary, quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { number, quantity } from "../declare/scalar.ts";
import { areaParts, areas } from "./areas.ts";
import { familyFunction } from "./family.ts";
import { placeOf } from "./terms/climate-terms.ts";

const UA =
  "UA = sum(U A) + sum(psi L) + sum(chi); q = UA dT (ISO 13789:2017; ASHRAE Handbook Fundamentals 2021 ch. 18)";
const LOSS_CAUTION = preliminary("heat loss");

const lossParams = {
  areas: areas(),
  airflow: optional(
    quantity("cfm", {
      says: "outdoor air that comes in by itself or by ventilation, natural and not at a test pressure (AIR_NATURAL gives it)",
      min: 0,
      max: 1e6,
      usual: { min: 0, max: 600, ask: "is it the natural flow, and not that of a test at 50 Pa?" },
    }),
    0,
    "no outdoor air counted",
  ),
  bridges: optional(
    number({
      says: "thermal bridges, sum of psi L and chi, Btu/(h F); THERMAL_BRIDGES gives it",
      min: -1e6,
      max: 1e6,
    }),
    0,
    "no thermal bridges counted",
  ),
};

const heatLossFunction = familyFunction({
  name: "HEATLOSS",
  summary: "Heat that an enclosure loses at given temperatures: areas by U-factors, thermal bridges and outdoor air.",
  params: lossParams,
  placed: { indoorTemperature: needed("indoor temperature"), outdoorTemperature: needed("outdoor temperature") },
  returns: quantityOf("Btu/h", "heat loss; below 0 where heat comes in"),
  sources: [UA, "Outdoor air: sensible heat factor 60 x 0.075 x 0.24 = 1.08 Btu min/(h ft3 F), air near sea level"],
  assumptions: ["Steady state; no sun, people or appliances."],
  cautions: [LOSS_CAUTION],
  example: {
    args: {
      areas: [
        ["long wall", 1000, 0.05],
        ["glazing", 200, 0.3],
      ],
      airflow: 50,
      indoorTemperature: 70,
      outdoorTemperature: 10,
    },
    gives: 9840,
    within: 1e-6,
    source: "exact arithmetic: (1000 x 0.05 + 200 x 0.3 + 1.08 x 50) x 60",
  },
  refuses: [
    { args: { areas: [["long wall", 1000, 20]] }, says: "it must be above 0 Btu/(h ft2 F) and at most 10" },
    { args: { indoorTemperature: null }, says: "Indoor temperature is missing" },
  ],
  notFor:
    "Sizing equipment for a permit follows the method that the code names, with sun and people and rooms one by one.",
  run(a, tape) {
    const perDegree = lossPerDegree(areaParts(a.areas), a.bridges, a.airflow, 0, tape);
    return heatLoss(perDegree, a.indoorTemperature, a.outdoorTemperature, tape);
  },
});

/** Degree-days and elevation: as given, else those of the station. */
function season(
  a: {
    readonly degreeDays: number | undefined;
    readonly climateStation: readonly AirRow[] | undefined;
    readonly groundElevation: number | undefined;
  },
  tape: Tape | undefined,
): { readonly hdd65F: number; readonly elevationFt: number } {
  if (a.climateStation === undefined) {
    if (a.degreeDays !== undefined) return { hdd65F: a.degreeDays, elevationFt: a.groundElevation ?? 0 };
    throw new BadInput(
      "Degree days are missing",
      "they stand neither in the call nor in the basis, and no climate station to take them from",
      "Give them, or a row Degree days or Climate station",
    );
  }
  const station = placeOf(a.climateStation, tape);
  const elevationFt = a.groundElevation ?? (station.kind === "station" ? station.elevationM / M_IN_FT : 0);
  if (a.degreeDays !== undefined) return { hdd65F: a.degreeDays, elevationFt };
  if (station.kind === "normals") return { hdd65F: normalsDegreeDays(station, tape), elevationFt };
  tape?.step("HDD", `${station.name} ${station.state}, base 65 F`, station.hdd65F, "F day", STATION_SOURCE);
  return { hdd65F: station.hdd65F, elevationFt };
}

const heatLossYear = familyFunction({
  name: "HEATLOSS_YEAR",
  summary: "Heat that an enclosure loses in a heating season, by degree-days.",
  params: lossParams,
  placed: { degreeDays: ifGiven("degree days", "those of the climate station") },
  named: {
    climateStation: ifGiven("climate station"),
    groundElevation: ifGiven("ground elevation", "that of the climate station; sea level where it has none"),
  },
  returns: quantityOf("MMBtu/yr", "million Btu a year"),
  sources: [
    "Degree-day method: 24 HDD UA",
    `Degree-days of stations: ${STATION_SOURCE}; of states without one, least degree-days by monthly means: ${NORMALS_SOURCE}`,
    UA,
    "Air by elevation: ASHRAE Handbook Fundamentals 2021 ch. 1 eq. 3",
  ],
  assumptions: [
    "Base 65 F: sun, people and appliances warm the building the rest of the way. Tight, well insulated buildings need less.",
  ],
  cautions: [LOSS_CAUTION],
  example: {
    args: { areas: [["long wall", 1000, 0.05]], degreeDays: 7000 },
    gives: 8.4,
    within: 1e-9,
    source: "exact arithmetic: 24 x 7000 x 1000 x 0.05 / 10^6",
  },
  refuses: [
    { args: { areas: [["long wall", 1000, 20]] }, says: "it must be above 0 Btu/(h ft2 F) and at most 10" },
    { args: { degreeDays: null }, says: "they stand neither in the call nor in the basis, and no climate" },
  ],
  notFor: "Bills and ratings need sun, people, appliances and efficiency of the heater: this is the enclosure alone.",
  run(a, tape) {
    const { hdd65F, elevationFt } = season(a, tape);
    return yearlyHeatLoss(lossPerDegree(areaParts(a.areas), a.bridges, a.airflow, elevationFt, tape), hdd65F, tape);
  },
});

export const enclosureLossFunctions = [heatLossFunction, heatLossYear] as const;
