import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { wholePacks } from "./packs.ts";

const CUBIC_FEET_IN_CUBIC_YARD = 27;

/** Pours alike: a slab, a footing, a wall (length, width, depth), or a round pier (diameter, depth). */
export interface Pour {
  readonly name: string;
  /** length, or the diameter of a round pier */
  readonly lengthFt: number;
  /** undefined for a round pier */
  readonly widthFt: number | undefined;
  readonly depthFt: number;
  readonly count: number;
}

/** Wider than this a round pier is likely a slab whose width was forgotten. */
const WIDE_PIER_FT = 5;

/**
 * Concrete to order, in cubic yards: volume with waste, rounded up to what the plant sells.
 * @param incrementYd3 smallest step of an order, above 0
 */
export function concreteYd3(pours: readonly Pour[], waste: number, incrementYd3: number, tape?: Tape): number {
  let volumeFt3 = 0;
  for (const p of pours) {
    const areaFt2 = p.widthFt === undefined ? (Math.PI * p.lengthFt ** 2) / 4 : p.lengthFt * p.widthFt;
    const all = areaFt2 * p.depthFt * p.count;
    if (p.widthFt === undefined && p.lengthFt > WIDE_PIER_FT) {
      tape?.caution(
        `${p.name} has no width and counts as a round pier of ${plain(p.lengthFt)} ft in diameter: is its width missing?`,
      );
    }
    volumeFt3 += all;
    const base =
      p.widthFt === undefined ? `pi x ${plain(p.lengthFt)}^2 / 4` : `${plain(p.lengthFt)} x ${plain(p.widthFt)}`;
    tape?.step("V_i", `${p.name}: ${base} x ${plain(p.depthFt)} ft x ${p.count}`, all, "ft3", "geometry");
  }
  const yards = (volumeFt3 / CUBIC_FEET_IN_CUBIC_YARD) * (1 + waste);
  tape?.step("V", `sum / 27 x (1 + waste ${waste})`, yards, "yd3", "1 yd3 = 27 ft3");
  const orderYd3 = wholePacks(yards, incrementYd3) * incrementYd3;
  tape?.step("order", `V rounded up to ${plain(incrementYd3)} yd3`, orderYd3, "yd3", "");
  return orderYd3;
}
