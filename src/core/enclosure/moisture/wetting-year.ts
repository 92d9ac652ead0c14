import { OutOfRange } from "../../kit/refusal.ts";
import { type PlaneRate, tautString } from "./taut-string.ts";
import { type MoistWall, nodeTemperaturesC, settle } from "./vapor-path.ts";

/**
 * What happens in a month in which a plane dries out.
 * - `zero`: the plane is set to no water at the month's end; the rest of the month keeps its rates (ISO 13788).
 * - `split`: the month is divided at that moment and solved again without the plane.
 */
export const DRY_OUTS = ["zero", "split"] as const;
export type DryOut = (typeof DRY_OUTS)[number];

/** Mean air of a month on both sides. */
export interface MonthAir {
  readonly name: string;
  readonly seconds: number;
  readonly insideC: number;
  readonly insidePa: number;
  readonly outsideC: number;
  readonly outsidePa: number;
}

/** A month's end. Nodes count from the inside surface (0) outward, a node behind each layer. */
export interface MonthWater {
  readonly month: MonthAir;
  /** rates with which the month began */
  readonly rates: readonly PlaneRate[];
  /** water that came (above 0) or went, kg/m2, all planes together */
  readonly changeKgM2: number;
  /** water that stands at each wet node at the end of the month, kg/m2 */
  readonly standing: ReadonlyMap<number, number>;
  readonly totalKgM2: number;
  /** vapor that came in at the inside surface less what left at the outside, over the month, kg/m2: equals the change */
  readonly balanceKgM2: number;
}

export interface WettingYear {
  /** from the month in which water first forms; in calendar order where none forms */
  readonly months: readonly MonthWater[];
  readonly peakKgM2: number;
  readonly endKgM2: number;
}

const MOST_SPLITS = 1000;

/**
 * A year of condensation and drying at any number of planes, from the first month after the warmest in which water forms.
 * Planes that hold water are pinned at saturation; new ones may form beside them.
 * @param wall layers as they are to be solved (split beforehand where wanted)
 * @param months January to December
 * @throws OutOfRange outside the saturation curve
 * Source: ISO 13788:2012 6.4 to 6.6.
 */
export function wettingYear(wall: MoistWall, months: readonly MonthAir[], dryOut: DryOut): WettingYear {
  const wetFromDry = months.map((m) => solve(wall, m, new Map()).planes.length > 0);
  const start = firstWetMonth(months, wetFromDry);
  const ordered = [...months.slice(start), ...months.slice(0, start)];
  let standing: ReadonlyMap<number, number> = new Map();
  const results: MonthWater[] = [];
  for (const month of ordered) {
    const result = runMonth(wall, month, standing, dryOut);
    standing = result.standing;
    results.push(result);
  }
  const peakKgM2 = Math.max(0, ...results.map((r) => r.totalKgM2));
  return { months: results, peakKgM2, endKgM2: results.at(-1)?.totalKgM2 ?? 0 };
}

/** Temperature and vapor pressure at each node of a wall in a month. */
export interface MonthPressures {
  readonly name: string;
  readonly temperaturesC: readonly number[];
  readonly pressuresPa: readonly number[];
}

/** The pressures with which each month of the year begins, with the water pinned that stands from the month before. */
export function monthPressures(
  wall: MoistWall,
  months: readonly MonthAir[],
  dryOut: DryOut,
): readonly MonthPressures[] {
  let standing: ReadonlyMap<number, number> = new Map();
  return wettingYear(wall, months, dryOut).months.map((m) => {
    const temperaturesC = nodeTemperaturesC(wall, m.month.insideC, m.month.outsideC);
    const { solution } = solveMonth(wall, m.month, standing);
    standing = m.standing;
    return { name: m.month.name, temperaturesC, pressuresPa: solution.pressurePa };
  });
}

/** Counted from the month after the warmest: the first wet month that follows a dry one, else the first wet one, else January. */
function firstWetMonth(months: readonly MonthAir[], wet: readonly boolean[]): number {
  const warmest = months.reduce((best, m, i) => (m.outsideC > (months[best]?.outsideC ?? 0) ? i : best), 0);
  const order = months.map((_, i) => (warmest + 1 + i) % months.length);
  const before = (i: number) => (i + months.length - 1) % months.length;
  return order.find((i) => wet[i] && !wet[before(i)]) ?? order.find((i) => wet[i]) ?? 0;
}

interface MonthSolution {
  readonly planes: readonly PlaneRate[];
  /** net vapor flow into the wall through its two surfaces, kg/(m2 s) */
  readonly netKgM2s: number;
}

function solveMonth(wall: MoistWall, month: MonthAir, standing: ReadonlyMap<number, number>) {
  const pinned = new Set(standing.keys());
  const temperatures = nodeTemperaturesC(wall, month.insideC, month.outsideC);
  return settle(wall, temperatures, "ISO 13788", (path) => tautString(path, month.insidePa, month.outsidePa, pinned));
}

function solve(wall: MoistWall, month: MonthAir, standing: ReadonlyMap<number, number>): MonthSolution {
  const { solution } = solveMonth(wall, month, standing);
  return { planes: solution.planes, netKgM2s: solution.netKgM2s };
}

function runMonth(wall: MoistWall, month: MonthAir, before: ReadonlyMap<number, number>, dryOut: DryOut): MonthWater {
  let water = new Map(before);
  let left = month.seconds;
  let balanceKgM2 = 0;
  let first: readonly PlaneRate[] | undefined;
  for (let part = 0; left > 0; part++) {
    if (part > MOST_SPLITS) {
      throw new OutOfRange(
        `${month.name} splits into more than ${MOST_SPLITS} parts`,
        "planes dry and wet again without end",
        'Use "zero" for the months in which a plane dries',
      );
    }
    const { planes, netKgM2s } = solve(wall, month, water);
    first ??= planes;
    const seconds = dryOut === "zero" ? left : Math.min(left, firstDryOut(planes, water));
    balanceKgM2 += netKgM2s * seconds;
    const next = new Map<number, number>();
    for (const { node, kgM2s } of planes) {
      const amount = (water.get(node) ?? 0) + kgM2s * seconds;
      // What is left of a plane that dries at this very moment is rounding.
      const rounding = 1e-12 * (water.get(node) ?? 0);
      if (amount > rounding) next.set(node, amount);
      else if (dryOut === "zero") balanceKgM2 -= amount;
    }
    water = next;
    left -= seconds;
  }
  const sum = (amounts: ReadonlyMap<number, number>) => [...amounts.values()].reduce((a, b) => a + b, 0);
  const totalKgM2 = sum(water);
  return {
    month,
    rates: first ?? [],
    changeKgM2: totalKgM2 - sum(before),
    standing: water,
    totalKgM2,
    balanceKgM2,
  };
}

/** Time until the first plane that holds water has dried. */
function firstDryOut(planes: readonly PlaneRate[], water: ReadonlyMap<number, number>): number {
  const times = planes.map(({ node, kgM2s }) =>
    kgM2s < 0 ? (water.get(node) ?? 0) / -kgM2s : Number.POSITIVE_INFINITY,
  );
  return Math.min(...times, Number.POSITIVE_INFINITY);
}
