import { preliminary } from "../declare/cell-function.ts";

/** What every lift carries. */
export const LIFT_CAUTIONS = [
  preliminary("lifting"),
  "A qualified rigger, the lift director, the makers' charts and local rules decide about a lift.",
] as const;

export const NAVY = "US Navy rigging manuals NAVEDTRA 14080 (p 3-24) and 14081 (pp 13-19 to 13-28), public";
