import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { betaPlace } from "./beta.ts";

/** A cost by its least, likeliest and greatest value. */
export interface ThreePoints {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export const RANGE_SHAPES = ["beta", "triangular"] as const;
export type RangeShape = (typeof RANGE_SHAPES)[number];

export interface RangeMoments {
  readonly mean: number;
  readonly deviation: number;
  /** values not passed in 10, 50 and 90 of 100 cases */
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/**
 * Mean, deviation and percentiles of a cost from three points.
 * Beta (PERT): mean (a + 4m + b)/6, deviation (b - a)/6 by convention; percentiles of the beta curve with that mean on a to b. Triangular: exact.
 * @throws BadInput where low, likely, high do not ascend
 * Source: three-point formulas of the PERT method and of the triangular distribution.
 */
export function rangeMoments(points: ThreePoints, shape: RangeShape, tape?: Tape): RangeMoments {
  checkPoints("The cost", points);
  const moments = shape === "beta" ? betaMoments(points) : triangularMoments(points);
  const [mean, deviation] = FORMULAS[shape];
  tape?.step("mean", mean, moments.mean, "$", `${shape} distribution`);
  tape?.step("deviation", deviation, moments.deviation, "$", `${shape} distribution`);
  const place = shape === "beta" ? betaQuantile(points) : triangularQuantile(points);
  const at = (share: number): number => {
    const value = place(share);
    tape?.step(`P${share * 100}`, `not passed in ${share * 100} of 100 cases`, value, "$", `${shape} distribution`);
    return value;
  };
  return { ...moments, p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

const FORMULAS: Readonly<Record<RangeShape, readonly [mean: string, deviation: string]>> = {
  beta: ["(a + 4 m + b) / 6", "(b - a) / 6"],
  triangular: ["(a + m + b) / 3", "sqrt((a^2 + m^2 + b^2 - a m - a b - m b) / 18)"],
};

type Moments = Pick<RangeMoments, "mean" | "deviation">;

function betaMoments({ low, likely, high }: ThreePoints): Moments {
  return { mean: (low + 4 * likely + high) / 6, deviation: (high - low) / 6 };
}

export function triangularMoments({ low, likely, high }: ThreePoints): Moments {
  // The sum of squares of differences, so that nothing is lost where the points lie close together.
  const squares = (likely - low) ** 2 + (high - likely) ** 2 + (high - low) ** 2;
  return { mean: (low + likely + high) / 3, deviation: Math.sqrt(squares / 36) };
}

/** The value below which a share of a triangular cost lies. */
export function triangularQuantile({ low, likely, high }: ThreePoints): (share: number) => number {
  const span = high - low;
  const left = span === 0 ? 0 : (likely - low) / span;
  return (share) =>
    share < left
      ? low + Math.sqrt(share * span * (likely - low))
      : high - Math.sqrt((1 - share) * span * (high - likely));
}

/** The value below which a share of a beta (PERT) cost lies. */
function betaQuantile({ low, likely, high }: ThreePoints): (share: number) => number {
  const span = high - low;
  if (span === 0) return () => low;
  const shape = { a: 1 + (4 * (likely - low)) / span, b: 1 + (4 * (high - likely)) / span };
  return (share) => low + span * betaPlace(share, shape);
}

/** @throws BadInput where the three do not ascend */
export function checkPoints(name: string, { low, likely, high }: ThreePoints): void {
  if (low <= likely && likely <= high) return;
  throw new BadInput(
    `${name} has low ${plain(low)}, likely ${plain(likely)}, high ${plain(high)}`,
    "the likely value lies between the low and the high one",
    "Give them in that order",
  );
}
