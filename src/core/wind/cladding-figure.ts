import { asce, type Edition } from "../kit/edition.ts";
import { BadInput, OutOfRange, plain } from "../kit/refusal.ts";
import type { AreaCurve } from "./area-curve.ts";
import { FLAT_7_10, FLAT_7_16, FLAT_OVERHANG_7_10 } from "./tables/cladding-flat.ts";
import {
  GABLE_7_TO_27_7_10,
  GABLE_27_TO_45_7_10,
  GABLE_OVERHANG_7_TO_27_7_10,
  GABLE_OVERHANG_27_TO_45_7_10,
} from "./tables/cladding-gable.ts";
import { MONOSLOPE_3_TO_10, MONOSLOPE_10_TO_30 } from "./tables/cladding-monoslope.ts";
import { WALLS } from "./tables/cladding-walls.ts";
import { CLAUSE } from "./tables/clauses.ts";

export const SURFACES = [
  "wall",
  "flat",
  "gable",
  "hip",
  "monoslope",
  "flat overhang",
  "gable overhang",
  "hip overhang",
] as const;
export type Surface = (typeof SURFACES)[number];

export interface CladdingZone {
  /** GCp of pressure toward the surface; missing on overhangs */
  readonly toward?: AreaCurve;
  /** GCp of pressure away from the surface */
  readonly away: AreaCurve;
}

/** A figure of external pressure coefficients GCp for components and cladding. */
export interface CladdingFigure {
  /** number of the figure without its document: "Fig. 30.3-1" */
  readonly figure: string;
  /**
   * How the coefficients are known: "read" in a print, "checked" from memory but giving printed pressures to their digit,
   * "memory" without any print to hold them against.
   */
  readonly basis: "read" | "checked" | "memory";
  /** zones of a "checked" figure that no printed pressure was found for */
  readonly unchecked?: readonly string[];
  readonly zones: Readonly<Record<string, CladdingZone>>;
}

/** A figure whose coefficients are not held here: the reader gives GCp from it. */
export interface UnreadFigure {
  readonly figure: string;
  readonly zones: undefined;
}

export function isOverhang(surface: Surface): boolean {
  return surface.endsWith("overhang");
}

/** Slope up to which every roof takes the flat-roof figure, degrees. */
const FLAT_UP_TO = 7;

/**
 * The figure of components and cladding for a surface of a building up to 60 ft.
 * @param slopeDeg roof slope, degrees; a flat roof may leave it out
 * @throws BadInput for a sloped roof without slope, OutOfRange where no figure covers the slope
 * Source: ASCE/SEI 7-10 Figs. 30.4-1 to 30.4-5, 7-16 and 7-22 Figs. 30.3-1 to 30.3-5.
 */
export function claddingFigure(
  surface: Surface,
  slopeDeg: number | undefined,
  edition: Edition,
): CladdingFigure | UnreadFigure {
  if (surface === "wall") return { ...WALLS, figure: CLAUSE.walls[edition] };
  const slope = slopeDeg ?? slopeOfFlat(surface);
  if (surface === "flat" || surface === "flat overhang" || slope <= (surface === "monoslope" ? 3 : FLAT_UP_TO)) {
    if (slope > FLAT_UP_TO) throw noFigure(surface, slope, FLAT_UP_TO, edition);
    if (edition === "7-10") return isOverhang(surface) ? FLAT_OVERHANG_7_10 : FLAT_7_10;
    return isOverhang(surface) ? unread("Fig. 30.3-2A") : FLAT_7_16;
  }
  const steepest = surface === "monoslope" ? 30 : 45;
  if (slope > steepest) throw noFigure(surface, slope, steepest, edition);
  if (surface === "monoslope") return monoslope(slope, edition);
  if (edition !== "7-10") return unread(slopedFigure(surface, slope, edition));
  if (isOverhang(surface)) return slope <= 27 ? GABLE_OVERHANG_7_TO_27_7_10 : GABLE_OVERHANG_27_TO_45_7_10;
  return slope <= 27 ? GABLE_7_TO_27_7_10 : GABLE_27_TO_45_7_10;
}

function slopeOfFlat(surface: Surface): number {
  if (surface === "flat" || surface === "flat overhang") return 0;
  throw new BadInput(
    `The slope of the ${surface} is missing`,
    "its coefficients go by slope",
    "Give the slope, such as 6:12 or degrees",
  );
}

function noFigure(surface: Surface, slope: number, steepest: number, edition: Edition): OutOfRange {
  return new OutOfRange(
    `The slope of ${plain(slope)} degrees is too steep for a ${surface.endsWith("overhang") ? surface : `${surface} roof`}`,
    `its figures end at ${steepest} degrees (${asce(edition, CLAUSE.cladding)})`,
    "Choose the roof shape that fits, or leave it to the engineer",
  );
}

function monoslope(slope: number, edition: Edition): CladdingFigure | UnreadFigure {
  const number = `Fig. ${CLAUSE.cladding[edition]}-5${slope <= 10 ? "A" : "B"}`;
  if (edition === "7-22") return unread(number);
  return { ...(slope <= 10 ? MONOSLOPE_3_TO_10 : MONOSLOPE_10_TO_30), figure: number };
}

function slopedFigure(surface: Surface, slope: number, edition: Edition): string {
  if (!surface.startsWith("gable")) return edition === "7-16" ? "Figs. 30.3-2E to 30.3-2I" : "Figs. 30.3-2E to 30.3-2G";
  return `Fig. 30.3-2${slope <= 20 ? "B" : slope <= 27 ? "C" : "D"}`;
}

function unread(figure: string): UnreadFigure {
  return { figure, zones: undefined };
}
