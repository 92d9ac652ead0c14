import type { Duration } from "../kit/load-duration.ts";
import { atDesignLevel, type LoadLevel } from "../kit/load-level.ts";
import type { Tape } from "../kit/tape.ts";

/** How a member is used: what its factors depend on beside the member itself. */
export interface Use {
  /** allowable stress design, or load and resistance factor design (strength) */
  readonly method: LoadLevel;
  /** of the shortest load of the combination: a word, or the factor CD itself */
  readonly duration: Duration;
  readonly wet: boolean;
  /** edition of the NDS: "2018" */
  readonly edition: string;
}

/** A force as given, brought to the two levels that a member is checked at. */
export interface Levels {
  /** for strength, at the level of the design method */
  readonly design: number;
  /** for deflection, at service level */
  readonly service: number;
}

/**
 * A force at the level of the design method and at service (allowable) level.
 * @param level of the force as given; undefined where nobody says it
 * @param named what it is, for sentences: "The pressure"
 * @throws BadInput where the level must be said, or no single factor turns it
 * Source: ASCE 7 sections 2.3 and 2.4.
 */
export function levels(
  named: string,
  force: number,
  unit: string,
  use: Use,
  level: LoadLevel | undefined,
  tape?: Tape,
): Levels {
  const { method, duration } = use;
  const design = atDesignLevel(named, force, unit, { method, level, duration }, tape);
  if (method === "allowable") return { design, service: design };
  if (duration !== "wind" && duration !== "seismic") {
    if (level === undefined) {
      tape?.caution(
        "Loads are taken as factored for strength design (such as 1.2 D + 1.6 L): unfactored loads would be unsafe.",
      );
    }
    tape?.caution("Deflection goes by the factored loads as given: in service it is smaller.");
    return { design, service: force };
  }
  return { design, service: atDesignLevel(named, force, unit, { method: "allowable", level, duration }, tape) };
}
