import {
  dewPointF,
  relativeHumidityPct,
  vaporPressureInHg,
  vaporPressurePa,
} from "../../core/enclosure/air/humid-air.ts";
import { SATURATION_FORMULAS } from "../../core/enclosure/air/saturation.ts";
import { fToC } from "../../core/enclosure/air/si.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { humidity, temperature } from "../declare/scalar.ts";
import { choice } from "../declare/word.ts";
import { familyFunction } from "./family.ts";

const PSYCHROMETRICS = "ASHRAE Handbook Fundamentals ch. 1 eq. 5 and 6 (Hyland-Wexler); ISO 13788:2012 Annex E";
const HUMIDITY_SOURCE = "relative humidity is above 0 and at most 100 %";

const anyTemperature = (says: string) =>
  temperature({
    says,
    min: -148,
    max: 392,
    source: "ASHRAE Handbook Fundamentals ch. 1 eq. 5 and 6",
    usual: { min: 32, max: 125, ask: "is it in F?" },
  });
const airHumidity = (says: string) => humidity({ says, above: 0, source: HUMIDITY_SOURCE });

export const curve = choice(SATURATION_FORMULAS, {
  says: "curve of saturation pressure",
  also: { iso: "ISO 13788", "hyland-wexler": "ASHRAE", "over water": "water" },
  means: {
    ASHRAE: "Hyland-Wexler equations, over ice below freezing",
    "ISO 13788": "the form of that standard, over ice below freezing",
    water: "over liquid water also below freezing, as weather services state dew points",
  },
});
const formula = optional(curve, "ASHRAE", "ASHRAE equations, over ice below freezing");

const dewPoint = familyFunction({
  name: "DEW_POINT",
  summary: "Dew point of air from temperature and relative humidity; frost point below freezing.",
  params: {
    temperature: anyTemperature("air temperature"),
    humidity: airHumidity("relative humidity of the air"),
    formula,
  },
  returns: quantityOf("F", "dew point"),
  sources: [PSYCHROMETRICS],
  example: {
    args: { temperature: 70, humidity: 50 },
    gives: 50.5,
    within: 0.05,
    source: "formula example in a green-building mailing list archive: 70 F, 50 % gives 50.5 F",
  },
  refuses: [
    { args: { temperature: -148 }, says: "dew points are computed from -100 to 200 C, 0.0014051 to 1555070 Pa" },
    { args: { humidity: 150 }, says: "it must be above 0 % and at most 100 % (relative humidity is above 0" },
  ],
  notFor: "Whether a wall stays dry takes DEW_PROFILE or DEW_MONTHS: this is a figure of the air alone.",
  run: (a, tape) => dewPointF(fToC(a.temperature), a.humidity / 100, a.formula, tape),
});

const dewHumidity = familyFunction({
  name: "DEW_HUMIDITY",
  summary: "Relative humidity of air from temperature and dew point.",
  params: {
    temperature: anyTemperature("air temperature"),
    dewPoint: temperature({
      says: "dew point, not above the air temperature",
      min: -148,
      max: 392,
      source: "ASHRAE Handbook Fundamentals ch. 1 eq. 5 and 6",
    }),
    formula,
  },
  returns: quantityOf("%", "relative humidity in percent"),
  sources: [PSYCHROMETRICS],
  example: {
    args: { temperature: "20 C", dewPoint: "9.3 C", formula: "ISO 13788" },
    gives: 50,
    within: 0.17,
    source:
      "DIN 4108-3 dew point table: air of 20 C and 50 % has a dew point of 9.3 C; half of its last digit, 0.05 C, is 0.17 %",
  },
  refuses: [
    { args: { dewPoint: 392 }, says: "air is saturated at its own temperature, so its dew point cannot be higher" },
    { args: { dewPoint: -148 }, says: "the method holds from -60 to 100 C (ISO 13788:2012 Annex E, kept to" },
    {
      args: { dewPoint: -444 },
      says: "it must be from -148 to 392 F (ASHRAE Handbook Fundamentals ch. 1 eq. 5 and 6)",
    },
  ],
  notFor: "Air beside a cold surface takes the surface's temperature, which DEW_PROFILE or TEMPERATURE_FACTOR gives.",
  run: (a, tape) => relativeHumidityPct(fToC(a.temperature), fToC(a.dewPoint), a.formula, tape),
});

const dewVapor = familyFunction({
  name: "DEW_VAPOR",
  summary: "Vapor pressure of air from temperature and relative humidity.",
  params: {
    temperature: anyTemperature("air temperature"),
    humidity: airHumidity("relative humidity of the air"),
    unit: optional(
      choice(["Pa", "inHg"], { says: "unit of the result", also: { "in. hg": "inHg", "in hg": "inHg" } }),
      "Pa",
      "the result is in Pa",
    ),
    formula,
  },
  returns: quantityOf("Pa", "vapor pressure, in Pa unless told"),
  sources: [PSYCHROMETRICS],
  example: {
    args: { temperature: "20 C", humidity: 50, formula: "ISO 13788" },
    gives: 1168,
    within: 0.5,
    source: "DIN 4108-3 Table A.3: 20 C, 50 % is 1168 Pa",
  },
  refuses: [
    { args: { temperature: 392 }, says: "the method holds from -60 to 100 C (ISO 13788:2012 Annex E, kept to" },
    { args: { humidity: 150 }, says: "it must be above 0 % and at most 100 % (relative humidity is above 0" },
  ],
  notFor: "Flow of vapor through layers takes DEW_PROFILE: this is the pressure in one air.",
  run(a, tape) {
    const calculate = a.unit === "Pa" ? vaporPressurePa : vaporPressureInHg;
    return calculate(fToC(a.temperature), a.humidity / 100, a.formula, tape);
  },
});

export const enclosureAirFunctions = [dewPoint, dewHumidity, dewVapor] as const;
