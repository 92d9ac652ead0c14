import { airLeakageCfm, heatLoss, lossPerDegree, yearlyHeatLoss } from "../../core/enclosure/heat-loss.ts";
import { findStation, STATION_SOURCE } from "../../core/enclosure/stations.ts";
import { parseZone } from "../../core/enclosure/zone.ts";
import { OutOfRange } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { cellFunction, preliminary, quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { number, quantity, temperature, text } from "../declare/scalar.ts";
import { list } from "../declare/table.ts";
import { zone } from "./code.ts";

const UA =
  "UA = sum(U A) + sum(psi L) + sum(chi); q = UA dT (ISO 13789:2017; ASHRAE Handbook Fundamentals 2021 ch. 18)";
const LOSS_CAUTION = preliminary("heat loss");

const lossParams = {
  area: list(quantity("ft2", { says: "area", min: 0, max: 1e7 }), { says: "areas, a cell or a range", max: 1000 }),
  u: list(quantity("Btu/(h ft2 F)", { says: "U-factor", min: 0, max: 10 }), {
    says: "U-factor of each area, or one for all",
    max: 1000,
  }),
};
const more = {
  airflow: optional(
    quantity("cfm", { says: "outdoor air that comes in", min: 0, max: 1e6 }),
    0,
    "no outdoor air counted",
  ),
  bridges: optional(
    number({ says: "thermal bridges, sum of psi L and chi, Btu/(h F)", min: 0, max: 1e6 }),
    0,
    "no thermal bridges counted",
  ),
};

const heatLossFunction = cellFunction({
  name: "HEATLOSS",
  family: "Enclosure",
  summary: "Heat that an enclosure loses at given temperatures: areas by U-factors, thermal bridges and outdoor air.",
  params: {
    ...lossParams,
    indoor: temperature({ says: "indoor temperature", min: -100, max: 200 }),
    outdoor: temperature({ says: "outdoor temperature, such as the winter design temperature", min: -100, max: 200 }),
    ...more,
  },
  returns: quantityOf("Btu/h", "heat loss; below 0 where heat comes in"),
  sources: [UA, "Outdoor air: sensible heat factor 60 x 0.075 x 0.24 = 1.08 Btu min/(h ft3 F), air near sea level"],
  assumptions: ["Steady state; no sun, people or appliances."],
  cautions: [LOSS_CAUTION],
  example: {
    args: { area: [[1000, 200]], u: [[0.05, 0.3]], indoor: 70, outdoor: 10, airflow: 50 },
    gives: 9840,
    within: 1e-6,
    source: "exact arithmetic: (1000 x 0.05 + 200 x 0.3 + 1.08 x 50) x 60",
  },
  run: (a, tape) => heatLoss(lossPerDegree(a.area, a.u, a.bridges, a.airflow, tape), a.indoor, a.outdoor, tape),
});

/** Heating degree-days: a number, or those of a station. */
function degreeDays(given: string, tape: Tape | undefined): number {
  if (/^[\d,.]+$/.test(given)) {
    const days = Number(given.replaceAll(",", ""));
    if (days >= 0 && days <= 30000) return days;
    throw new OutOfRange(`${given} degree-days are given`, "a year has from 0 to 30000 F days", "Check the number");
  }
  const station = findStation(given);
  tape?.step("HDD", `${station.name} ${station.state}, base 65 F`, station.hdd65F, "F day", STATION_SOURCE);
  return station.hdd65F;
}

const heatLossYear = cellFunction({
  name: "HEATLOSS_YEAR",
  family: "Enclosure",
  summary: "Heat that an enclosure loses in a heating season, by degree-days.",
  params: {
    ...lossParams,
    degreeDays: text({ says: "heating degree-days, base 65 F, or a station such as Burlington VT" }),
    ...more,
  },
  returns: quantityOf("MMBtu/yr", "million Btu a year"),
  sources: ["Degree-day method: 24 HDD UA", `Degree-days of stations: ${STATION_SOURCE}`, UA],
  assumptions: [
    "Base 65 F: sun, people and appliances warm the building the rest of the way. Tight, well insulated buildings need less.",
  ],
  cautions: [LOSS_CAUTION],
  example: {
    args: { area: 1000, u: 0.05, degreeDays: 7000 },
    gives: 8.4,
    within: 1e-9,
    source: "exact arithmetic: 24 x 7000 x 1000 x 0.05 / 10^6",
  },
  run: (a, tape) =>
    yearlyHeatLoss(lossPerDegree(a.area, a.u, a.bridges, a.airflow, tape), degreeDays(a.degreeDays, tape), tape),
});

const airLeakage = cellFunction({
  name: "AIR_LEAKAGE",
  family: "Enclosure",
  summary: "Air that leaks through an enclosure in cfm, from air changes at 50 Pa, at the test pressure or another.",
  params: {
    ach50: number({
      says: "air changes per hour at 50 Pa",
      min: 0,
      max: 100,
      usual: { min: 0.3, max: 10, ask: "is it a measured ACH50?" },
    }),
    volume: quantity("ft3", { says: "volume inside the air barrier", above: 0, max: 1e8 }),
    pressure: optional(
      quantity("Pa", {
        says: "pressure difference of the result",
        min: 0.1,
        max: 100,
        source: "power law of ASTM E779",
      }),
      50,
      "at the test pressure of 50 Pa",
    ),
    exponent: optional(number({ says: "flow exponent n" }), 0.65, "flow exponent 0.65, usual for houses"),
    zone: optional(zone, "", ""),
  },
  returns: quantityOf("cfm", "air flow"),
  sources: [
    "cfm50 = ACH50 V / 60; Q = C dP^n (ASTM E779)",
    "Limit with a zone: IECC 2021 R402.4.1.3, 5.0 in zones 0 to 2, 3.0 in 3 to 8",
  ],
  cautions: [preliminary("air leakage")],
  example: {
    args: { ach50: 3, volume: 20000 },
    gives: 1000,
    within: 1e-9,
    source: "exact arithmetic: 3 x 20000 / 60",
  },
  run: (a, tape) =>
    airLeakageCfm(a.ach50, a.volume, a.pressure, a.exponent, a.zone === "" ? undefined : parseZone(a.zone), tape),
});

export const enclosureLossFunctions = [heatLossFunction, heatLossYear, airLeakage] as const;
