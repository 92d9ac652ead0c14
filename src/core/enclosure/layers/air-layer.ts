import { within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import type { HeatFlow } from "../tables/films.ts";

const CLAUSE = "ISO 6946:2017 Annex D (2007: Annex B)";
/** Radiative coefficient of a black body at a mean temperature of 10 C, W/(m2 K). */
const H_R0_AT_10C = 5.1;
/** Thickest air layer that Annex D covers, m. */
const THICKEST_M = 0.3;

/** The directions of the standard; a roof slope takes the one that gives the smaller R. */
const ISO_DIRECTION: Readonly<Record<HeatFlow, "up" | "horizontal" | "down">> = {
  up: "up",
  "45 up": "up",
  horizontal: "horizontal",
  "45 down": "horizontal",
  down: "down",
};

/**
 * Thermal resistance of an unventilated air layer: R = 1 / (h_a + E h_r0).
 * @param thicknessM 0.001 to 0.3 m
 * @param emittances of the two faces, above 0 to 1
 * @returns m2 K/W
 * @throws OutOfRange outside those limits
 * Source: ISO 6946:2017 Annex D, at a mean temperature of 10 C and 5 K or less across the layer.
 */
export function airLayerRM2KW(
  thicknessM: number,
  flow: HeatFlow,
  emittances: readonly [number, number],
  tape?: Tape,
): number {
  within("The thickness of the air layer", thicknessM, 0.001, THICKEST_M, "m", CLAUSE);
  for (const e of emittances) within("The emittance of a face of the air layer", e, 0.01, 1, "", CLAUSE);
  const conduction = 0.025 / thicknessM;
  const direction = ISO_DIRECTION[flow];
  const convection = { up: 1.95, horizontal: 1.25, down: 0.12 * thicknessM ** -0.44 }[direction];
  const ha = Math.max(convection, conduction);
  const [e1, e2] = emittances;
  const E = 1 / (1 / e1 + 1 / e2 - 1);
  const rM2KW = 1 / (ha + E * H_R0_AT_10C);
  tape?.step("h_a", `larger of convection and 0.025/d, heat flow ${direction}`, ha, "W/(m2 K)", CLAUSE);
  tape?.step("E", `1 / (1/${e1} + 1/${e2} - 1)`, E, "", CLAUSE);
  tape?.step("R", `1 / (h_a + ${H_R0_AT_10C} E)`, rM2KW, "m2 K/W", CLAUSE);
  return rM2KW;
}
