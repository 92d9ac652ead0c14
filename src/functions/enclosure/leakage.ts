import {
  type AirVerdict,
  againstLimit,
  airAgainstCode,
  airLeakageCfm,
  NATURAL_METHODS,
  naturalCfm,
} from "../../core/enclosure/loss/air-leakage.ts";
import { type AirTightness, ach50Of, USUAL_EXPONENT } from "../../core/enclosure/loss/air-tightness.ts";
import { codeSources } from "../../core/enclosure/loss/energy-code.ts";
import { NATURAL_RULE } from "../../core/enclosure/tables/air.ts";
import { CODE_SOURCE } from "../../core/enclosure/tables/energy-code.ts";
import { ifGiven, needed, orElse } from "../basis/term.ts";
import { preliminary, quantityOf } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { number, quantity } from "../declare/scalar.ts";
import { choice } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { shown } from "./shown.ts";
import { climateZone, countyTerms, mapOf, zoneIfGiven, zoneOf } from "./terms/zone-terms.ts";

const AIR_CAUTION = preliminary("air leakage");

/** What a result in another unit is turned into air changes with. */
const AREA = { enclosureArea: ifGiven("enclosure area", "wanted only where a result is a flow over it") };
const TURNED =
  "Results in other units: definitions, the power law of ASTM E779, and Q = Cd A sqrt(2 dP / rho) for leakage areas (ELA 4 Pa, EqLA 10 Pa with 0.611)";

interface TestArguments {
  readonly airTightness: AirTightness;
  readonly houseVolume: number | undefined;
  readonly enclosureArea: number | undefined;
}

function houseOf(a: Omit<TestArguments, "airTightness">, exponent = USUAL_EXPONENT) {
  return { volumeFt3: a.houseVolume, areaFt2: a.enclosureArea, exponent };
}

const airLeakage = familyFunction({
  name: "AIR_LEAKAGE",
  summary: "Air that leaks through an enclosure at a test pressure in cfm, from air changes at 50 Pa.",
  params: {},
  placed: {
    airTightness: needed("air tightness"),
    houseVolume: needed("house volume"),
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
    exponent: optional(
      number({ says: "flow exponent n", min: 0.5, max: 1, source: "ASTM E779" }),
      0.65,
      "flow exponent {}, usual for houses",
    ),
  },
  named: AREA,
  returns: quantityOf("cfm", "air flow at the pressure; not the natural flow"),
  sources: ["cfm50 = ACH50 V / 60; Q = C dP^n (ASTM E779)", TURNED],
  cautions: [AIR_CAUTION],
  example: {
    args: { airTightness: 3, houseVolume: 20000 },
    gives: 1000,
    within: 1e-9,
    source: "exact arithmetic: 3 x 20000 / 60",
  },
  refuses: [
    { args: { exponent: 0.1 }, says: "it must be from 0.5 to 1 (ASTM E779)" },
    { args: { houseVolume: null }, says: "House volume is missing" },
  ],
  notFor: "Air that comes in under wind and warmth takes AIR_NATURAL; a blower door decides how tight a house is.",
  run(a, tape) {
    const ach50 = ach50Of(a.airTightness, houseOf(a, a.exponent), tape);
    return airLeakageCfm(ach50, a.houseVolume, a.pressure, a.exponent, tape);
  },
});

const airNatural = familyFunction({
  name: "AIR_NATURAL",
  summary:
    "Air that comes in by wind and warmth in the mean of a year, in cfm, from air changes at 50 Pa: for HEATLOSS.",
  params: {},
  placed: {
    airTightness: needed("air tightness"),
    houseVolume: needed("house volume"),
    stories: orElse("stories"),
    shielding: orElse("shielding"),
    method: optional(
      choice(NATURAL_METHODS, {
        says: "rule",
        also: { n: "factor", "n factor": "factor", "20": "twenty", "divide by 20": "twenty" },
        means: {
          factor: "ACH50 over a factor by climate, height and shielding",
          twenty: "ACH50 over 20",
        },
      }),
      "factor",
      "ACH50 over a factor by climate, height and shielding",
    ),
  },
  named: { climateZone: ifGiven("climate zone", "a plain 20 in place of its factor"), ...countyTerms, ...AREA },
  returns: quantityOf("cfm", "natural air flow, the airflow of HEATLOSS"),
  sources: [`${NATURAL_RULE.clause}; its factors are from memory`, TURNED],
  cautions: [AIR_CAUTION],
  example: {
    args: { airTightness: 2.75, houseVolume: 20000, climateZone: "5A" },
    gives: 49.6,
    within: 0.2,
    source:
      "a national laboratory's page prints 2.75 ACH50 in infiltration zone 2, one story, normal shielding: 2.75 / 18.5 = 0.149 an hour; the volume and its 49.6 cfm by arithmetic",
  },
  refuses: [
    { args: { stories: 4 }, says: "the rule knows 1, 1.5, 2, 3" },
    { args: { climateZone: "tall" }, says: "zones run from 0 to 8, with A moist, B dry or C marine behind" },
    { args: { stories: 0.4 }, says: "it must be from 1 to 4" },
  ],
  notFor: "A single windy or cold day may bring three times the mean of a year; fans and flues are not in it.",
  run(a, tape) {
    const zone = zoneIfGiven(a, "2021", tape);
    const house = { stories: a.stories, shielding: a.shielding, zone };
    return naturalCfm(ach50Of(a.airTightness, houseOf(a), tape), a.houseVolume, a.method, house, tape);
  },
});

const verdict = columnsOf<AirVerdict>(
  ["limit", "1/h", (r) => r.limit],
  ["found", "1/h", (r) => r.found],
  ["verdict", "", (r) => r.verdict],
);

const airCode = familyFunction({
  name: "AIR_CODE",
  summary: "Air changes at 50 Pa against the greatest that the energy code allows, or against a target of one's own.",
  params: {},
  placed: {
    airTightness: needed("air tightness"),
    houseVolume: ifGiven("house volume", "the limit in cfm is not shown"),
  },
  named: {
    climateZone,
    ...countyTerms,
    energyCode: orElse("energy code"),
    airTightnessTarget: ifGiven("air tightness target", "the energy code's limit"),
    ...AREA,
  },
  oneRow: true,
  returns: verdict.table("one row"),
  sources: [...codeSources("ACH50"), TURNED],
  cautions: [AIR_CAUTION],
  example: {
    args: { airTightness: 2.6, climateZone: "6A", energyCode: "2021" },
    gives: [[3, 2.6, "met"]],
    within: 0,
    source: "IECC 2021 R402.4.1.3: 3.0 air changes an hour in zones 3 to 8",
  },
  refuses: [
    { args: { airTightness: "1000 cfm" }, says: "air changes are a flow over the volume" },
    { args: { energyCode: "Idaho 2018" }, says: "no ACH50 table of that edition is kept" },
    { args: { climateZone: "tall" }, says: "zones run from 0 to 8, with A moist, B dry or C marine behind" },
    {
      args: { energyCode: "New York 2025", climateZone: "1A" },
      says: "New York 2025 energy code Table R402.5.1.3 (based on IECC 2024) is",
    },
    { args: { airTightness: 260 }, says: "it must be above 0 1/h and at most 50 1/h" },
    { args: { airTightness: "0.3 cfm/ft2" }, says: "the air tightness is a flow over the area of walls, roof and" },
  ],
  notFor: "Programs and states with limits of their own, and rooms tested one by one, go by their own text.",
  run(a, tape) {
    const ach50 = ach50Of(a.airTightness, houseOf(a), tape);
    const says = { symbol: "ACH50", rule: "limit, found, verdict" };
    if (a.airTightnessTarget !== undefined) {
      const limit = ach50Of(a.airTightnessTarget, houseOf(a), tape);
      tape?.assume("the target that is given stands in place of the energy code's limit");
      return shown(verdict, [againstLimit(ach50, limit)], tape, says);
    }
    const zone = zoneOf(a, mapOf(a.energyCode), tape);
    const found = airAgainstCode(ach50, a.houseVolume, zone, a.energyCode, tape);
    return shown(verdict, [found], tape, { ...says, clause: CODE_SOURCE[a.energyCode].ACH50 });
  },
});

export const enclosureLeakageFunctions = [airLeakage, airNatural, airCode] as const;
