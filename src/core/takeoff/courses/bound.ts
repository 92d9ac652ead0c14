import { fewestJoints } from "./joints.ts";
import { ofFt, PER_IN, type Size, type Stretch, stretchPieces } from "./layout.ts";
import type { CoursedWall, CourseRules } from "./types.ts";

/**
 * Panels that no choice of joints can go below: the run of full-height pieces with a saw cut each over the length of a panel, and the area of all
 * pieces; what is on hand is taken off.
 */
export function coursesBound(
  walls: readonly CoursedWall[],
  parts: readonly Stretch[],
  stock: readonly Size[],
  rules: CourseRules,
): number {
  const kerf = rules.kerfIn * PER_IN;
  const panel = { length: ofFt(rules.panelLengthFt), height: ofFt(rules.panelWidthFt) };
  let run = 0;
  let area = 0;
  for (const s of parts) {
    const wall = walls[s.wall] as CoursedWall;
    // A joint adds a saw cut and takes a gap off: the fewest or the most of them make the least.
    const cases = [fewestJoints(wall, s, rules), s.places].map((joints) => stretchPieces(wall, s, joints, rules));
    const full = (p: Size) => p.height === panel.height;
    run += Math.min(...cases.map((ps) => ps.filter(full).reduce((sum, p) => sum + p.length + kerf, 0)));
    area += Math.min(...cases.map((ps) => ps.reduce((sum, p) => sum + p.length * p.height, 0)));
  }
  for (const o of stock) {
    if (o.height >= panel.height) run -= o.length + kerf;
    area -= o.length * o.height;
  }
  const panels = Math.max(run / (panel.length + kerf), area / (panel.length * panel.height));
  return Math.max(0, Math.ceil(panels - 1e-9));
}
