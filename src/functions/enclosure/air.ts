import { fToC } from "../../core/enclosure/si.ts";
import { dewPointF, relativeHumidityPct, vaporPressureInHg, vaporPressurePa } from "../../core/enclosure/humid-air.ts";
import { cellFunction, quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, temperature } from "../declare/scalar.ts";
import { airHumidity, curve } from "./dew.ts";

const PSYCHROMETRICS = "ASHRAE Handbook Fundamentals ch. 1 eq. 5 and 6 (Hyland-Wexler); ISO 13788:2012 Annex E";

const anyTemperature = (says: string) =>
  temperature({ says, min: -148, max: 392, source: "ASHRAE Handbook Fundamentals ch. 1 eq. 5 and 6" });

const formula = optional(curve, "ASHRAE", "ASHRAE equations, over ice below freezing");

const dewPoint = cellFunction({
  name: "DEW_POINT",
  family: "Enclosure",
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
  run: (a, tape) => dewPointF(fToC(a.temperature), a.humidity / 100, a.formula, tape),
});

const dewHumidity = cellFunction({
  name: "DEW_HUMIDITY",
  family: "Enclosure",
  summary: "Relative humidity of air from temperature and dew point.",
  params: {
    temperature: anyTemperature("air temperature"),
    dewPoint: anyTemperature("dew point, not above the air temperature"),
    formula,
  },
  returns: quantityOf("%", "relative humidity in percent"),
  sources: [PSYCHROMETRICS],
  example: {
    args: { temperature: "21 C", dewPoint: "4.3 C" },
    gives: 33.5,
    within: 0.5,
    source:
      "ASHRAE Handbook Fundamentals 2021 (SI) ch. 27 Example 7: at 21 C a face at 4.3 C allows 34 % (its 2476 Pa for 21 C is a misprint; 831/2488 is 33.4 %)",
  },
  run: (a, tape) => relativeHumidityPct(fToC(a.temperature), fToC(a.dewPoint), a.formula, tape),
});

const dewVapor = cellFunction({
  name: "DEW_VAPOR",
  family: "Enclosure",
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
  run(a, tape) {
    const calculate = a.unit === "Pa" ? vaporPressurePa : vaporPressureInHg;
    return calculate(fToC(a.temperature), a.humidity / 100, a.formula, tape);
  },
});

export const enclosureAirFunctions = [dewPoint, dewHumidity, dewVapor] as const;
