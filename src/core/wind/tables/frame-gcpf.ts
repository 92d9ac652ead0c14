/**
 * External pressure coefficients GCpf of the low-rise envelope procedure, by building surface; E marks the end zone.
 * ASCE/SEI 7-10 Fig. 28.4-1, 7-16 and 7-22 Fig. 28.3-1. From memory throughout.
 */
export const ENVELOPE_WORDS = {
  "case A": { "1": "windward wall", "2": "windward roof", "3": "leeward roof", "4": "leeward wall" },
  "case B": {
    "1": "side wall",
    "2": "roof",
    "3": "roof",
    "4": "side wall",
    "5": "windward end wall",
    "6": "leeward end wall",
  },
} as const satisfies Readonly<Record<string, Readonly<Record<string, string>>>>;

export interface SurfaceNodes {
  readonly surface: string;
  /** [slope degrees, GCpf], straight between, level beyond */
  readonly nodes: readonly (readonly [number, number])[];
}

const at = (surface: string, to5: number, at20: number, from30: number): SurfaceNodes => ({
  surface,
  nodes: [
    [5, to5],
    [20, at20],
    [30, from30],
  ],
});

/** Load case A, wind across the ridge, slopes to 45 degrees: 1 windward wall, 2 windward roof, 3 leeward roof, 4 leeward wall. */
export const ENVELOPE_CASE_A: readonly SurfaceNodes[] = [
  at("1", 0.4, 0.53, 0.56),
  at("2", -0.69, -0.69, 0.21),
  at("3", -0.37, -0.48, -0.43),
  at("4", -0.29, -0.43, -0.37),
  at("1E", 0.61, 0.8, 0.69),
  at("2E", -1.07, -1.07, 0.27),
  at("3E", -0.53, -0.69, -0.53),
  at("4E", -0.43, -0.64, -0.48),
];

/** Load case B, wind along the ridge, any slope: 1 and 4 side walls, 2 and 3 roof, 5 windward and 6 leeward end wall. */
export const ENVELOPE_CASE_B: readonly (readonly [surface: string, gcpf: number])[] = [
  ["1", -0.45],
  ["2", -0.69],
  ["3", -0.37],
  ["4", -0.45],
  ["5", 0.4],
  ["6", -0.29],
  ["1E", -0.48],
  ["2E", -1.07],
  ["3E", -0.53],
  ["4E", -0.48],
  ["5E", 0.61],
  ["6E", -0.43],
];
