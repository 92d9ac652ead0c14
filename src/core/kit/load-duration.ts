import { BadInput, plain } from "./refusal.ts";

/** Words for the duration of the shortest load of a combination. */
export const LOAD_DURATIONS = ["permanent", "live", "snow", "construction", "wind", "seismic", "impact"] as const;
export type LoadDuration = (typeof LOAD_DURATIONS)[number];

/** A word, or the load duration factor CD itself. */
export type Duration = LoadDuration | number;

interface Factors {
  /** load duration factor of allowable stress design */
  readonly cd: number;
  /** time effect factor of strength design */
  readonly lambda: number;
}

/** NDS 2018 Table 2.3.2 (CD) and Table N.3.3 (lambda), both from memory; a construction load is taken like a roof live load. */
const FACTORS: Readonly<Record<LoadDuration, Factors>> = {
  permanent: { cd: 0.9, lambda: 0.6 },
  live: { cd: 1, lambda: 0.8 },
  snow: { cd: 1.15, lambda: 0.8 },
  construction: { cd: 1.25, lambda: 0.8 },
  wind: { cd: 1.6, lambda: 1 },
  seismic: { cd: 1.6, lambda: 1 },
  impact: { cd: 2, lambda: 1.25 },
};

/** Load duration factor CD of allowable stress design. NDS 2018 Table 2.3.2. */
export function loadDurationFactor(duration: Duration): number {
  return typeof duration === "number" ? duration : FACTORS[duration].cd;
}

/**
 * Time effect factor lambda of strength design. NDS 2018 Table N.3.3.
 * @throws BadInput for a bare CD, which does not say the kind of load
 */
export function timeEffectFactor(duration: Duration): number {
  if (typeof duration === "number") {
    throw new BadInput(
      `The load duration is given as the factor ${plain(duration)}`,
      "strength design takes the time effect factor by the kind of load (NDS 2018 Table N.3.3)",
      `Give a word: ${LOAD_DURATIONS.join(", ")}`,
    );
  }
  return FACTORS[duration].lambda;
}
