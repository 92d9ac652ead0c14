import { DEFAULT_EDITION } from "../kit/edition.ts";
import { between } from "../kit/interpolate.ts";
import { cautionRecalled } from "../kit/known.ts";
import { BadInput, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { KD_BUILDINGS } from "../wind/directionality.ts";
import { exposureCoefficient } from "../wind/exposure-coefficient.ts";
import type { Exposure } from "../wind/tables/terrain.ts";
import { FREESTANDING_WALL, GUST_FACTOR, WIND_HEIGHT_SHARE, WIND_PRESSURE } from "./tables/rules.ts";

export interface BracedWall {
  readonly lengthFt: number;
  readonly heightFt: number;
  /** braces along the wall, each taking the same */
  readonly braces: number;
  /** height at which the braces hold the wall */
  readonly attachFt: number;
  /** of the braces from the level */
  readonly angleDeg: number;
}

export interface BraceForces {
  /** wind on the whole wall */
  readonly windLb: number;
  /** along one brace */
  readonly eachBraceLb: number;
  /** level force at the whole foot of the wall; below 0 it points against the wind */
  readonly footLb: number;
  /** upward part at the anchor of one brace, or at the wall where it meets one when the wind turns */
  readonly upliftLb: number;
}

/**
 * Wind on a wall that stands free on braces before floors and roof hold it: the force on each brace, at the foot and upward.
 * @param speedMph erection wind, 3-second gust at 33 ft in open terrain
 * @throws BadInput for braces above the wall; OutOfRange for a brace steeper than 75 or flatter than 15 degrees
 * Source: ASCE/SEI 7 29.3 (solid freestanding wall, case A; Figure 29.3-1 from memory); moments about the foot.
 */
export function liftBrace(wall: BracedWall, speedMph: number, exposure: Exposure, tape?: Tape): BraceForces {
  const { lengthFt, heightFt, braces, attachFt, angleDeg } = wall;
  if (attachFt > heightFt) {
    throw new BadInput(
      `The braces are attached ${plain(attachFt)} ft up`,
      `the wall is ${plain(heightFt)} ft high`,
      "Give the height of the attachment above the wall's foot, in feet",
    );
  }
  within(
    "The angle of the braces from the level",
    angleDeg,
    15,
    75,
    "deg",
    "flatter or steeper ones do not work as braces",
  );
  const windLb = erectionWindPsf(lengthFt, heightFt, speedMph, exposure, tape) * lengthFt * heightFt;
  tape?.step("F", `p x ${plain(lengthFt)} x ${plain(heightFt)} ft`, windLb, "lb", "gross face");
  const armFt = WIND_HEIGHT_SHARE.value * heightFt;
  tape?.step("y", `${WIND_HEIGHT_SHARE.value} h`, armFt, "ft", WIND_HEIGHT_SHARE.source);
  const levelLb = (windLb * armFt) / attachFt;
  tape?.step("B", "F y / attachment, level part of all braces", levelLb, "lb", "moments about the foot");
  const angle = (angleDeg * Math.PI) / 180;
  const eachBraceLb = levelLb / braces / Math.cos(angle);
  tape?.step("N", `B / (${braces} cos ${plain(angleDeg)} deg)`, eachBraceLb, "lb", "statics");
  const footLb = windLb - levelLb;
  tape?.step("V", "F - B, at the whole foot", footLb, "lb", "statics");
  const upliftLb = (levelLb / braces) * Math.tan(angle);
  tape?.step("U", `B / ${braces} x tan(${plain(angleDeg)} deg), at each brace`, upliftLb, "lb", "statics");
  return { windLb, eachBraceLb, footLb, upliftLb };
}

function erectionWindPsf(
  lengthFt: number,
  heightFt: number,
  speedMph: number,
  exposure: Exposure,
  tape: Tape | undefined,
): number {
  const kz = exposureCoefficient(heightFt, exposure, "frame", DEFAULT_EDITION, tape);
  const q = WIND_PRESSURE.psfPerMph2 * kz * KD_BUILDINGS * speedMph ** 2;
  tape?.step(
    "q",
    `${WIND_PRESSURE.psfPerMph2} Kz Kd V^2, Kd = ${KD_BUILDINGS}, V = ${plain(speedMph)} mph`,
    q,
    "psf",
    "ASCE/SEI 7 Eq. 26.10-1, flat ground, sea level",
  );
  const cf = freestandingCoefficient(lengthFt / heightFt);
  tape?.step(
    "Cf",
    `free-standing wall, length / height ${plain(lengthFt / heightFt)}`,
    cf,
    "",
    FREESTANDING_WALL.source,
  );
  const p = q * GUST_FACTOR.value * cf;
  tape?.step("p", `q G Cf, G = ${GUST_FACTOR.value}`, p, "psf", "ASCE/SEI 7 Eq. 29.3-1");
  cautionRecalled(tape, "The coefficient of a free-standing wall", "ASCE/SEI 7 Figure 29.3-1");
  if (lengthFt >= 2 * heightFt) {
    tape?.caution(
      "The braces nearest the windward end carry more than the mean (ASCE/SEI 7 Figure 29.3-1 case C): set them closer there.",
    );
  }
  return p;
}

/** Net force coefficient by length over height, straight lines between the rows of the table. */
export function freestandingCoefficient(ratio: number): number {
  return between(
    FREESTANDING_WALL.rows.map((row) => [row.ratio, row.coefficient]),
    ratio,
  );
}
