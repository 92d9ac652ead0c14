import { asce, type Edition } from "../../kit/edition.ts";
import { windLevelFactor, windLevelText } from "../../kit/load-level.ts";
import { plain } from "../../kit/refusal.ts";
import type { Table, Tape } from "../../kit/tape.ts";
import { type Building, checkBuilding, isSloped, meanRoofHeightFt } from "../building.ts";
import { directedPressure, directedSymbol } from "../directionality.ts";
import { internalCoefficient } from "../enclosure.ts";
import { exposureCoefficient } from "../exposure-coefficient.ts";
import { CLAUSE } from "../tables/clauses.ts";
import { GUST_FACTOR, PARALLEL_ROOF_OTHER_CP, SIDE_WALL_CP, WINDWARD_WALL_CP } from "../tables/frame-cp.ts";
import type { FrameInput, FrameRow } from "./frame.ts";
import { leewardRoofCp, leewardWallCp, parallelRoofCp, windwardRoofCp } from "./frame-coefficients.ts";
import { framePicture } from "./frame-picture.ts";

/** Heights at which the velocity pressure of the windward wall steps, as the Kz table does, ft. */
const BAND_TOPS_FT = [15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100, 120, 140, 160, 180, 200] as const;

const FRAME_WINDS = ["across ridge", "along ridge"] as const;
export type FrameWind = (typeof FRAME_WINDS)[number];

/** A band of the windward wall with its share of the velocity pressure at the mean roof height. */
export interface WallBand {
  readonly fromFt: number;
  readonly toFt: number;
  readonly share: number;
}

/** External pressure of one surface, before internal pressure. */
export interface External {
  readonly surface: string;
  readonly part: string;
  readonly cp: number;
  /** of the velocity pressure at the mean roof height */
  readonly share: number;
}

export function frameFigure(edition: Edition): string {
  return asce(edition, CLAUSE.frameFigure);
}

/** Plan dimension along the wind over the one across it, and h over the one along it. */
export function windRatios(building: Building, wind: FrameWind): { readonly lOverB: number; readonly hOverL: number } {
  const along = wind === "across ridge" ? building.widthFt : building.lengthFt;
  const across = wind === "across ridge" ? building.lengthFt : building.widthFt;
  return { lOverB: along / across, hOverL: meanRoofHeightFt(building) / along };
}

/** Bands of a windward wall up to its top: the whole wall at q where no exposure is given. */
export function wallBands(input: FrameInput, topFt: number): readonly WallBand[] {
  const { exposure, edition } = input;
  if (exposure === undefined) return [{ fromFt: 0, toFt: topFt, share: 1 }];
  const kz = (heightFt: number) => exposureCoefficient(heightFt, exposure, "frame", edition);
  const kh = kz(meanRoofHeightFt(input));
  const tops = [...BAND_TOPS_FT.filter((top) => top < topFt), topFt];
  return tops.map((toFt, i) => ({ fromFt: tops[i - 1] ?? 0, toFt, share: kz(toFt) / kh }));
}

/** External pressures on every surface for one wind direction. */
function externalPressures(input: FrameInput, wind: FrameWind): readonly External[] {
  const { lOverB, hOverL } = windRatios(input, wind);
  const one = (surface: string, part: string, cp: number, share = 1): External => ({ surface, part, cp, share });
  return [
    ...wallBands(input, input.eaveFt).map(({ fromFt, toFt, share }) =>
      one("windward wall", `${plain(fromFt)} to ${plain(toFt)} ft`, WINDWARD_WALL_CP, share),
    ),
    one("leeward wall", "whole", leewardWallCp(lOverB)),
    one("side walls", "whole", SIDE_WALL_CP),
    ...roofRows(input, wind, hOverL).map(([surface, part, cp]) => one(surface, part, cp)),
  ];
}

type RoofRow = readonly [surface: string, part: string, cp: number];

/** Roof surfaces for one wind direction: slopes that face or turn from the wind, strips on what lies along it. */
function roofRows(input: FrameInput, wind: FrameWind, hOverL: number): readonly RoofRow[] {
  const hip = input.roof === "hip";
  if (!isSloped(input)) return stripRows(input, wind, hOverL, "roof");
  if (wind === "across ridge") {
    const ends = hip ? stripRows(input, wind, hOverL, "hip ends") : [];
    return [...slopeRows(input, hOverL, "roof"), ...ends];
  }
  return [...(hip ? slopeRows(input, hOverL, "hip end") : []), ...stripRows(input, wind, hOverL, "roof")];
}

function slopeRows({ slopeDeg, roofAreaFt2 }: FrameInput, hOverL: number, name: string): readonly RoofRow[] {
  const { suction, pressure } = windwardRoofCp(slopeDeg, hOverL, roofAreaFt2);
  return [
    [`windward ${name}`, "suction", suction],
    [`windward ${name}`, "pressure", pressure],
    [`leeward ${name}`, "whole", leewardRoofCp(slopeDeg, hOverL)],
  ];
}

function stripRows(input: FrameInput, wind: FrameWind, hOverL: number, name: string): readonly RoofRow[] {
  const strips = roofStrips(input, wind, hOverL).map(
    ({ fromFt, toFt, cp }): RoofRow => [name, `${plain(fromFt)} to ${plain(toFt)} ft from the windward edge`, cp],
  );
  return [...strips, [name, "other condition", PARALLEL_ROOF_OTHER_CP]];
}

/** A strip of a roof along the wind, from its windward edge. */
export interface PlacedStrip {
  readonly fromFt: number;
  readonly toFt: number;
  readonly cp: number;
}

/** Strips of a roof under 10 degrees, or along the wind, that the building is deep enough for. */
export function roofStrips(input: FrameInput, wind: FrameWind, hOverL: number): readonly PlacedStrip[] {
  const h = meanRoofHeightFt(input);
  const deepFt = wind === "across ridge" ? input.widthFt : input.lengthFt;
  return parallelRoofCp(hOverL, input.roofAreaFt2)
    .map(({ fromH, toH, cp }) => ({ fromFt: fromH * h, toFt: toH === undefined ? deepFt : toH * h, cp }))
    .filter(({ fromFt }) => fromFt < deepFt)
    .map((strip) => ({ ...strip, toFt: Math.min(strip.toFt, deepFt) }));
}

/**
 * Net pressures on the main frame by the directional procedure, for wind across and along the ridge, each with both signs of
 * internal pressure. Without the least load, which holds for the building as a whole.
 * @throws OutOfRange for open buildings and slopes above 60 degrees; BadInput for a building that cannot be
 * Source: ASCE/SEI 7-10 Eq. 27.4-1, Fig. 27.4-1; 7-16 and 7-22 Eq. 27.3-1, Fig. 27.3-1.
 */
export function directionalFrame(input: FrameInput, tape?: Tape): readonly FrameRow[] {
  const { enclosure, level, edition } = input;
  checkBuilding(input);
  const figure = frameFigure(edition);
  const gcpi = internalCoefficient(enclosure, edition, tape);
  const q = windLevelFactor(level) * directedPressure(input, tape);
  tape?.step("h", "mean roof height", meanRoofHeightFt(input), "ft", asce(edition, "26.2"));
  tape?.step("G", "gust-effect factor, rigid building", GUST_FACTOR, "", asce(edition, CLAUSE.gustFactor));
  if (input.roof === "monoslope") {
    tape?.assume(
      "Monoslope roof across the ridge: the windward roof is for wind on the low side, the leeward roof for wind on the high side; walls go to the eave.",
    );
  }
  if (input.kzt !== 1 && input.exposure !== undefined) {
    tape?.caution(
      "The topographic factor is that of the mean roof height over the whole windward wall; below it a hill's speed-up is larger.",
    );
  }
  const rows = FRAME_WINDS.flatMap((wind) => {
    const { lOverB, hOverL } = windRatios(input, wind);
    tape?.step("L/B", wind, lOverB, "", figure);
    tape?.step("h/L", wind, hOverL, "", figure);
    return externalPressures(input, wind).map(({ surface, part, cp, share }): FrameRow => {
      const external = q * share * GUST_FACTOR * cp;
      const internal = q * gcpi;
      return {
        wind,
        surface,
        part,
        coefficient: cp,
        withPressurePsf: external - internal,
        withSuctionPsf: external + internal,
      };
    });
  });
  tape?.show(framePicture(input, rows));
  const equation = asce(edition, CLAUSE.frameEquation);
  tape?.step(
    "p",
    `${directedSymbol(edition, "")}(qz G Cp - qh GCpi)${windLevelText(level)}: wind, surface, part, Cp, net psf with internal pressure, with internal suction`,
    frameTable(rows),
    "psf",
    equation,
  );
  return rows;
}

export function frameTable(rows: readonly FrameRow[]): Table {
  return rows.map((r) => [r.wind, r.surface, r.part, r.coefficient, r.withPressurePsf, r.withSuctionPsf]);
}
