import { recalled } from "../../kit/known.ts";
/** Load and resistance factor design of wood, and where the duration factors of src/core/kit/load-duration.ts stand. */

export const CD_SOURCE = "NDS Table 2.3.2, from memory; 0.9 to 1.25 and 1.6 read in public examples";
export const LAMBDA_SOURCE = recalled("NDS Appendix N Table N3");

/** Format conversion and resistance factors of load and resistance factor design. */
export interface Resistance {
  readonly kf: number;
  readonly phi: number;
  /** whether the time effect factor lambda applies */
  readonly timed: boolean;
}

export const RESISTANCE_SOURCE = recalled("NDS Appendix N Tables N1, N2");

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
