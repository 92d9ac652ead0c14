import type { Duration } from "./load-duration.ts";
import { BadInput, plain } from "./refusal.ts";
import type { Tape } from "./tape.ts";

/** Strength level goes with load factor 1.0 on wind and seismic loads, allowable (stress design) level with 0.6 W and 0.7 E. */
export const LOAD_LEVELS = ["strength", "allowable"] as const;
export type LoadLevel = (typeof LOAD_LEVELS)[number];

/** What the allowable level takes of a load at strength level. ASCE/SEI 7-10, 7-16, 7-22 section 2.4. */
export const ALLOWABLE_WIND = 0.6;
export const ALLOWABLE_SEISMIC = 0.7;

/** Factor on a wind load at strength level. */
export function windLevelFactor(level: LoadLevel): number {
  return level === "allowable" ? ALLOWABLE_WIND : 1;
}

/** The factor in an expression: ", times 0.6 for the allowable level", nothing at strength level. */
export function windLevelText(level: LoadLevel): string {
  return level === "allowable" ? `, times ${ALLOWABLE_WIND} for the allowable level` : "";
}

/** What stands between a force as given and the same force at the level of the design. */
export interface Designed {
  /** level of the design: allowable stress or strength */
  readonly method: LoadLevel;
  /** level of the force as given; undefined where nobody said */
  readonly level: LoadLevel | undefined;
  /** the shortest load of the combination; undefined is taken as wind */
  readonly duration: Duration | undefined;
}

/** CD of wind and of earthquake: a bare factor as high does not say which of the two. */
const SHORT = 1.6;

function levelFactor(duration: Duration | undefined): number | undefined {
  if (duration === "seismic") return ALLOWABLE_SEISMIC;
  return duration === undefined || duration === "wind" ? ALLOWABLE_WIND : undefined;
}

/**
 * A force at the level of the design: a wind or seismic force at strength level times 0.6 or 0.7 for allowable stress design, and the other way round.
 * @param name the force in a sentence: "The shear"
 * @throws BadInput for a wind or seismic force of unknown level, or a force that no single factor converts
 * Source: ASCE/SEI 7-10, 7-16, 7-22 sections 2.3 and 2.4.
 */
export function atDesignLevel(name: string, force: number, unit: string, d: Designed, tape?: Tape): number {
  const { duration, level, method } = d;
  const lateral = levelFactor(duration) !== undefined || (typeof duration === "number" && duration >= SHORT);
  if (level === undefined && lateral) {
    throw new BadInput(
      `The load level is missing`,
      `${name.toLowerCase()} comes from wind or an earthquake, and its strength level is larger than its allowable level`,
      "Give a row load level in the basis: strength or allowable",
    );
  }
  if (level === undefined || level === method) return force;
  const factor = levelFactor(duration);
  if (factor === undefined) {
    throw new BadInput(
      `${name} is given at ${level} level and the design method is ${method}`,
      "only wind and seismic forces go from one level to the other by one factor",
      `Give ${name.toLowerCase()} at ${method} level, or a load duration of wind or seismic`,
    );
  }
  const value = method === "allowable" ? force * factor : force / factor;
  const how = method === "allowable" ? "times" : "divided by";
  tape?.step("F", `${name.toLowerCase()} ${plain(force)} ${how} ${factor}`, value, unit, "ASCE/SEI 7 section 2.4");
  return value;
}

/** Share of the dead load that counts where it resists, and what counts where it adds. ASCE/SEI 7-10, 7-16, 7-22 sections 2.3 and 2.4. */
export const RESISTING_DEAD: Readonly<Record<LoadLevel, number>> = { strength: 0.9, allowable: 0.6 };
export const ADDING_DEAD: Readonly<Record<LoadLevel, number>> = { strength: 1.2, allowable: 1 };
