import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { DURATIONS, type DurationWord, SERVICE_SHARE, SERVICE_SOURCE } from "./tables/duration.ts";

/** Allowable stress design, or load and resistance factor design; also the level of forces. */
export const METHODS = ["allowable", "strength"] as const;
export type Method = (typeof METHODS)[number];

/** How a member is used: what the factors depend on beside the member itself. */
export interface Use {
  readonly method: Method;
  /** of the shortest load of the combination: a word, or the factor CD itself */
  readonly duration: DurationWord | number;
  readonly wet: boolean;
  /** edition of the NDS: "2018" */
  readonly edition: string;
}

/** The load duration factor. */
export function durationFactor(use: Use): number {
  return typeof use.duration === "number" ? use.duration : DURATIONS[use.duration].cd;
}

/**
 * The time effect factor of load and resistance factor design.
 * @throws BadInput where only a number CD says the duration
 */
export function timeEffect(use: Use): number {
  if (typeof use.duration === "number") {
    throw new BadInput(
      `Load duration is CD ${plain(use.duration)}`,
      "design at strength level needs the time effect factor lambda, which goes by the load",
      "Say permanent, live, snow, construction, wind, seismic or impact",
    );
  }
  return DURATIONS[use.duration].lambda;
}

/** Whether the shortest load is wind or earthquake, by word or by its CD of 1.6. */
export function isLateral(use: Use): boolean {
  return use.duration === "wind" || use.duration === "seismic" || use.duration === DURATIONS.wind.cd;
}

/**
 * The factor that brings given forces of wind or earthquake to the level of the design method.
 * @param level of the forces as given; undefined where nobody says it
 * @throws BadInput where the level must be said, or cannot be turned
 * Source: ASCE 7 section 2.4.1 (0.6 W, 0.7 E).
 */
export function levelFactor(use: Use, level: Method | undefined, tape?: Tape): number {
  if (level === undefined) return unsaid(use, tape);
  if (level === use.method) return 1;
  const share = typeof use.duration === "number" ? undefined : SERVICE_SHARE[use.duration];
  if (share === undefined) {
    throw new BadInput(
      `The forces are at ${level} level and the design method is ${use.method}`,
      "only forces of wind and earthquake can be turned from one level to the other",
      `Give forces at ${use.method} level, or say wind or seismic as load duration`,
    );
  }
  const factor = use.method === "allowable" ? share : 1 / share;
  const says = use.method === "allowable" ? `${plain(share)} x strength level` : `allowable level / ${plain(share)}`;
  tape?.step("level", `${use.duration} forces to ${use.method} level: ${says}`, factor, "", SERVICE_SOURCE);
  return factor;
}

function unsaid(use: Use, tape?: Tape): number {
  if (isLateral(use)) {
    throw new BadInput(
      "Load level is missing",
      "a force of wind or earthquake may be at strength level or at allowable level, and they differ by 0.6 or 0.7",
      "Give load level: strength or allowable, in the call or the basis",
    );
  }
  if (use.method === "strength") {
    tape?.caution(
      "Loads are taken as factored for strength design (such as 1.2 D + 1.6 L): unfactored loads would be unsafe.",
    );
  }
  return 1;
}
