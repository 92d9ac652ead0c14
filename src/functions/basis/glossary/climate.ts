import { humidity, measure, number, temperature } from "../../declare/scalar.ts";
import { choice } from "../../declare/word.ts";
import { airRows } from "./air-rows.ts";
import { airTightness } from "./air-tightness.ts";
import { defaulted, entry } from "./entry.ts";
import { climateZone } from "./zone.ts";

const INDOOR = { min: -60, max: 200, usual: { min: 40, max: 100, ask: "is it in F?" } } as const;
const OUTDOOR = { min: -100, max: 200, usual: { min: -60, max: 125, ask: "is it in F?" } } as const;

/** Indoor air and climate. */
export const CLIMATE_TERMS = {
  "indoor temperature": entry(temperature({ says: "temperature of the indoor air", ...INDOOR }), ["room temperature"]),
  "indoor humidity": entry(humidity({ says: "relative humidity of the indoor air" }), ["indoor RH", "room humidity"]),
  "outdoor temperature": entry(temperature({ says: "temperature of the outdoor air", ...OUTDOOR }), [
    "winter design temperature",
  ]),
  "outdoor humidity": entry(humidity({ says: "relative humidity of the outdoor air" }), ["outdoor RH"]),
  "climate station": entry(
    airRows(
      "outdoor climate: one cell with a station such as Burlington VT or with latitude and longitude such as 44.48 N 73.15 W (the nearest station), or twelve rows of month, mean temperature and relative humidity",
      "a station such as Burlington VT, or the months",
      OUTDOOR.usual,
    ),
    ["weather station"],
  ),
  "degree days": entry(
    measure("F day", {
      says: "heating degree-days to base 65 F",
      min: 0,
      max: 30_000,
      usual: { min: 300, max: 16_000, ask: "is it to base 65 F?" },
    }),
    ["heating degree-days", "HDD65"],
  ),
  "indoor moisture": entry(
    airRows(
      "indoor air: class 1 to class 4 (ISO 13788), class 2 2001 (with its 1.10), EN 15026, EN 15026 high, air conditioned, a relative humidity at 68 F; or one row or twelve rows of label, temperature, humidity",
      "the condition, or the months",
      INDOOR.usual,
    ),
    ["moisture load", "indoor moisture class"],
  ),
  "climate zone": entry(climateZone, ["energy code zone"]),
  "air tightness": entry(airTightness, ["ACH50", "blower door result"]),
  "air tightness target": entry(airTightness, ["air leakage target", "blower door target"]),
  "enclosure area": entry(
    measure("ft2", {
      says: "area of walls, roof and floor inside the air barrier",
      above: 0,
      max: 1e6,
      usual: { min: 500, max: 60_000, ask: "is it in square feet, all six sides?" },
    }),
    ["area of the enclosure", "envelope area"],
  ),
  shielding: defaulted(
    choice(["open", "normal", "heavy"], { says: "shielding of the house from the wind" }),
    ["wind shielding of the house"],
    "normal",
    "{} shielding from the wind",
  ),
  "surface humidity limit": defaulted(
    humidity({ says: "relative humidity at a surface above which mold may grow", above: 0 }),
    ["mold limit"],
    80,
    "mold limit {} % at the surface",
  ),
  "water limit": entry(number({ says: "most water that may stand in the wall, oz/ft2", above: 0, max: 100 }), [
    "standing water limit",
  ]),
} as const;
