import type { Duration } from "../../core/kit/load-duration.ts";
import type { Designed, LoadLevel } from "../../core/kit/load-level.ts";
import { ifGiven, orElse } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";

/** Parameters that the functions of anchorage share. */

export const CAUTION = preliminary("anchorage");

export const shearLb = quantity("lb", {
  says: "shear of wind or earthquake",
  min: 1,
  max: 1e6,
  usual: { min: 50, max: 40_000, ask: "is it in pounds?" },
});
const PLF = { min: 5, max: 3000, ask: "is it in plf?" } as const;
/** Shear along a wall or sill. */
export const shearPlf = (says: string, least: number) => quantity("plf", { says, min: least, max: 1e4, usual: PLF });
export const height = length("ft", {
  says: "height from the foot to where the shear comes in",
  min: 2,
  max: 100,
  usual: { min: 4, max: 30, ask: "is it in feet?" },
});
export const arm = length("ft", {
  says: "from the hold-down's line to the center of compression at the other end",
  min: 0.5,
  max: 500,
  usual: { min: 1, max: 60, ask: "is it in feet?" },
});
export const dead = optional(
  quantity("plf", { says: "dead load of the wall and on it", min: 0, max: 20_000, heads: ["dead load", "w"] }),
  0,
  "no dead load counts",
);

/** Terms of forces that go to the level of the design. */
export const levelTerms = {
  designMethod: orElse("design method"),
  loadLevel: ifGiven("load level", "asked for forces of wind or earthquake"),
  loadDuration: ifGiven("load duration", "a force of wind: 0.6 between strength and allowable level"),
} as const;

export function designedOf(a: {
  readonly designMethod: LoadLevel;
  readonly loadLevel: LoadLevel | undefined;
  readonly loadDuration: Duration | undefined;
}): Designed {
  return { method: a.designMethod, level: a.loadLevel, duration: a.loadDuration };
}
