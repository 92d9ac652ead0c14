import type { SVGTemplateResult } from "lit-html";
import type { PictureBase } from "../../core/kit/picture.ts";
import { bid } from "./bid.ts";
import { contingency } from "./contingency.ts";
import { cuttingLayout } from "./cutting-layout.ts";
import { cuttingLengths } from "./cutting-lengths.ts";
import { wallElevation } from "./elevation/wall-elevation.ts";
import { loadPlan } from "./load-plan.ts";
import { loadCombinations } from "./loads/load-combinations.ts";
import { overturningWall } from "./loads/overturning.ts";
import { roofSnow } from "./loads/roof-snow.ts";
import { roofUplift } from "./loads/roof-uplift.ts";
import { windForces } from "./loads/wind-forces.ts";
import { windFrame } from "./loads/wind-frame.ts";
import { windZones } from "./loads/wind-zones.ts";
import { panelBays } from "./panel-bays.ts";
import { sling } from "./sling.ts";
import { wallSection } from "./wall-section.ts";
import { wettingYear } from "./wetting-year.ts";
import { woodMember } from "./wood-member.ts";
import { yieldMode } from "./yield-mode.ts";

/**
 * Draws one kind of picture: SVG with presentation attributes and classes, since the page allows no style attributes.
 * @param width of the place it is for, in pixels; the drawing scales to other widths
 */
export type Draw = (picture: never, width: number) => SVGTemplateResult;

/** By `picture.kind`. */
const DRAWINGS: Readonly<Record<string, Draw>> = {
  "wall-section": wallSection,
  "wetting-year": wettingYear,
  "wind-zones": windZones,
  "load-combinations": loadCombinations,
  "roof-snow": roofSnow,
  "roof-uplift": roofUplift,
  "wind-forces": windForces,
  "wind-frame": windFrame,
  "wall-elevation": wallElevation,
  "cutting-layout": cuttingLayout,
  "cutting-lengths": cuttingLengths,
  sling,
  "load-plan": loadPlan,
  contingency,
  bid,
  "wood-member": woodMember,
  "panel-bays": panelBays,
  "yield-mode": yieldMode,
  overturning: overturningWall,
};

/** Narrowest place that drawings are laid out for; in a narrower one they shrink. */
export const NARROWEST = 280;

/** Whether there is a drawing of a picture's kind. */
export function isDrawn(picture: PictureBase): boolean {
  return Object.hasOwn(DRAWINGS, picture.kind);
}

/** The drawing of a picture, or undefined when its kind has none; the words in `picture.alt` are shown in any case. */
export function drawing(picture: PictureBase, width: number = NARROWEST): SVGTemplateResult | undefined {
  // A kind names the type of its data, so the picture is what its drawing takes.
  const draw = isDrawn(picture) ? DRAWINGS[picture.kind] : undefined;
  return draw?.(picture as never, Math.max(width, NARROWEST));
}
