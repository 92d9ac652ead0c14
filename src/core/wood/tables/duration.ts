/** What a load's duration stands for in allowable stress design (CD) and in load and resistance factor design (lambda). */
export const DURATION_WORDS = ["permanent", "live", "snow", "construction", "wind", "seismic", "impact"] as const;
export type DurationWord = (typeof DURATION_WORDS)[number];

export interface Duration {
  readonly cd: number;
  readonly lambda: number;
}

export const CD_SOURCE = "NDS Table 2.3.2, from memory; 0.9 to 1.25 and 1.6 read in public examples";
export const LAMBDA_SOURCE = "NDS Appendix N Table N3, from memory";

/** lambda of live load is that of occupancy; storage has 0.7, which the user can reach by a higher load. */
export const DURATIONS: Readonly<Record<DurationWord, Duration>> = {
  permanent: { cd: 0.9, lambda: 0.6 },
  live: { cd: 1, lambda: 0.8 },
  snow: { cd: 1.15, lambda: 0.8 },
  construction: { cd: 1.25, lambda: 0.8 },
  wind: { cd: 1.6, lambda: 1 },
  seismic: { cd: 1.6, lambda: 1 },
  impact: { cd: 2, lambda: 1.25 },
};

/** Format conversion and resistance factors of load and resistance factor design. */
export interface Resistance {
  readonly kf: number;
  readonly phi: number;
  /** whether the time effect factor lambda applies */
  readonly timed: boolean;
}

export const RESISTANCE_SOURCE = "NDS Appendix N Tables N1, N2, from memory";

/** By value; a value that is not here (E) takes none. */
export const RESISTANCE: Readonly<Record<string, Resistance>> = {
  Fb: { kf: 2.54, phi: 0.85, timed: true },
  Ft: { kf: 2.7, phi: 0.8, timed: true },
  Fv: { kf: 2.88, phi: 0.75, timed: true },
  Fs: { kf: 2.88, phi: 0.75, timed: true },
  Fc: { kf: 2.4, phi: 0.9, timed: true },
  Fcp: { kf: 1.67, phi: 0.9, timed: false },
  Emin: { kf: 1.76, phi: 0.85, timed: false },
};

/** Allowable (service) level of a strength level force: 0.6 W and 0.7 E. */
export const SERVICE_SHARE: Readonly<Partial<Record<DurationWord, number>>> = { wind: 0.6, seismic: 0.7 };
export const SERVICE_SOURCE = "ASCE 7 section 2.4.1: 0.6 W, 0.7 E";
