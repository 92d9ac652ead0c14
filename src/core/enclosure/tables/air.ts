/**
 * Natural air change from a pressurization test: ACH = ACH50 / N, N = climate factor x height factor x shielding factor.
 * The rule and its accuracy were read on a national laboratory's pages; the factors are from memory.
 */
export const NATURAL_RULE = {
  clause: "rule ACH50 / N of a US national laboratory",
  /** N without any correction */
  plainN: 20,
  accuracy: "from half to twice the true rate",
} as const;

/** Climate factor of the four infiltration zones, from memory; 1 is cold and windy, 4 is mild. */
export const CLIMATE_FACTOR = { 1: 15.5, 2: 18.5, 3: 21.5, 4: 24.5 } as const;
export type InfiltrationZone = keyof typeof CLIMATE_FACTOR;

/** Factor by stories, from memory. */
export const HEIGHT_FACTOR: readonly (readonly [stories: number, factor: number])[] = [
  [1, 1],
  [1.5, 0.9],
  [2, 0.8],
  [3, 0.7],
];

/** Factor by shielding from the wind, from memory. */
export const SHIELDING_FACTOR = { heavy: 1.2, normal: 1, open: 0.9 } as const;
export type Shielding = keyof typeof SHIELDING_FACTOR;

/** The infiltration zone that stands in for a climate zone of the energy code. Common practice, no source: the two maps differ. */
export const INFILTRATION_ZONE: Readonly<Record<number, InfiltrationZone>> = {
  0: 4,
  1: 4,
  2: 4,
  3: 3,
  4: 2,
  5: 2,
  6: 1,
  7: 1,
  8: 1,
};
