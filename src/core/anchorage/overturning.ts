import { ADDING_DEAD, atDesignLevel, type Designed, RESISTING_DEAD } from "../kit/load-level.ts";
import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { OverturningPicture } from "./pictures.ts";

/** A wall under a shear at its top. */
export interface LoadedWall {
  readonly shearLb: number;
  readonly heightFt: number;
  /** from the hold-down's line to the center of compression */
  readonly armFt: number;
  /** dead load on the wall and of the wall */
  readonly deadPlf: number;
  /** length that the dead load stands on */
  readonly lengthFt: number;
  /** dead load that comes down at the hold-down */
  readonly postLb: number;
}

export interface Overturning {
  readonly overturningFtLb: number;
  readonly resistingFtLb: number;
  readonly tensionLb: number;
  readonly compressionLb: number;
}

export interface DeadFactors {
  readonly resisting: number;
  readonly adding: number;
}

const CLAUSE = "statics; AWC ASD/LRFD Manual M14.3, SDPWS 4.3.6.4.2";

/** Shares of the dead load: the given one where it resists, else that of the design method. */
export function deadFactors(design: Designed, given: number | undefined, tape?: Tape): DeadFactors {
  const resisting = given ?? RESISTING_DEAD[design.method];
  const adding = ADDING_DEAD[design.method];
  tape?.step(
    "f",
    given === undefined ? `dead load that resists, ${design.method} method` : "dead load that resists, as given",
    resisting,
    "",
    "ASCE/SEI 7 sections 2.3, 2.4",
  );
  tape?.step(
    "f_c",
    `dead load that adds to the compression, ${design.method} method`,
    adding,
    "",
    "ASCE/SEI 7 sections 2.3, 2.4",
  );
  return { resisting, adding };
}

/** Moments about the center of compression, and the pair of forces without regard to their sign. */
export interface Couple {
  readonly overturningFtLb: number;
  readonly resistingFtLb: number;
  /** below 0 where the dead load holds the wall down by itself */
  readonly tensionLb: number;
  readonly compressionLb: number;
}

/**
 * The pair of forces of one wall, its shear at the level of the design.
 * Source: statics; AWC ASD/LRFD Manual M14.3: T = V h / arm less the dead load's share.
 */
export function couple(wall: LoadedWall, dead: DeadFactors, tape?: Tape): Couple {
  const { shearLb, heightFt, armFt, deadPlf, lengthFt, postLb } = wall;
  const overturningFtLb = shearLb * heightFt;
  const spreadFtLb = (deadPlf * lengthFt * lengthFt) / 2;
  const resistingFtLb = dead.resisting * (spreadFtLb + postLb * armFt);
  const tensionLb = (overturningFtLb - resistingFtLb) / armFt;
  const compressionLb = (overturningFtLb + dead.adding * spreadFtLb) / armFt + dead.adding * postLb;
  tape?.step("M_o", `V h = ${plain(shearLb)} x ${plain(heightFt)}`, overturningFtLb, "ft lb", CLAUSE);
  tape?.step(
    "M_r",
    `f (w L^2 / 2 + P arm), w ${plain(deadPlf)} plf, L ${plain(lengthFt)} ft, P ${plain(postLb)} lb`,
    resistingFtLb,
    "ft lb",
    CLAUSE,
  );
  tape?.step("T", `(M_o - M_r) / ${plain(armFt)} ft`, tensionLb, "lb", CLAUSE);
  tape?.step("C", "(M_o + f_c w L^2 / 2) / arm + f_c P", compressionLb, "lb", CLAUSE);
  return { overturningFtLb, resistingFtLb, tensionLb, compressionLb };
}

/** Cautions that every overturning figure carries. */
export function overturningCautions(tape: Tape | undefined): void {
  tape?.caution(
    "Live and snow load do not stand in the compression; the end post and what bears under it are checked apart.",
  );
  tape?.caution("Wind uplift of the roof is not in the tension: take it off the dead load or add it.");
}

/**
 * Tension and compression at the ends of one wall; a tension below 0 is none.
 * @throws BadInput for a shear of unknown level
 * Source: statics; AWC ASD/LRFD Manual M14.3.
 */
export function overturning(
  wall: LoadedWall,
  design: Designed,
  deadFactor: number | undefined,
  tape?: Tape,
): Overturning {
  const shearLb = atDesignLevel("The shear", wall.shearLb, "lb", design, tape);
  const c = couple({ ...wall, shearLb }, deadFactors(design, deadFactor, tape), tape);
  const tensionLb = Math.max(0, c.tensionLb);
  if (c.tensionLb <= 0) tape?.caution("The dead load holds the wall down by itself: no tension is left.");
  if (wall.armFt > wall.lengthFt) {
    tape?.caution(
      `The arm of ${plain(wall.armFt)} ft is longer than the ${plain(wall.lengthFt)} ft that the dead load stands on: are both in feet?`,
    );
  }
  overturningCautions(tape);
  tape?.show(
    overturningPicture("", Math.max(wall.lengthFt, wall.armFt), [{ heightFt: wall.heightFt, shearLb }], {
      armFt: wall.armFt,
      tensionLb,
      compressionLb: c.compressionLb,
    }),
  );
  return { ...c, tensionLb };
}

export function overturningPicture(
  name: string,
  lengthFt: number,
  floors: OverturningPicture["floors"],
  pair: NonNullable<OverturningPicture["couple"]>,
): OverturningPicture {
  const wall = name === "" ? "The wall" : `Wall ${name}`;
  return {
    kind: "overturning",
    alt: `${wall}: tension ${plain(pair.tensionLb)} lb at one end, compression ${plain(pair.compressionLb)} lb at the other, ${plain(pair.armFt)} ft apart.`,
    name,
    lengthFt,
    floors,
    couple: pair,
    anchorsFt: [],
    anchor: "",
  };
}
