import type { Known } from "../../kit/known.ts";
/**
 * Shrinkage from green to ovendry in percent of the green size, radial and tangential. USDA FPL Wood Handbook GTR-190 (2010) Table 4-3 (public domain).
 * `read`: the row stood in a copy that was read; `memory`: it did not.
 */
export interface Shrinkage {
  readonly wood: string;
  readonly also: readonly string[];
  readonly radialPct: number;
  readonly tangentialPct: number;
  readonly known: Known;
}

export const SHRINKAGE_SOURCE = "USDA FPL Wood Handbook GTR-190 Table 4-3";

const row = (
  wood: string,
  radialPct: number,
  tangentialPct: number,
  known: Known,
  also: readonly string[] = [],
): Shrinkage => ({ wood, also, radialPct, tangentialPct, known });

export const SHRINKAGE: readonly Shrinkage[] = [
  row("Douglas-fir", 4.8, 7.6, "read", ["douglas-fir coast", "douglas fir", "df", "df-l", "douglas-fir larch"]),
  row("Douglas-fir interior north", 3.8, 6.9, "read"),
  row("Douglas-fir interior west", 4.8, 7.5, "read"),
  row("western redcedar", 2.4, 5, "read", ["western red cedar", "cedar"]),
  row("balsam fir", 2.9, 6.9, "read"),
  row("grand fir", 3.4, 7.5, "read"),
  row("white fir", 3.3, 7, "read"),
  row("subalpine fir", 2.6, 7.4, "read"),
  row("quaking aspen", 3.5, 6.7, "read", ["aspen"]),
  row("yellow-poplar", 4.6, 8.2, "read", ["yellow poplar", "poplar"]),
  row("white oak", 5.6, 10.5, "read"),
  row("western hemlock", 4.2, 7.8, "memory", ["hemlock", "hem-fir", "hf"]),
  row("loblolly pine", 4.8, 7.4, "memory", ["southern pine", "sp", "southern yellow pine"]),
  row("longleaf pine", 5.1, 7.5, "memory"),
  row("lodgepole pine", 4.3, 6.7, "memory"),
  row("Engelmann spruce", 3.8, 7.1, "memory"),
  row("white spruce", 4.7, 8.2, "memory", ["spruce", "spruce-pine-fir", "spf"]),
  row("Sitka spruce", 4.3, 7.5, "memory"),
];

/** Moisture content from which on drying shrinks wood, percent. */
export const FIBER_SATURATION_PCT = 30;

/** Lumber of most species by its two sizes: shrinkage from green in percent, S = a - b M, for M of 8 to 19 %. FPL-RP-489 (1989). */
export const LUMBER_SHRINKAGE = {
  thickness: { a: 5.062, b: 0.181 },
  width: { a: 6.031, b: 0.215 },
  leastPct: 8,
  mostPct: 19,
  greenPct: 28,
  clause: "USDA FPL Research Paper FPL-RP-489",
} as const;

/** Along the grain wood shrinks from 0.1 to 0.2 % from green to ovendry; the larger is taken. */
export const ALONG_PCT = 0.2;
