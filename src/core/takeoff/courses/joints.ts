import { ofFt, type Stretch, stretchPieces } from "./layout.ts";
import type { CoursedWall, CourseRules } from "./types.ts";

/** Choosing joints on the columns of one stretch. */

/** True when every piece fits in a panel. */
export function fitsPanels(wall: CoursedWall, s: Stretch, joints: readonly number[], rules: CourseRules): boolean {
  const panel = ofFt(rules.panelLengthFt);
  return stretchPieces(wall, s, joints, rules).every((p) => p.length <= panel && p.length > 0);
}

/** As few joints as the panels allow, each as far along as they reach. */
export function fewestJoints(wall: CoursedWall, s: Stretch, rules: CourseRules): readonly number[] {
  return jointsFrom(wall, s, rules, 1, new Set());
}

/**
 * Joints from left to right, each as far as a panel reaches, off the columns of `avoid` where another choice is.
 * @param firstShare how much of a panel the first piece may take, above 0 to 1; less than 1 shifts the joints of the course
 */
export function jointsFrom(
  wall: CoursedWall,
  s: Stretch,
  rules: CourseRules,
  firstShare: number,
  avoid: ReadonlySet<number>,
): readonly number[] {
  const panel = ofFt(rules.panelLengthFt);
  const joints: number[] = [];
  for (;;) {
    const rest = stretchPieces(wall, s, joints, rules).at(-1)?.length ?? 0;
    const shifted = joints.length === 0 && firstShare < 1;
    if (rest <= panel && !shifted) return joints;
    const at = joints.at(-1) ?? s.from;
    const reachable = s.places.filter((x) => {
      const piece = stretchPieces(wall, s, [...joints, x], rules).at(-2)?.length ?? 0;
      return x > at && piece <= panel * (shifted ? firstShare : 1);
    });
    const next = reachable.filter((x) => !avoid.has(x)).at(-1) ?? reachable.at(-1);
    if (next === undefined) {
      if (shifted) return jointsFrom(wall, s, rules, 1, avoid);
      return s.places;
    }
    joints.push(next);
  }
}
