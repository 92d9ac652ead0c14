import { choice, humidity, measure, number, temperature, text } from "../../declare/scalar.ts";
import { defaulted, entry } from "./entry.ts";

const ZONES = [
  ...["0A", "0B", "1A", "1B", "2A", "2B", "3A", "3B", "3C", "4A", "4B", "4C"],
  ...["5A", "5B", "5C", "6A", "6B", "7", "8"],
] as const;

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
  "climate station": entry(text({ says: "station of the climate, such as Burlington VT" }), ["weather station"]),
  "degree days": entry(
    measure("F day", {
      says: "heating degree-days to base 65 F",
      min: 0,
      max: 30_000,
      usual: { min: 300, max: 16_000, ask: "is it to base 65 F?" },
    }),
    ["heating degree-days", "HDD65"],
  ),
  "indoor moisture": entry(text({ says: "indoor moisture: class 1 to 4 of ISO 13788, or a relative humidity" }), [
    "moisture load",
    "indoor moisture class",
  ]),
  "climate zone": entry(choice(ZONES, { says: "climate zone of the energy code" }), ["energy code zone"]),
  "air tightness": entry(
    measure("1/h", {
      says: "air changes an hour at 50 Pa",
      above: 0,
      max: 50,
      usual: { min: 0.1, max: 20, ask: "is it air changes an hour at 50 Pa?" },
    }),
    ["ACH50", "blower door result"],
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
