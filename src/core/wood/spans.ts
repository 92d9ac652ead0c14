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

/** One uniform load over a whole length. */
export function uniform(lengthIn: number, lbPerIn: number): BeamLoad {
  return { kind: "uniform", fromIn: 0, toIn: lengthIn, lbPerIn };
}
