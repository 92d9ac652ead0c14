import type { PerEdition } from "../../kit/edition.ts";
import { ALLOWABLE_SEISMIC, ALLOWABLE_WIND } from "../../kit/load-level.ts";

export const LOADS = ["D", "L", "Lr", "S", "W", "E"] as const;
export type LoadSymbol = (typeof LOADS)[number];

export type Term = readonly [factor: number, load: LoadSymbol];

/** Terms that act together; a list of lists stands for "one of these". */
export interface Combination {
  readonly number: string;
  readonly always: readonly Term[];
  readonly oneOf?: readonly (readonly Term[])[];
  /** a second choice, taken with each of the first */
  readonly andOneOf?: readonly (readonly Term[])[];
  readonly basis: "read" | "memory";
}

export const METHODS = ["strength", "allowable"] as const;
export type Method = (typeof METHODS)[number];

const roof = (lr: number, s: number): readonly (readonly Term[])[] => [[[lr, "Lr"]], [[s, "S"]]];

/** `f1` is the factor of the live load where it accompanies: 0.5, or 1.0 for garages, assembly and loads above 100 psf. */
function strengthTo2016(f1: number): readonly Combination[] {
  return [
    { number: "1", always: [[1.4, "D"]], basis: "read" },
    {
      number: "2",
      always: [
        [1.2, "D"],
        [1.6, "L"],
      ],
      oneOf: roof(0.5, 0.5),
      basis: "read",
    },
    { number: "3", always: [[1.2, "D"]], oneOf: roof(1.6, 1.6), andOneOf: [[[f1, "L"]], [[0.5, "W"]]], basis: "read" },
    {
      number: "4",
      always: [
        [1.2, "D"],
        [1, "W"],
        [f1, "L"],
      ],
      oneOf: roof(0.5, 0.5),
      basis: "read",
    },
    {
      number: "5",
      always: [
        [1.2, "D"],
        [1, "E"],
        [f1, "L"],
        [0.2, "S"],
      ],
      basis: "read",
    },
    {
      number: "6",
      always: [
        [0.9, "D"],
        [1, "W"],
      ],
      basis: "read",
    },
    {
      number: "7",
      always: [
        [0.9, "D"],
        [1, "E"],
      ],
      basis: "read",
    },
  ];
}

function strength2022(f1: number): readonly Combination[] {
  return [
    { number: "1", always: [[1.4, "D"]], basis: "memory" },
    {
      number: "2",
      always: [
        [1.2, "D"],
        [1.6, "L"],
      ],
      oneOf: roof(0.5, 0.3),
      basis: "memory",
    },
    { number: "3", always: [[1.2, "D"]], oneOf: roof(1.6, 1), andOneOf: [[[f1, "L"]], [[0.5, "W"]]], basis: "memory" },
    {
      number: "4",
      always: [
        [1.2, "D"],
        [1, "W"],
        [f1, "L"],
      ],
      oneOf: roof(0.5, 0.3),
      basis: "memory",
    },
    {
      number: "5",
      always: [
        [0.9, "D"],
        [1, "W"],
      ],
      basis: "memory",
    },
    {
      number: "6",
      always: [
        [1.2, "D"],
        [1, "E"],
        [f1, "L"],
        [0.15, "S"],
      ],
      basis: "memory",
    },
    {
      number: "7",
      always: [
        [0.9, "D"],
        [1, "E"],
      ],
      basis: "memory",
    },
  ];
}

/** `s` is the factor that brings the snow of the edition to the allowable level. */
function allowable(s: number, seismicSnow: number, basis: "read" | "memory"): readonly Combination[] {
  return [
    { number: "1", always: [[1, "D"]], basis },
    {
      number: "2",
      always: [
        [1, "D"],
        [1, "L"],
      ],
      basis,
    },
    { number: "3", always: [[1, "D"]], oneOf: roof(1, s), basis },
    {
      number: "4",
      always: [
        [1, "D"],
        [0.75, "L"],
      ],
      oneOf: roof(0.75, 0.75 * s),
      basis,
    },
    { number: "5", always: [[1, "D"]], oneOf: [[[ALLOWABLE_WIND, "W"]], [[ALLOWABLE_SEISMIC, "E"]]], basis },
    {
      number: "6a",
      always: [
        [1, "D"],
        [0.75, "L"],
        [0.75 * ALLOWABLE_WIND, "W"],
      ],
      oneOf: roof(0.75, 0.75 * s),
      basis,
    },
    {
      number: "6b",
      always: [
        [1, "D"],
        [0.75, "L"],
        [0.75 * ALLOWABLE_SEISMIC, "E"],
        [seismicSnow, "S"],
      ],
      basis,
    },
    {
      number: "7",
      always: [
        [0.6, "D"],
        [ALLOWABLE_WIND, "W"],
      ],
      basis,
    },
    {
      number: "8",
      always: [
        [0.6, "D"],
        [ALLOWABLE_SEISMIC, "E"],
      ],
      basis,
    },
  ];
}

/**
 * Load combinations without fluid, soil, rain and other rare loads. To 7-16 as read in the New York City Building Code 1605.2 and 1605.3.1 (0.6 W
 * in place of its W); 7-22 allowable: gravity and wind as quoted in a trade magazine, seismic from memory; 7-22 strength from memory.
 */
export const COMBINATIONS: Readonly<Record<Method, PerEdition<(f1: number) => readonly Combination[]>>> = {
  strength: { "7-10": strengthTo2016, "7-16": strengthTo2016, "7-22": strength2022 },
  allowable: {
    "7-10": () => allowable(1, 0.75, "read"),
    "7-16": () => allowable(1, 0.75, "read"),
    "7-22": () => allowable(0.7, 0.1, "read").map((c) => (/6b|8/.test(c.number) ? { ...c, basis: "memory" } : c)),
  },
};

export const COMBINATION_SECTION: Readonly<Record<Method, string>> = { strength: "2.3", allowable: "2.4" };
