import { asce } from "../../kit/edition.ts";
import { type LoadLevel, RESISTING_DEAD, windLevelFactor } from "../../kit/load-level.ts";
import type { Table, Tape } from "../../kit/tape.ts";
import { directedPressure } from "../directionality.ts";
import type { RoofUpliftPicture } from "../pictures.ts";
import { CLAUSE } from "../tables/clauses.ts";
import { GUST_FACTOR, WINDWARD_WALL_CP } from "../tables/frame-cp.ts";
import type { FrameInput } from "./frame.ts";
import { directionalFrame } from "./frame-directional.ts";

export interface UpliftInput extends FrameInput {
  /** weight of roof and ceiling that is always there, on the level, psf */
  readonly deadPsf: number;
  /** width of roof that each wall line carries, overhang with it, ft on the level */
  readonly tributariesFt: readonly number[];
  /** overhang beyond the wall line, ft on the level */
  readonly overhangFt: number;
}

export interface Uplift {
  readonly tributaryFt: number;
  readonly windPlf: number;
  readonly deadPlf: number;
  /** not below 0 */
  readonly netPlf: number;
  readonly level: LoadLevel;
}

/**
 * Net uplift of the roof at each wall line: the largest roof suction of either wind direction with internal pressure over the tributary width,
 * and the pressure under a windward overhang, less the dead load that may be counted.
 * @throws as directionalFrame
 * Source: ASCE/SEI 7-10 sections 27.4.1, 27.4.4; 7-16 and 7-22 sections 27.3.1, 27.3.3; dead load 2.3, 2.4.
 */
export function roofUplift(input: UpliftInput, tape?: Tape): readonly Uplift[] {
  const { deadPsf, tributariesFt, overhangFt, level, edition } = input;
  const rows = directionalFrame(input, tape).filter((r) => !r.surface.includes("wall"));
  const suctionPsf = Math.max(0, ...rows.map((r) => -r.withPressurePsf));
  const underPsf = windLevelFactor(level) * directedPressure(input) * GUST_FACTOR * WINDWARD_WALL_CP;
  const share = RESISTING_DEAD[level];
  const clause = asce(edition, CLAUSE.frameSection);
  tape?.step("p up", "largest net roof suction, over the whole tributary width", suctionPsf, "psf", clause);
  if (overhangFt > 0) {
    tape?.step("p under", "q G 0.8 under the windward overhang", underPsf, "psf", asce(edition, CLAUSE.frameOverhang));
  }
  tape?.step(
    "D share",
    `of the dead load, ${level} level`,
    share,
    "",
    asce(edition, level === "strength" ? "2.3" : "2.4"),
  );
  const lines = tributariesFt.map((tributaryFt): Uplift => {
    const windPlf = suctionPsf * tributaryFt + underPsf * Math.min(overhangFt, tributaryFt);
    const deadPlf = share * deadPsf * tributaryFt;
    return { tributaryFt, windPlf, deadPlf, netPlf: Math.max(0, windPlf - deadPlf), level };
  });
  if (lines.some((l) => l.netPlf === 0))
    tape?.caution("Where the net uplift is 0 the dead load counted holds the roof down by itself.");
  tape?.show(picture(lines, level));
  tape?.step("uplift", "tributary ft, wind plf, dead plf, net plf, level", upliftTable(lines), "plf", clause);
  return lines;
}

function picture(lines: readonly Uplift[], level: LoadLevel): RoofUpliftPicture {
  const most = Math.max(...lines.map((l) => l.netPlf));
  return {
    kind: "roof-uplift",
    alt: `Wind against the dead load counted at ${lines.length} ${lines.length === 1 ? "wall line" : "wall lines"}; the largest net uplift is ${most.toFixed(0)} plf.`,
    level,
    lines,
  };
}

function upliftTable(lines: readonly Uplift[]): Table {
  return lines.map((l) => [l.tributaryFt, l.windPlf, l.deadPlf, l.netPlf, l.level]);
}
