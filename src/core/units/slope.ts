import { BadInput, OutOfRange } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

const DEGREES = 180 / Math.PI;

export type SlopeForm = "degrees" | "ratio" | "rake";

/**
 * Reads a roof slope: `6:12`, `6/12`, `6 in 12`, `26.57 deg`, `50%`, or a bare number of degrees.
 * @returns degrees from level, 0 to below 90
 * @throws BadInput for text that is no slope, OutOfRange outside 0 to below 90 degrees
 */
export function parseSlope(text: string): number {
  const tidied = text.trim().toLowerCase().replaceAll("°", " deg");
  const ratio = /^(\d+(?:\.\d+)?)\s*(?::|\/|in)\s*(\d+(?:\.\d+)?)$/.exec(tidied);
  if (ratio !== null) return slopeDegrees(Math.atan2(Number(ratio[1]), Number(ratio[2])) * DEGREES, text);
  const single = /^(-?\d+(?:\.\d+)?)\s*(deg|degrees?|%)?$/.exec(tidied);
  if (single === null) {
    throw new BadInput(
      `"${text}" is not a slope`,
      "a slope is rise over run, a percentage or degrees",
      "Write it like 6:12, 50% or 26.57 deg",
    );
  }
  const value = Number(single[1]);
  return slopeDegrees(single[2] === "%" ? Math.atan(value / 100) * DEGREES : value, text);
}

/** Refuses a slope that is no roof: below level or vertical. */
export function slopeDegrees(degrees: number, shown: string): number {
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
  if (form === "degrees") {
    tape?.step("theta", "angle from level", degrees, "deg", "trigonometry");
    return degrees;
  }
  const value = form === "ratio" ? Math.tan(angle) : 1 / Math.cos(angle);
  tape?.step("theta", "angle from level", degrees, "deg", "trigonometry");
  if (form === "ratio") tape?.step("rise/run", "tan theta", value, "", "trigonometry");
  else tape?.step("rake factor", "1 / cos theta", value, "", "trigonometry");
  return value;
}
