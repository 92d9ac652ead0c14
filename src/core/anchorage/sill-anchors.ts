import { adjusted, type Conditions } from "../fasteners/adjust.ts";
import { yieldValue } from "../fasteners/lateral.ts";
import { spacingIn } from "../fasteners/spacing.ts";
import { atDesignLevel, type LoadLevel } from "../kit/load-level.ts";
import { plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { SILL_RULES } from "./tables/anchors.ts";

export interface SillBolts {
  readonly shearPlf: number;
  readonly boltIn: number;
  readonly sillIn: number;
  readonly gravity: number;
  readonly concretePsi: number;
}

export interface SillSpacing {
  readonly spacingIn: number;
  readonly capacityLb: number;
}

/** Embedment behind the printed values of wood on concrete. NDS 2018 Table 12E, from memory. */
const EMBEDMENT_IN = 6;
/** Full spacing in a row, diameters. NDS 2018 Table 12.5.1B, from memory. */
const FULL_SPACING = 4;

/**
 * Cast-in bolts of a sill along the wall: what one carries by the yield modes of the wood, and their spacing.
 * The concrete's own strength at the edge is not in it.
 * @throws OutOfRange for a bolt, sill or spacing outside the rules; BadInput for a shear of unknown level
 * Source: NDS 2018 12.3.1 and Table 12E; IRC R403.1.6.
 */
export function sillBolts(
  b: SillBolts,
  conditions: Conditions,
  level: LoadLevel | undefined,
  tape?: Tape,
): SillSpacing {
  within("The bolt", b.boltIn, 0.5, 1, "in", "IRC R403.1.6, NDS 12.3.1");
  within("The thickness of the sill", b.sillIn, 0.75, 6, "in", "sills of one or more plates");
  within("The concrete strength", b.concretePsi, 2500, 10_000, "psi", "NDS Table 12E");
  const shearPlf = atDesignLevel("The shear", b.shearPlf, "plf", { ...conditions, level }, tape);
  const { lb } = yieldValue(
    {
      type: "bolt",
      diameterIn: b.boltIn,
      side: { name: "sill", thicknessIn: b.sillIn, material: { kind: "wood", gravity: b.gravity }, angleDeg: 0 },
      main: { name: "concrete", thicknessIn: EMBEDMENT_IN, material: { kind: "concrete" }, angleDeg: 0 },
      second: undefined,
      gapIn: 0,
      grain: "side",
      rounded: true,
    },
    conditions.edition,
    tape,
  );
  const capacityLb = adjusted("Z'", lb, "bolt", "lateral", conditions, tape);
  says(tape);
  const rules = { rows: 1, leastIn: FULL_SPACING * b.boltIn, mostIn: SILL_RULES.mostIn };
  return { spacingIn: spacingIn(shearPlf, capacityLb, rules, tape), capacityLb };
}

function says(tape: Tape | undefined): void {
  const { endDiameters, endIn, least, mostIn } = SILL_RULES;
  tape?.assume(`Shear along the sill; bolts cast in at least ${EMBEDMENT_IN} in deep, as behind the printed values.`);
  tape?.assume(
    `Sill anchors of the residential code: at most ${plain(mostIn / 12)} ft apart, ${least} in each plate, one within ${endIn} in of each end and not nearer than ${endDiameters} diameters, in the middle third, 7 in deep (IRC R403.1.6).`,
  );
  tape?.caution(
    "The concrete may break out at the edge before the wood yields: check it by the concrete standard, or by the exception of the building code for bolts up to 5/8 in, 1-3/4 in from the edge and 15 diameters from the end.",
  );
  tape?.caution("In seismic design categories D0 to D2 each bolt needs a plate washer of 3 x 3 x 0.229 in.");
}
