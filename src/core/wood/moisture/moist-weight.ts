import { plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";

const CLAUSE = "NDS Supplement 3.1.3: density = 62.4 [G / (1 + G 0.009 m.c.)] [1 + m.c./100]";
/** Weight of water, pcf. */
const WATER_PCF = 62.4;
/** Swelling of wood with its moisture, in the formula of the source. */
const SWELLING = 0.009;

/**
 * Weight of wood at a moisture content.
 * @param gravity specific gravity on ovendry mass and volume, 0.1 to 1.2
 * @param moisturePct percent of the ovendry mass, 0 to 30, up to which wood swells
 * @returns pcf
 * @throws OutOfRange outside those limits
 * Source: NDS Supplement 2018, 3.1.3.
 */
export function woodWeightPcf(gravity: number, moisturePct: number, tape?: Tape): number {
  within("The specific gravity", gravity, 0.1, 1.2, "", CLAUSE);
  within("The moisture content", moisturePct, 0, 30, "%", "fiber saturation, above which wood swells no more");
  const swollen = gravity / (1 + SWELLING * gravity * moisturePct);
  const pcf = WATER_PCF * swollen * (1 + moisturePct / 100);
  tape?.step("G_m", `${plain(gravity)} / (1 + 0.009 x ${plain(gravity)} x ${plain(moisturePct)})`, swollen, "", CLAUSE);
  tape?.step("w", `62.4 G_m (1 + ${plain(moisturePct)}/100)`, pcf, "pcf", CLAUSE);
  return pcf;
}
