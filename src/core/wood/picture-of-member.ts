import { plain } from "../kit/refusal.ts";
import type { BeamSolution } from "./beam/beam.ts";
import type { Check } from "./check.ts";
import type { Curve, WoodMemberPicture } from "./pictures.ts";

/** Points of a curve in each stretch between breaks. */
const POINTS = 16;

/** A value along a beam, with both sides of every break. */
export function curveOf(solution: BeamSolution, of: (x: number, side: "left" | "right") => number): Curve {
  const breaks = solution.breaksIn;
  return breaks.slice(1).flatMap((to, i) => {
    const from = breaks[i] as number;
    return Array.from({ length: POINTS + 1 }, (_, k): [number, number] => {
      const x = k === POINTS ? to : from + ((to - from) * k) / POINTS;
      return [x, of(x, k === 0 ? "right" : "left")];
    });
  });
}

export function ratioWords(checks: readonly Check[]): string[] {
  return checks.map((c) => `${c.check} ${c.ratio.toFixed(2)}`);
}

/** @param service the beam that deflection was taken of */
export function memberPicture(
  solution: BeamSolution,
  service: BeamSolution,
  name: string,
  checks: readonly Check[],
  axialLb = 0,
): WoodMemberPicture {
  const { lengthIn, supportsIn, loads } = solution.beam;
  const worst = checks[0];
  return {
    kind: "wood-member",
    alt: `${name} of ${plain(lengthIn)} in on ${supportsIn.length} supports with its load, shear, moment and deflection; ${worst?.check} is worst at ${worst?.ratio.toFixed(2)}.`,
    name,
    lengthIn,
    supportsIn,
    loads,
    axialLb,
    shearLb: curveOf(solution, solution.shearLb),
    momentLbIn: curveOf(solution, solution.momentLbIn),
    deflectionIn: curveOf(service, service.deflectionIn),
    ratios: ratioWords(checks),
  };
}
