import { CODE_EDITIONS, type CodeEdition } from "../../../core/enclosure/tables/energy-code.ts";
import { RETARDER_EDITIONS } from "../../../core/enclosure/tables/retarders.ts";
import { DEFAULT_EDITION, EDITIONS, type Edition } from "../../../core/kit/edition.ts";
import { RISK_CATEGORIES } from "../../../core/loads/tables/snow.ts";
import { EXPOSURES } from "../../../core/wind/tables/terrain.ts";
import { length, number, quantity } from "../../declare/scalar.ts";
import { choice, flag, text } from "../../declare/word.ts";
import { defaulted, entry } from "./entry.ts";

const KZ_ENDS = "the Kz tables of ASCE/SEI 7 end there";

/** Site and codes. */
export const SITE_TERMS = {
  "wind speed": entry(
    quantity("mph", {
      says: "basic wind speed for the risk category, 3-second gust, strength level",
      min: 40,
      max: 300,
      usual: {
        min: 95,
        max: 200,
        ask: "strength-level maps run from about 95 to 200 mph; is it an allowable-stress speed, or in another unit?",
      },
    }),
    ["basic wind speed", "design wind speed"],
  ),
  exposure: entry(
    choice(EXPOSURES, {
      says: "exposure: roughness of the ground upwind",
      means: {
        B: "suburban, wooded",
        C: "open, scattered obstructions",
        D: "flat and unobstructed, water",
      },
    }),
    ["exposure category", "surface roughness"],
  ),
  "topographic factor": defaulted(
    number({ says: "topographic factor Kzt", min: 1, max: 3.2 }),
    ["Kzt", "hill factor"],
    1,
    "topographic factor {}: flat site",
  ),
  "directionality factor": defaulted(
    number({ says: "directionality factor Kd", min: 0.8, max: 1 }),
    ["Kd"],
    0.85,
    "directionality factor {}: buildings",
  ),
  "ground elevation": defaulted(
    length("ft", { says: "elevation of the ground above sea level", min: -300, max: 12000 }),
    ["elevation", "elevation of the site"],
    0,
    "ground elevation {}: air as dense as at sea level",
  ),
  "hurricane region": defaulted(
    flag({ says: "whether the site lies in a hurricane-prone region" }),
    ["hurricane-prone region"],
    true,
    "the site lies in a hurricane-prone region",
  ),
  "risk category": defaulted(
    choice(RISK_CATEGORIES, { says: "risk category", also: { "1": "I", "2": "II", "3": "III", "4": "IV" } }),
    ["building risk category", "occupancy category"],
    "II",
    "risk category {}",
  ),
  "seismic category": entry(choice(["A", "B", "C", "D", "E", "F"], { says: "seismic design category" }), [
    "seismic design category",
    "SDC",
  ]),
  county: entry(text({ says: "county, parish or borough" }), ["county name"]),
  state: entry(text({ says: "state, by its two letters or its name" }), ["state code"]),
  "ASCE 7 edition": defaulted(
    choice(EDITIONS, {
      says: "edition of ASCE/SEI 7",
      also: {
        "2010": "7-10",
        "2016": "7-16",
        "2022": "7-22",
        "asce 7-10": "7-10",
        "asce 7-16": "7-16",
        "asce 7-22": "7-22",
      } satisfies Record<string, Edition>,
      means: {
        "7-10": "adopted by the 2012 and 2015 model codes",
        "7-16": "adopted by the 2018 and 2021 model codes",
        "7-22": "adopted by the 2024 model codes",
      },
    }),
    ["ASCE 7", "load standard"],
    DEFAULT_EDITION,
    "ASCE/SEI {}",
  ),
  "energy code": defaulted(
    choice(CODE_EDITIONS, {
      says: "edition of the energy code",
      also: {
        wa: "Washington 2021",
        washington: "Washington 2021",
        "new york": "New York 2025",
        idaho: "Idaho 2018",
        "iecc 2018": "2018",
        "iecc 2021": "2021",
        "iecc 2024": "2024",
      } satisfies Record<string, CodeEdition>,
    }),
    ["IECC", "energy code edition"],
    "2021",
    "energy code of {}",
  ),
  "residential code": defaulted(
    choice(RETARDER_EDITIONS, { says: "edition of the residential code" }),
    ["IRC", "residential code edition"],
    "2021",
    "residential code: IRC {}",
  ),
  "wood standard": defaulted(
    choice(["2015", "2018"], { says: "edition of the NDS", also: { "nds 2018": "2018", "nds 2015": "2015" } }),
    ["NDS"],
    "2018",
    "NDS {}",
  ),
  "shear wall standard": defaulted(
    choice(["2008", "2015", "2021"], { says: "edition of the SDPWS", also: { "sdpws 2015": "2015" } }),
    ["SDPWS"],
    "2015",
    "SDPWS {}",
  ),
  "concrete standard": defaulted(
    choice(["318-14", "318-19"], { says: "edition of ACI 318", also: { "2019": "318-19", "aci 318-19": "318-19" } }),
    ["ACI 318"],
    "318-19",
    "ACI {}",
  ),
  "mean roof height": entry(
    length("ft", {
      says: "mean roof height above the ground",
      above: 0,
      max: 500,
      source: KZ_ENDS,
      usual: { min: 6, max: 160, ask: "is it in feet?" },
    }),
    ["roof height"],
  ),
} as const;
