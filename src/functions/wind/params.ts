import { DEFAULT_EDITION, EDITIONS, type Edition } from "../../core/kit/edition.ts";
import { LOAD_LEVELS } from "../../core/kit/load-level.ts";
import { ENCLOSURES } from "../../core/wind/enclosure.ts";
import { WIND_USES } from "../../core/wind/exposure-coefficient.ts";
import { EXPOSURES } from "../../core/wind/tables/terrain.ts";
import { preliminary } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, length, quantity, slope } from "../declare/scalar.ts";

/** Parameters that the wind and load functions share. */

export const edition = optional(
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
  DEFAULT_EDITION,
  `ASCE/SEI ${DEFAULT_EDITION}`,
);

const EXPOSURE_MEANS = {
  B: "suburban, wooded",
  C: "open, scattered obstructions",
  D: "flat and unobstructed, water",
} as const;

export const exposure = choice(EXPOSURES, { says: "exposure: roughness of the ground upwind", means: EXPOSURE_MEANS });

export const use = optional(
  choice(WIND_USES, {
    says: "what the pressure is for; sets the least Kz in Exposure B",
    also: { "main frame": "frame", mwfrs: "frame", directional: "frame", envelope: "low-rise", "c&c": "cladding" },
    means: {
      frame: "main wind-force resisting system, directional procedure",
      "low-rise": "main wind-force resisting system, low-rise envelope procedure",
      cladding: "components and cladding",
    },
  }),
  undefined,
  "the largest Kz of the uses",
);

export const speed = quantity("mph", {
  says: "basic wind speed for the risk category, 3-second gust, strength level",
  min: 40,
  max: 300,
  usual: {
    min: 95,
    max: 200,
    ask: "strength-level maps run from about 95 to 200 mph; is it an allowable-stress speed, or in another unit?",
  },
});

export const height = (says: string, max: number, source: string) => length("ft", { says, above: 0, max, source });

export const plan = (says: string) =>
  length("ft", { says, above: 0, max: 5000, usual: { min: 8, max: 500, ask: "is it in feet?" } });

export const q = quantity("psf", {
  says: "velocity pressure at the mean roof height, from WIND_PRESSURE of the same edition",
  above: 0,
  max: 500,
  usual: { min: 5, max: 150, ask: "is it the velocity pressure in psf?" },
});

export const roofSlope = slope({ says: "slope of the roof", max: 80 });

export const enclosure = optional(
  choice(ENCLOSURES, {
    says: "how open the building is; sets the internal pressure",
    also: { closed: "enclosed", "partially-enclosed": "partially enclosed", partial: "partially enclosed" },
  }),
  "enclosed",
  "enclosed building, internal pressure coefficient 0.18 each way",
);

export const level = optional(
  choice(LOAD_LEVELS, {
    says: "level of the result",
    also: { lrfd: "strength", ultimate: "strength", asd: "allowable", nominal: "allowable" },
    means: { strength: "for load factor 1.0 W", allowable: "0.6 W" },
  }),
  "strength",
  "strength level, for load factor 1.0 W",
);

export const WIND_CAUTION = preliminary("wind");
