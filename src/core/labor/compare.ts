import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { type CurveKind, curveSlope, learningHours, unitHours } from "./learning.ts";
import { burdened } from "./rate.ts";
import type { LaborCost } from "./schedule.ts";

/** A way to do the same task. */
export interface Way {
  readonly way: string;
  /** labor hours of one; of the first one where a learning rate is given */
  readonly hoursEach: number;
  /** labor hours before the first one */
  readonly setUpHours: number;
  readonly crewSize: number;
  /** crane, lift or scaffold while the crew works, $/h */
  readonly machinePerHour: number;
  /** hours lost to weather, breakage and things done twice, as a share of the hours */
  readonly riskShare: number;
}

export interface WayRow {
  readonly way: string;
  readonly hours: number;
  readonly days: number;
  readonly cost: number;
}

export interface Comparison {
  readonly ways: readonly WayRow[];
  /** for each way after the first: the count at which the two change places; undefined where they never do */
  readonly breakEven: readonly { readonly way: string; readonly count: number | undefined }[];
}

export interface CompareTerms extends LaborCost {
  /** undefined: every one takes the same */
  readonly learningRate: number | undefined;
  readonly curveKind: CurveKind;
  readonly pace: number;
  readonly productiveHours: number;
}

/** Counts beyond this are not looked at. */
const MOST = 100_000;

/** What the trade says of windows set flat on the deck in the time of one in a standing wall; common practice, no source. */
const FLAT_TO_STANDING = 4;

/**
 * Ways to do the same task a number of times, set-up and machine included, and the count at which they cost the same.
 * @throws BadInput for two ways of one name
 * Source: arithmetic; the learning curve as LABOR_LEARNING.
 */
export function compareWays(count: number, ways: readonly Way[], terms: CompareTerms, tape?: Tape): Comparison {
  const names = ways.map((w) => w.way.toLowerCase());
  if (new Set(names).size < names.length) {
    throw new BadInput(
      "Two ways have the same name",
      "each way is named in the result",
      "Give every way a name of its own",
    );
  }
  const rows = ways.map((way) => {
    const row = wayRow(count, way, terms);
    const set = `${plain(way.setUpHours)} h set-up + ${count} at ${plain(way.hoursEach)} h, risk ${plain(way.riskShare)}, pace ${plain(terms.pace)}`;
    tape?.step(
      "t",
      `${way.way}: ${set}`,
      row.hours,
      "h",
      terms.learningRate === undefined ? "arithmetic" : `${terms.curveKind} learning curve`,
    );
    tape?.step(
      "C",
      `${way.way}: t x ${plain(burdened(terms.wage, terms.burden))} + t / ${plain(way.crewSize)} x machine ${plain(way.machinePerHour)}`,
      row.cost,
      "$",
      "arithmetic",
    );
    return row;
  });
  sayRatio(ways, tape);
  const [first, ...others] = ways;
  const breakEven = others.map((way) => ({
    way: way.way,
    count: first === undefined ? undefined : breakEvenCount(first, way, terms),
  }));
  for (const { way, count: at } of breakEven) {
    tape?.step(
      "n",
      `${first?.way} and ${way} change places from`,
      at ?? "never",
      at === undefined ? "" : "pieces",
      `counts to ${MOST}`,
    );
  }
  return { ways: rows, breakEven };
}

function wayRow(count: number, way: Way, terms: CompareTerms): WayRow {
  const hours = hoursOf(count, way, terms);
  return { way: way.way, hours, days: hours / (way.crewSize * terms.productiveHours), cost: costOf(hours, way, terms) };
}

function hoursOf(count: number, way: Way, terms: CompareTerms): number {
  const { learningRate, curveKind, pace } = terms;
  const each =
    learningRate === undefined ? way.hoursEach * count : learningHours(way.hoursEach, count, learningRate, curveKind);
  return ((way.setUpHours + each) * (1 + way.riskShare)) / pace;
}

/** Wages with burden, and the machine for as long as the crew is at it. */
function costOf(hours: number, way: Way, terms: CompareTerms): number {
  return hours * burdened(terms.wage, terms.burden) + (hours / way.crewSize) * way.machinePerHour;
}

function sayRatio(ways: readonly Way[], tape: Tape | undefined): void {
  const each = ways.map((w) => w.hoursEach);
  const [least, most] = [Math.min(...each), Math.max(...each)];
  tape?.step(
    "ratio",
    `slowest to quickest, one piece; the trade's windows: about ${FLAT_TO_STANDING} flat in the time of 1 standing`,
    most / least,
    "",
    "the trade's ratio: common practice, no source",
  );
}

/**
 * The first whole count from which the way that is cheaper per piece has caught up with the other; undefined where one way is cheaper from the first piece
 * on and stays so.
 */
function breakEvenCount(a: Way, b: Way, terms: CompareTerms): number | undefined {
  const hourA = costOf(1 + a.riskShare, a, terms);
  const hourB = costOf(1 + b.riskShare, b, terms);
  const ahead = hourA * a.setUpHours - hourB * b.setUpHours;
  const gained = hourB * b.hoursEach - hourA * a.hoursEach;
  // Both ways are learned alike, so pieces count as so many times the first one.
  const firsts = ahead / gained;
  if (!(firsts > 0 && Number.isFinite(firsts))) return undefined;
  const { learningRate, curveKind } = terms;
  const slope = curveSlope(learningRate ?? 1);
  let sum = 0;
  for (let n = 1; n <= MOST; n++) {
    sum += unitHours(1, n, slope, curveKind);
    if (sum >= firsts - 1e-9) return n;
  }
  return undefined;
}
