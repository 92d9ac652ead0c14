import { LOAD_LEVELS } from "../../../core/kit/load-level.ts";
import { METHODS } from "../../../core/loads/tables/combinations.ts";
import { ROOF_SURFACES } from "../../../core/loads/tables/snow.ts";
import { ENCLOSURES } from "../../../core/wind/enclosure.ts";
import { number, quantity } from "../../declare/scalar.ts";
import { choice, flag } from "../../declare/word.ts";
import { defaulted, entry } from "./entry.ts";
import { deflectionLimit, loadDuration } from "./readers.ts";

const LEVEL_WORDS = { lrfd: "strength", ultimate: "strength", asd: "allowable", nominal: "allowable" } as const;

/** Wind, snow and loads. */
export const LOAD_TERMS = {
  enclosure: defaulted(
    choice(ENCLOSURES, {
      says: "how open the building is; sets the internal pressure",
      also: { closed: "enclosed", "partially-enclosed": "partially enclosed", partial: "partially enclosed" },
    }),
    ["how open", "enclosure classification"],
    "enclosed",
    "{} building, internal pressure coefficient 0.18 each way",
  ),
  "wind level": defaulted(
    choice(LOAD_LEVELS, {
      says: "level of wind loads",
      also: LEVEL_WORDS,
      means: { strength: "for load factor 1.0 W", allowable: "0.6 W" },
    }),
    ["level of wind loads"],
    "strength",
    "{} level, for load factor 1.0 W",
  ),
  "velocity pressure": entry(
    quantity("psf", {
      says: "velocity pressure at the mean roof height, from WIND_PRESSURE of the same edition",
      above: 0,
      max: 500,
      usual: { min: 5, max: 100, ask: "is it the velocity pressure in psf, or the speed?" },
    }),
    ["qh"],
  ),
  "frame method": defaulted(
    choice(["directional", "envelope"], { says: "procedure for the frame" }),
    ["wind procedure"],
    "directional",
    "{} procedure",
  ),
  "ground snow": entry(
    quantity("psf", {
      says: "ground snow load; in 7-22 at strength level from the map of the risk category",
      min: 0,
      max: 500,
      usual: { min: 3, max: 300, ask: "is it the ground snow load in psf?" },
    }),
    ["ground snow load", "pg"],
  ),
  "snow exposure factor": defaulted(
    number({ says: "snow exposure factor Ce", min: 0.7, max: 1.3 }),
    ["Ce"],
    1,
    "snow exposure factor Ce {}",
  ),
  "thermal factor": entry(number({ says: "thermal factor Ct of the roof", min: 0.85, max: 1.3 }), ["Ct"]),
  "roof surface": defaulted(
    choice(ROOF_SURFACES, {
      says: "roof surface",
      means: {
        other: "snow may be held",
        slippery: "unobstructed and slippery, with the insulation that section 7.4 asks for",
      },
    }),
    ["snow surface"],
    "other",
    "roof surface {}: snow may be held",
  ),
  "simple rafters": defaulted(
    flag({ says: "whether simply supported prismatic members span from eave to ridge" }),
    ["simply supported rafters"],
    false,
    "no simply supported prismatic members from eave to ridge",
  ),
  "winter wind": entry(number({ says: "winter wind parameter W2 of the 7-22 map, for drifts", min: 0.05, max: 1 }), [
    "W2",
  ]),
  "design method": defaulted(
    choice(METHODS, { says: "method of design", also: { asd: "allowable", lrfd: "strength" } }),
    ["ASD or LRFD"],
    "allowable",
    "design method {}",
  ),
  "live load factor": defaulted(
    number({ says: "factor of the companion live load in strength combinations", min: 0.5, max: 1 }),
    ["companion live factor"],
    0.5,
    "companion live load factor {}",
  ),
  "dead factor": entry(number({ says: "share of the dead load that resists", above: 0, max: 1 }), [
    "share of dead that resists",
  ]),
  "load duration": entry(loadDuration, ["CD", "duration of load"]),
  "wood service": defaulted(
    choice(["dry", "wet"], { says: "service condition of the wood" }),
    ["service condition"],
    "dry",
    "{} service",
  ),
  "ply fastening": entry(
    choice(["nailed", "bolted", "none"], { says: "how the plies of a built-up column are joined" }),
    ["plies fastened by"],
  ),
  "deflection limit": entry(deflectionLimit, ["allowed deflection"]),
  "load level": entry(choice(LOAD_LEVELS, { says: "level of the forces that are given", also: LEVEL_WORDS }), [
    "level of the forces given",
  ]),
  "concrete strength": defaulted(
    quantity("psi", {
      says: "specified compressive strength of the concrete",
      min: 2500,
      max: 10_000,
      source: "ACI 318 17.3.1",
    }),
    ["f'c"],
    2500,
    "concrete strength {} psi",
  ),
  "bond stress": entry(quantity("psi", { says: "characteristic bond stress of the adhesive", above: 0, max: 5000 }), [
    "characteristic bond stress",
  ]),
  "concrete state": defaulted(
    choice(["cracked", "uncracked"], { says: "state of the concrete" }),
    ["cracked concrete"],
    "cracked",
    "{} concrete",
  ),
} as const;
