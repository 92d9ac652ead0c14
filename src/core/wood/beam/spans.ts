import type { Beam, BeamLoad } from "./beam.ts";

/** Supports of equal spans in a row, from the left end. */
export function equalSupports(spanIn: number, spans: number): number[] {
  return Array.from({ length: spans + 1 }, (_, i) => i * spanIn);
}

/**
 * A beam of equal spans without overhang.
 * @param spans 1 or more
 */
export function equalSpans(
  spanIn: number,
  spans: number,
  stiffness: { readonly bending: number; readonly shear?: number },
  loads: readonly BeamLoad[],
): Beam {
  return {
    lengthIn: spanIn * spans,
    supportsIn: equalSupports(spanIn, spans),
    bendingStiffness: stiffness.bending,
    ...(stiffness.shear === undefined ? {} : { shearStiffness: stiffness.shear }),
    loads,
  };
}

/** Said where a live load lies on every span of several. */
export const ALIKE =
  "All spans are loaded alike: a live load on some of them only can bend an inner support and a loaded span more.";

/** One uniform load over a whole length. */
export function uniform(lengthIn: number, lbPerIn: number): BeamLoad {
  return { kind: "uniform", fromIn: 0, toIn: lengthIn, lbPerIn };
}
