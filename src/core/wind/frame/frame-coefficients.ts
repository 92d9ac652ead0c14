import { between, nodesOf } from "../../kit/interpolate.ts";
import {
  LEEWARD_ROOF_CP,
  LEEWARD_ROOF_DEGREES,
  LEEWARD_WALL_CP,
  PARALLEL_ROOF_CP,
  ROOF_DEGREES,
  ROOF_H_OVER_L,
  STRIP_AREA_FACTOR,
  WINDWARD_ROOF_PRESSURE_CP,
  WINDWARD_ROOF_SUCTION_CP,
} from "../tables/frame-cp.ts";

// ASCE/SEI 7-10 Fig. 27.4-1, 7-16 and 7-22 Fig. 27.3-1. Straight interpolation, as the notes of the figure allow.

/** Cp of the leeward wall. @param lOverB plan dimension along the wind over the one across it */
export function leewardWallCp(lOverB: number): number {
  return between(LEEWARD_WALL_CP, lOverB);
}

function overRows(
  columns: readonly number[],
  rows: readonly (readonly number[])[],
  slopeDeg: number,
  hOverL: number,
): number {
  return between(
    nodesOf(
      ROOF_H_OVER_L,
      rows.map((row) => between(nodesOf(columns, row), slopeDeg)),
    ),
    hOverL,
  );
}

/**
 * The two conditions of the windward roof slope for wind normal to the ridge, 10 degrees and up.
 * @param roofAreaFt2 area that the suction acts on, which reduces the -1.3 at 10 degrees; undefined takes no reduction
 */
export function windwardRoofCp(
  slopeDeg: number,
  hOverL: number,
  roofAreaFt2?: number,
): { readonly suction: number; readonly pressure: number } {
  const steep = slopeDeg >= 60;
  const [low, middle, [first, ...rest]] = WINDWARD_ROOF_SUCTION_CP;
  const suctions = [low, middle, [first * areaFactor(roofAreaFt2), ...rest]];
  return {
    suction: overRows(ROOF_DEGREES, suctions, slopeDeg, hOverL),
    pressure: steep
      ? Math.min(0.01 * slopeDeg, 0.8)
      : overRows(ROOF_DEGREES, WINDWARD_ROOF_PRESSURE_CP, slopeDeg, hOverL),
  };
}

/** Cp of the leeward roof slope for wind normal to the ridge, 10 degrees and up. */
export function leewardRoofCp(slopeDeg: number, hOverL: number): number {
  return overRows(LEEWARD_ROOF_DEGREES, LEEWARD_ROOF_CP, slopeDeg, hOverL);
}

/** Factor on the -1.3, by the area that it acts on. */
function areaFactor(areaFt2: number | undefined): number {
  return areaFt2 === undefined ? 1 : between(STRIP_AREA_FACTOR, areaFt2);
}

export interface RoofStrip {
  /** from the windward edge, in mean roof heights; the last strip is open */
  readonly fromH: number;
  readonly toH: number | undefined;
  readonly cp: number;
}

/**
 * Strips of a roof under 10 degrees, or of any roof with the wind along the ridge.
 * @param stripAreaFt2 area of the strip 0 to h/2, which reduces its -1.3; undefined takes no reduction
 */
export function parallelRoofCp(hOverL: number, stripAreaFt2?: number): readonly RoofStrip[] {
  const factor = areaFactor(stripAreaFt2);
  return PARALLEL_ROOF_CP.map(({ fromH, toH, low, high }) => ({
    fromH,
    toH,
    cp: between(
      [
        [0.5, low],
        [1, fromH === 0 ? high * factor : high],
      ],
      hOverL,
    ),
  }));
}
