import type { MaterialLook } from "../../../core/enclosure/moisture/pictures.ts";
import { boxCorners, hatch } from "./hatch.ts";
import { at } from "./scale.ts";

/** Height of a wave of insulation, and the distance between two dots of gypsum. */
const WAVE = 14;
const DOTS = 9;

/** What fills a layer: the hatching stands for its material, as on a drawing for a builder. */
export function materialFill(look: MaterialLook, x: number, y: number, width: number, height: number): string {
  const corners = boxCorners(x, y, width, height);
  if (look === "wood") return hatch(corners, 8, "/");
  if (look === "masonry") return hatch(corners, 6, "\\");
  if (look === "metal") return hatch(corners, 3, "/");
  if (look === "insulation") return waves(x, y, width, height);
  return look === "gypsum" ? dots(x, y, width, height) : "";
}

/** Insulation: a line that runs from face to face and back, down the layer. */
function waves(x: number, y: number, width: number, height: number): string {
  const count = Math.max(1, Math.round(height / WAVE));
  const step = height / count;
  const inner = Math.min(2, width / 4);
  let path = `M${at(x + inner)} ${at(y)}`;
  for (let k = 1; k <= 2 * count; k++) {
    path += `L${at(k % 2 === 1 ? x + width - inner : x + inner)} ${at(y + (k * step) / 2)}`;
  }
  return path;
}

/** Gypsum: short strokes in staggered rows, seen as dots. */
function dots(x: number, y: number, width: number, height: number): string {
  let path = "";
  for (let row = 0; (row + 0.5) * DOTS < height; row++) {
    for (let px = row % 2 === 0 ? DOTS / 3 : (2 * DOTS) / 3; px < width - 1; px += DOTS) {
      path += `M${at(x + px)} ${at(y + (row + 0.5) * DOTS)}h1`;
    }
  }
  return path;
}
