import { asce, type Edition } from "../../kit/edition.ts";
import { BadInput, OutOfRange, plain } from "../../kit/refusal.ts";
import { FLAT_7_22, GABLES_7_22, HIPS_7_22 } from "../tables/cladding-7-22.ts";
import { FLAT_7_10, FLAT_7_16, FLAT_OVERHANG_7_10 } from "../tables/cladding-flat.ts";
import {
  GABLE_7_TO_27_7_10,
  GABLE_27_TO_45_7_10,
  GABLE_OVERHANG_7_TO_27_7_10,
  GABLE_OVERHANG_27_TO_45_7_10,
} from "../tables/cladding-gable.ts";
import { MONOSLOPE_3_TO_10, MONOSLOPE_10_TO_30 } from "../tables/cladding-monoslope.ts";
import { WALLS } from "../tables/cladding-walls.ts";
import type { CladdingFigure, UnreadFigure } from "../tables/cladding-zone.ts";
import { CLAUSE } from "../tables/clauses.ts";

const CLADDING_ROOFS = ["flat", "gable", "hip", "monoslope"] as const;
export type CladdingRoof = (typeof CLADDING_ROOFS)[number];

export const SURFACES = [
  "wall",
  "soffit",
  ...CLADDING_ROOFS,
  "flat overhang",
  "gable overhang",
  "hip overhang",
  "monoslope overhang",
] as const;
export type Surface = (typeof SURFACES)[number];

export function isOverhang(surface: Surface): boolean {
  return surface.endsWith("overhang");
}

/** A soffit takes the pressures of the wall beside it. */
export function isWall(surface: Surface): boolean {
  return surface === "wall" || surface === "soffit";
}

/** From 7-22 on an overhang adds the wall beside it to the roof zone above it; before, figures of their own held both faces. */
export function addsWall(surface: Surface, edition: Edition): boolean {
  return isOverhang(surface) && edition === "7-22";
}

/** A surface in a sentence: "gable roof", "gable overhang", "wall". */
export function partName(surface: Surface): string {
  return isWall(surface) || isOverhang(surface) ? surface : `${surface} roof`;
}

/** Slopes up to which every roof, and a monoslope, takes the flat-roof figure, degrees. */
const FLAT_UP_TO = 7;
const FLAT_MONOSLOPE_UP_TO = 3;

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
  if (isWall(surface)) return { ...WALLS, figure: CLAUSE.walls[edition] };
  const roof = surface.replace(" overhang", "") as CladdingRoof;
  const slope = slopeDeg ?? slopeOfFlat(surface, roof);
  if (roof === "flat" || slope <= (roof === "monoslope" ? FLAT_MONOSLOPE_UP_TO : FLAT_UP_TO)) {
    if (slope > FLAT_UP_TO) throw noFigure(surface, slope, FLAT_UP_TO, edition);
    return flatFigure(isOverhang(surface), edition);
  }
  const steepest = roof === "monoslope" ? 30 : 45;
  if (slope > steepest) throw noFigure(surface, slope, steepest, edition);
  if (roof === "monoslope") return monoslope(slope, isOverhang(surface), edition);
  if (edition === "7-22") return roof === "gable" ? gable7of22(slope) : hip7of22(slope);
  if (edition === "7-16") return unread(figureOf2016(roof, slope));
  if (isOverhang(surface)) return slope <= 27 ? GABLE_OVERHANG_7_TO_27_7_10 : GABLE_OVERHANG_27_TO_45_7_10;
  return slope <= 27 ? GABLE_7_TO_27_7_10 : GABLE_27_TO_45_7_10;
}

function slopeOfFlat(surface: Surface, roof: CladdingRoof): number {
  if (roof === "flat") return 0;
  throw new BadInput(
    `The slope of the ${surface} is missing`,
    "its coefficients go by slope",
    "Give the slope, such as 6:12 or 26.6 deg",
  );
}

function noFigure(surface: Surface, slope: number, steepest: number, edition: Edition): OutOfRange {
  return new OutOfRange(
    `The slope of ${plain(slope)} degrees is too steep for a ${partName(surface)}`,
    `its figures end at ${steepest} degrees (${asce(edition, CLAUSE.cladding)})`,
    "Choose the roof shape that fits, or leave it to the engineer",
  );
}

function flatFigure(overhang: boolean, edition: Edition): CladdingFigure | UnreadFigure {
  if (edition === "7-22") return FLAT_7_22;
  if (edition === "7-10") return overhang ? FLAT_OVERHANG_7_10 : FLAT_7_10;
  return overhang ? unread(CLAUSE.flatRoofs[edition]) : FLAT_7_16;
}

function monoslope(slope: number, overhang: boolean, edition: Edition): CladdingFigure | UnreadFigure {
  const figure = `Fig. ${CLAUSE.cladding[edition]}-5${slope <= 10 ? "A" : "B"}`;
  if (overhang || edition === "7-22") return unread(figure);
  return { ...(slope <= 10 ? MONOSLOPE_3_TO_10 : MONOSLOPE_10_TO_30), figure };
}

function gable7of22(slope: number): CladdingFigure {
  return slope <= 20 ? GABLES_7_22.to20 : slope <= 27 ? GABLES_7_22.to27 : GABLES_7_22.to45;
}

function hip7of22(slope: number): CladdingFigure {
  if (slope <= 20) return HIPS_7_22.to20;
  if (slope <= 27) return HIPS_7_22.to27;
  if (slope === 45) return HIPS_7_22.at45;
  return {
    ...HIPS_7_22.to27,
    figure: "Figs. 30.3-2F and 30.3-2G",
    orWorse: {
      zones: HIPS_7_22.at45.zones,
      why: "hip roofs between 27 and 45 degrees: how to read between the two figures was not seen, the worse of both is taken",
    },
  };
}

function figureOf2016(roof: CladdingRoof, slope: number): string {
  if (roof === "hip") return "Figs. 30.3-2E to 30.3-2I";
  return `Fig. 30.3-2${slope <= 20 ? "B" : slope <= 27 ? "C" : "D"}`;
}

function unread(figure: string): UnreadFigure {
  return { figure, zones: undefined };
}
