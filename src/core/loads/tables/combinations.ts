import type { Edition, PerEdition } from "../../kit/edition.ts";
import type { Known } from "../../kit/known.ts";
import { ALLOWABLE_SEISMIC } from "../../kit/load-level.ts";

export const LOADS = ["D", "L", "Lr", "S", "R", "W", "E", "H"] as const;
export type LoadSymbol = (typeof LOADS)[number];

export type Term = readonly [factor: number, load: LoadSymbol];

/** What a combination is about; the editions number them differently. */
type Role =
  | "dead"
  | "live"
  | "roof"
  | "live and roof"
  | "wind"
  | "seismic"
  | "wind and others"
  | "seismic and others"
  | "wind on dead"
  | "seismic on dead";

/** Terms that act together; a list of lists stands for "one of these". */
export interface Combination {
  readonly number: string;
  readonly always: readonly Term[];
  readonly oneOf?: readonly (readonly Term[])[];
  /** a second choice, taken with each of the first */
  readonly andOneOf?: readonly (readonly Term[])[];
  readonly known: Known;
}

type Unnumbered = Omit<Combination, "number" | "known"> & { readonly role: Role };

export const METHODS = ["strength", "allowable"] as const;
export type Method = (typeof METHODS)[number];

const roof = (lr: number, s: number, r: number): readonly (readonly Term[])[] => [[[lr, "Lr"]], [[s, "S"]], [[r, "R"]]];

/** Factors of snow that 7-22 changed, its snow being at strength level. */
interface SnowFactors {
  readonly companion: number;
  readonly principal: number;
  readonly seismic: number;
}

const SNOW_STRENGTH: PerEdition<SnowFactors> = {
  "7-10": { companion: 0.5, principal: 1.6, seismic: 0.2 },
  "7-16": { companion: 0.5, principal: 1.6, seismic: 0.2 },
  "7-22": { companion: 0.3, principal: 1, seismic: 0.15 },
};

/** Factor that brings the snow of the edition to the allowable level, and the one beside seismic load. */
const SNOW_ALLOWABLE: PerEdition<{ readonly principal: number; readonly seismic: number }> = {
  "7-10": { principal: 1, seismic: 0.75 },
  "7-16": { principal: 1, seismic: 0.75 },
  "7-22": { principal: 0.7, seismic: 0.1 },
};

/** `f1` is the factor of the live load where it accompanies: 0.5, or 1.0 for garages, assembly and loads above 100 psf. */
function strength(edition: Edition, f1: number): readonly Unnumbered[] {
  const { companion, principal, seismic } = SNOW_STRENGTH[edition];
  const dead: Term = [1.2, "D"];
  const live: Term = [f1, "L"];
  return [
    { role: "dead", always: [[1.4, "D"]] },
    { role: "live", always: [dead, [1.6, "L"]], oneOf: roof(0.5, companion, 0.5) },
    { role: "roof", always: [dead], oneOf: roof(1.6, principal, 1.6), andOneOf: [[live], [[0.5, "W"]]] },
    { role: "wind and others", always: [dead, [1, "W"], live], oneOf: roof(0.5, companion, 0.5) },
    { role: "seismic and others", always: [dead, [1, "E"], live, [seismic, "S"]] },
    {
      role: "wind on dead",
      always: [
        [0.9, "D"],
        [1, "W"],
      ],
    },
    {
      role: "seismic on dead",
      always: [
        [0.9, "D"],
        [1, "E"],
      ],
    },
  ];
}

/** @param wind 0.6 on wind at strength level, 1 on wind that is at the allowable level already */
function allowable(edition: Edition, wind: number): readonly Unnumbered[] {
  const { principal, seismic } = SNOW_ALLOWABLE[edition];
  const dead: Term = [1, "D"];
  const live: Term = [0.75, "L"];
  const others = roof(0.75, 0.75 * principal, 0.75);
  const quake = ALLOWABLE_SEISMIC;
  return [
    { role: "dead", always: [dead] },
    { role: "live", always: [dead, [1, "L"]] },
    { role: "roof", always: [dead], oneOf: roof(1, principal, 1) },
    { role: "live and roof", always: [dead, live], oneOf: others },
    { role: "wind", always: [dead, [wind, "W"]] },
    { role: "seismic", always: [dead, [quake, "E"]] },
    { role: "wind and others", always: [dead, live, [0.75 * wind, "W"]], oneOf: others },
    { role: "seismic and others", always: [dead, live, [0.75 * quake, "E"], [seismic, "S"]] },
    {
      role: "wind on dead",
      always: [
        [0.6, "D"],
        [wind, "W"],
      ],
    },
    {
      role: "seismic on dead",
      always: [
        [0.6, "D"],
        [quake, "E"],
      ],
    },
  ];
}

type Numbers = Readonly<Partial<Record<Role, string>>>;

const NUMBERS: Readonly<Record<Method, PerEdition<Numbers>>> = {
  strength: {
    "7-10": {
      dead: "1",
      live: "2",
      roof: "3",
      "wind and others": "4",
      "seismic and others": "5",
      "wind on dead": "6",
      "seismic on dead": "7",
    },
    "7-16": {
      dead: "1",
      live: "2",
      roof: "3",
      "wind and others": "4",
      "wind on dead": "5",
      "seismic and others": "6",
      "seismic on dead": "7",
    },
    "7-22": {
      dead: "1a",
      live: "2a",
      roof: "3a",
      "wind and others": "4a",
      "wind on dead": "5a",
      "seismic and others": "6",
      "seismic on dead": "7",
    },
  },
  allowable: {
    "7-10": {
      dead: "1",
      live: "2",
      roof: "3",
      "live and roof": "4",
      wind: "5",
      seismic: "5",
      "wind and others": "6a",
      "seismic and others": "6b",
      "wind on dead": "7",
      "seismic on dead": "8",
    },
    "7-16": {
      dead: "1",
      live: "2",
      roof: "3",
      "live and roof": "4",
      wind: "5",
      "wind and others": "6",
      "wind on dead": "7",
      seismic: "8",
      "seismic and others": "9",
      "seismic on dead": "10",
    },
    "7-22": {
      dead: "1a",
      live: "2a",
      roof: "3a",
      "live and roof": "4a",
      wind: "5a",
      "wind and others": "6a",
      "wind on dead": "7a",
      seismic: "8",
      "seismic and others": "9",
      "seismic on dead": "10",
    },
  },
};

/** Of 7-22 only these allowable combinations were read, as quoted in a trade magazine; its strength list is from memory. */
const READ_2022: readonly Role[] = ["roof", "live and roof", "wind and others"];

/**
 * Load combinations without fluid, ice, flood, tornado and other rare loads. To 7-16 as read in the New York City Building Code 1605.2 and
 * 1605.3.1 (0.6 W in place of its W), the numbers from memory; 7-22 as READ_2022 says.
 */
export function combinations(method: Method, edition: Edition, f1: number, wind: number): readonly Combination[] {
  const list = method === "strength" ? strength(edition, f1) : allowable(edition, wind);
  return list.map(({ role, ...terms }) => ({
    ...terms,
    number: NUMBERS[method][edition][role] ?? "",
    known: edition !== "7-22" || (method === "allowable" && READ_2022.includes(role)) ? "read" : "memory",
  }));
}

/** Lateral earth pressure where it adds; where it does not it counts nothing. From memory: 7-16 sections 2.3.1 and 2.4.1. */
export const EARTH_FACTOR: Readonly<Record<Method, number>> = { strength: 1.6, allowable: 1 };

export const COMBINATION_SECTION: Readonly<Record<Method, string>> = { strength: "2.3", allowable: "2.4" };
