import type { LoadLevel } from "../kit/load-level.ts";
import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { levels, type Use } from "./use.ts";

/** Loads of a floor or roof on members at a spacing. */
export interface JoistLoads {
  readonly livePsf: number;
  readonly deadPsf: number;
  readonly spacingIn: number;
}

/** Load factors of strength design. ASCE 7 section 2.3.1. */
const FACTOR = { dead: 1.2, deadAlone: 1.4, live: 1.6 } as const;
const SQUARE_INCHES_IN_FOOT = 144;

/**
 * Line load on one member at the level of the design method, and the one that deflection goes by (live load alone), lb/in.
 * Allowable stress: live and dead; strength: 1.2 D + 1.6 L, or 1.4 D for permanent load. A live load that is said to
 * be wind or earthquake is brought to the level by its own factor, and takes factor 1 in strength design.
 * @throws BadInput where both loads are 0, or the level of a wind load is not said
 * Source: ASCE 7 sections 2.3.1 and 2.4.1.
 */
export function joistLoads(
  loads: JoistLoads,
  use: Use,
  level: LoadLevel | undefined,
  tape?: Tape,
): { lbPerIn: number; serviceLbPerIn: number } {
  const { livePsf, deadPsf, spacingIn } = loads;
  if (livePsf + deadPsf === 0)
    throw new BadInput("Live and dead load are both 0", "there is no load", "Give the loads in psf");
  const lateral = use.duration === "wind" || use.duration === "seismic";
  const live = lateral
    ? levels("The live load", livePsf, "psf", use, level, tape)
    : { design: livePsf, service: livePsf };
  const strength = use.method === "strength";
  const dead = strength ? (use.duration === "permanent" ? FACTOR.deadAlone : FACTOR.dead) : 1;
  const liveFactor = strength && !lateral ? FACTOR.live : 1;
  const psf = dead * deadPsf + liveFactor * live.design;
  const says = strength ? `${plain(dead)} D + ${plain(liveFactor)} L` : "D + L";
  tape?.step("w", says, psf, "psf", strength ? "ASCE 7 section 2.3.1" : "ASCE 7 section 2.4.1");
  const lbPerIn = (psf * spacingIn) / SQUARE_INCHES_IN_FOOT;
  tape?.step("w", `x ${plain(spacingIn)} in spacing`, lbPerIn, "lb/in", "arithmetic");
  return { lbPerIn, serviceLbPerIn: (live.service * spacingIn) / SQUARE_INCHES_IN_FOOT };
}
