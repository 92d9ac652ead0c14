import { BadInput, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { Dowel } from "./dowel.ts";
import {
  CONCRETE_BEARING_PSI,
  GRAVITY_RANGE,
  PANEL_BEARING,
  SMALL_DOWEL_IN,
  STEEL_BEARING,
} from "./tables/fasteners.ts";

export type Material =
  | { readonly kind: "wood"; readonly gravity: number }
  | { readonly kind: "panel"; readonly name: string }
  | { readonly kind: "steel" }
  | { readonly kind: "concrete" };

/** A member that the fastener passes or ends in. */
export interface Member {
  readonly name: string;
  /** thickness; of the member that holds the point, the penetration without the tip */
  readonly thicknessIn: number;
  readonly material: Material;
  /** of the load to the grain, 0 to 90 */
  readonly angleDeg: number;
}

const PRINTED_STEP_PSI = 50;

const CLAUSE = "NDS 12.3.3";

/** Dowel bearing strength of wood at an angle to the grain: Hankinson between parallel and perpendicular. NDS 2018 12.3.3, 12.3.4. */
function woodPsi(gravity: number, diameterIn: number, angleDeg: number, round: (psi: number) => number): number {
  if (diameterIn < SMALL_DOWEL_IN) return round(16600 * gravity ** 1.84);
  const along = round(11200 * gravity);
  const across = round((6100 * gravity ** 1.45) / Math.sqrt(diameterIn));
  const sin2 = Math.sin((angleDeg * Math.PI) / 180) ** 2;
  return (along * across) / (along * sin2 + across * (1 - sin2));
}

function panelPsi(name: string, dowel: Dowel): number {
  const psi = PANEL_BEARING[name];
  if (psi !== undefined && dowel.nominalIn < SMALL_DOWEL_IN) return psi;
  throw new BadInput(
    `${name} stands as material for a fastener of ${plain(dowel.nominalIn)} in`,
    `its bearing strength is held for fasteners under ${SMALL_DOWEL_IN} in (NDS Table 12.3.3B)`,
    "Give the specific gravity of the panel instead",
  );
}

/**
 * Dowel bearing strength of a member, psi.
 * @param rounded to 50 psi as in the printed tables
 * @throws OutOfRange for a specific gravity outside the tables
 * Source: NDS 2018 12.3.3, 12.3.4, Tables 12.3.3, 12.3.3B.
 */
export function bearingPsi(member: Member, dowel: Dowel, rounded: boolean, tape?: Tape): number {
  const { material, thicknessIn, angleDeg, name } = member;
  const round = (psi: number) => (rounded ? PRINTED_STEP_PSI * Math.round(psi / PRINTED_STEP_PSI) : psi);
  let psi: number;
  let how: string;
  if (material.kind === "steel") {
    psi = thicknessIn < STEEL_BEARING.thickIn ? STEEL_BEARING.thinPsi : STEEL_BEARING.thickPsi;
    how = `steel ${plain(thicknessIn)} in thick`;
  } else if (material.kind === "concrete") {
    psi = CONCRETE_BEARING_PSI;
    how = "concrete of 2500 psi or more";
  } else if (material.kind === "panel") {
    psi = panelPsi(material.name, dowel);
    how = material.name;
  } else {
    within(
      "The specific gravity",
      material.gravity,
      GRAVITY_RANGE.min,
      GRAVITY_RANGE.max,
      "",
      "NDS Tables 12.2A, 12.3.3",
    );
    psi = woodPsi(material.gravity, dowel.nominalIn, angleDeg, round);
    how = `G ${plain(material.gravity)}${dowel.nominalIn < SMALL_DOWEL_IN ? "" : `, load ${plain(angleDeg)} deg to the grain`}`;
    if (rounded) how += ", rounded to 50 psi";
  }
  tape?.step("Fe", `${name}: ${how}`, psi, "psi", CLAUSE);
  return psi;
}
