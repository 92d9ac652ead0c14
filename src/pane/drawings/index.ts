import type { SVGTemplateResult } from "lit-html";
import type { Picture } from "../../core/picture.ts";

/** Draws one kind of picture: SVG with presentation attributes and classes, since the page allows no style attributes. */
export type Draw = (picture: never) => SVGTemplateResult;

/** By `picture.kind`. */
const DRAWINGS: Readonly<Record<string, Draw>> = {};

/** The drawing of a picture, or undefined when its kind has none; the words in `picture.alt` are shown in any case. */
export function drawing(picture: Picture): SVGTemplateResult | undefined {
  // A kind names the type of its data, so the picture is what its drawing takes.
  return Object.hasOwn(DRAWINGS, picture.kind) ? DRAWINGS[picture.kind]?.(picture as never) : undefined;
}
