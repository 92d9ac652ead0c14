import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { CostLine } from "./lines.ts";
import { normalDeviations } from "./normal.ts";
import type { ContingencyPicture } from "./pictures.ts";
import { checkPoints, type ThreePoints, triangularMoments, triangularQuantile } from "./range.ts";
import { type Draws, draw, errorOf, notPassed, TRIALS } from "./simulation.ts";

export interface ConfidenceRow {
  readonly confidence: number;
  /** not passed with that confidence, $ */
  readonly total: number;
  /** total less the lines' amounts, $ */
  readonly contingency: number;
  /** contingency as a share of the lines' amounts */
  readonly share: number;
}

export interface Contingency {
  /** the confidence asked for first, then others ascending */
  readonly levels: readonly ConfidenceRow[];
  /** standard error of the first level's total, $ */
  readonly error: number;
  /** the line that moves the contingency most, and what it takes off where it is certain; undefined where all lines are */
  readonly heaviest: { readonly line: string; readonly takesOff: number } | undefined;
}

const LADDER = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95] as const;

/**
 * Contingency on a list of costs: each line with a low or a high value is triangular about its amount, all lines rise and fall together by one
 * correlation, totals by simulation.
 * @param confidence share of cases in which the total is not passed, above 0 and below 1
 * @param correlation between lines, 0 to 1
 * @param seed whole number that the draws start from
 * @throws BadInput for a line whose amount lies outside its low and high
 * Source: Monte Carlo with a Gaussian copula; the normal approximation beside it by the moments of the triangular distribution.
 */
export function contingency(
  lines: readonly CostLine[],
  confidence: number,
  correlation: number,
  seed: number,
  tape?: Tape,
): Contingency {
  const ranges = lines.map(rangeOf);
  const base = lines.reduce((sum, l) => sum + l.amount, 0);
  tape?.step("base", "sum of the amounts", base, "$", "arithmetic");
  const normal = normalTotals(ranges, correlation, tape);
  const draws = draw(ranges.map(triangularQuantile), correlation, seed);
  const sorted = Float64Array.from(draws.totals).sort();
  const level = (share: number): ConfidenceRow => {
    const total = cents(notPassed(sorted, share));
    return { confidence: share, total, contingency: total - base, share: (total - base) / base };
  };
  const levels = [confidence, ...LADDER.filter((c) => c !== confidence)].map(level);
  const says = `${TRIALS} trials, correlation ${plain(correlation)}, seed ${seed}`;
  for (const { confidence: c, total } of levels) {
    tape?.step(
      `P${plain(c * 100)}`,
      `${says}; by the normal curve ${plain(cents(normal(c)))}`,
      total,
      "$",
      "simulation",
    );
  }
  const error = cents(errorOf(sorted, confidence));
  tape?.step("error", `standard error of P${plain(confidence * 100)}`, error, "$", "order statistics");
  const heaviest = heaviestLine(lines, draws, confidence, levels[0]?.total ?? 0);
  if (heaviest !== undefined) {
    tape?.step(
      "heaviest line",
      `${heaviest.line}: certain, it takes this off the contingency`,
      heaviest.takesOff,
      "$",
      "same draws",
    );
  }
  sayLines(lines, tape);
  tape?.show(contingencyPicture(base, sorted, normal, confidence));
  return { levels, error, heaviest };
}

/** A missing end is the amount: the line does not go that way. */
function rangeOf(line: CostLine): ThreePoints {
  const points = { low: line.low ?? line.amount, likely: line.amount, high: line.high ?? line.amount };
  checkPoints(line.line, points);
  return points;
}

/** Below a cent the last bits of the simulation are not the same on every machine. */
function cents(value: number): number {
  return Math.round(value * 100) / 100;
}

function normalTotals(
  ranges: readonly ThreePoints[],
  correlation: number,
  tape: Tape | undefined,
): (share: number) => number {
  const moments = ranges.map(triangularMoments);
  const mean = moments.reduce((sum, m) => sum + m.mean, 0);
  const squares = moments.reduce((sum, m) => sum + m.deviation ** 2, 0);
  const together = moments.reduce((sum, m) => sum + m.deviation, 0);
  const deviation = Math.sqrt((1 - correlation) * squares + correlation * together ** 2);
  tape?.step("mean", "sum of (a + m + b) / 3", mean, "$", "triangular distribution");
  tape?.step(
    "deviation",
    `sqrt((1 - r) sum of s^2 + r (sum of s)^2), r = ${plain(correlation)}`,
    deviation,
    "$",
    "variance of a sum",
  );
  return (share) => mean + normalDeviations(share) * deviation;
}

/** The line whose range, taken away in the same draws, takes most off the total at the confidence. */
function heaviestLine(
  lines: readonly CostLine[],
  draws: Draws,
  confidence: number,
  total: number,
): Contingency["heaviest"] {
  let heaviest: Contingency["heaviest"];
  lines.forEach((line, i) => {
    if (line.low === undefined && line.high === undefined) return;
    const without = draws.totals.map((t, trial) => t - (draws.each[i]?.[trial] ?? 0) + line.amount).sort();
    const takesOff = cents(total - notPassed(without, confidence));
    if (heaviest === undefined || takesOff > heaviest.takesOff) heaviest = { line: line.line, takesOff };
  });
  return heaviest;
}

function sayLines(lines: readonly CostLine[], tape: Tape | undefined): void {
  const certain = lines.filter((l) => l.low === undefined && l.high === undefined).map((l) => l.line);
  const oneSided = lines.filter((l) => (l.low === undefined) !== (l.high === undefined)).map((l) => l.line);
  if (certain.length > 0) tape?.assume(`Without low and high a line is certain: ${certain.join(", ")}.`);
  if (oneSided.length > 0) tape?.assume(`A line with one end only does not go the other way: ${oneSided.join(", ")}.`);
}

function contingencyPicture(
  base: number,
  sorted: Float64Array,
  normal: (share: number) => number,
  confidence: number,
): ContingencyPicture {
  const shares = Array.from({ length: 99 }, (_, i) => (i + 1) / 100);
  const chosen = { confidence, total: cents(notPassed(sorted, confidence)) };
  return {
    kind: "contingency",
    alt: `Total that is not passed, by confidence: $${Math.round(chosen.total)} at ${plain(confidence * 100)} %, the lines' amounts $${Math.round(base)}`,
    base,
    curve: shares.map((share) => ({ confidence: share, total: notPassed(sorted, share), normal: normal(share) })),
    chosen,
  };
}
