import { BadInput, OutOfRange } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { clipped, folded, scanNumber } from "./text.ts";

const DEGREES = 180 / Math.PI;

export type SlopeForm = "degrees" | "ratio" | "rake";

/**
 * Reads a roof slope: `6:12`, `6/12`, `6 in 12`, `26.57 deg`, `50%`. A bare number is none: 8 may be 8:12 or 8 degrees.
 * @returns degrees from level, 0 to below 90
 * @throws BadInput for text that is no slope, OutOfRange outside 0 to below 90 degrees
 */
export function parseSlope(text: string): number {
  const tidied = folded(text).toLowerCase().replaceAll("°", " deg");
  const ratio = /^(\d+(?:\.\d*)?|\.\d+) ?(?::|\/|in |on ) ?(\d+(?:\.\d*)?)$/.exec(tidied);
  if (ratio !== null) return ofRatio(Number(ratio[1]), Number(ratio[2]), text);
  const number = scanNumber(tidied.replace(/^[-+]/, ""));
  const unit = number?.rest.trim() ?? "?";
  const value = tidied.startsWith("-") ? -(number?.value ?? 0) : (number?.value ?? 0);
  if (unit === "") throw bareSlope(tidied);
  if (unit === "%") return slopeDegrees(Math.atan(value / 100) * DEGREES, clipped(text));
  if (["deg", "degree", "degrees"].includes(unit)) return slopeDegrees(value, clipped(text));
  throw new BadInput(
    `"${clipped(text)}" is not a slope`,
    "a slope is rise over run, a percentage or degrees",
    "Write it like 6:12, 50% or 26.57 deg",
  );
}

function ofRatio(rise: number, run: number, text: string): number {
  if (rise === 0 && run === 0) {
    throw new BadInput(`"${clipped(text)}" is not a slope`, "it has neither rise nor run", "Write it like 6:12");
  }
  return slopeDegrees(Math.atan2(rise, run) * DEGREES, clipped(text));
}

/** A bare number as a slope: how it must be written, in the three ways that it may be meant. */
function bareSlope(shown: string): BadInput {
  return new BadInput(
    `The slope ${clipped(shown)} has no unit`,
    "a bare number may be a rise on 12, degrees or a percentage",
    `Write "${clipped(shown)}:12", "${clipped(shown)} deg" or "${clipped(shown)}%"`,
  );
}

/** Refuses a slope that is no roof: below level or vertical. */
function slopeDegrees(degrees: number, shown: string): number {
  if (degrees >= 0 && degrees < 90) return degrees;
  throw new OutOfRange(
    `The slope ${shown} is ${Number(degrees.toFixed(2))} degrees`,
    "a slope lies from 0 (level) to below 90 degrees",
    "Give the angle from level, or rise:run such as 6:12",
  );
}

/**
 * A slope as degrees, as rise over run, or as the rake factor: length along the slope over its level length, 1/cos.
 * Plane trigonometry.
 * @param degrees 0 to below 90
 */
export function slopeAs(degrees: number, form: SlopeForm, tape?: Tape): number {
  const angle = degrees / DEGREES;
  tape?.step("theta", "angle from level", degrees, "deg", "trigonometry");
  if (form === "degrees") return degrees;
  const value = form === "ratio" ? Math.tan(angle) : 1 / Math.cos(angle);
  if (form === "ratio") tape?.step("rise/run", "tan theta", value, "", "trigonometry");
  else tape?.step("rake factor", "1 / cos theta", value, "", "trigonometry");
  return value;
}
