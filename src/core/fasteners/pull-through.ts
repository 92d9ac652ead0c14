import { recalled } from "../kit/known.ts";
import { BadInput, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { adjusted, type Conditions, nds } from "./adjust.ts";
import { GRAVITY_RANGE } from "./tables/fasteners.ts";

/** NDS 2018 12.2.5, from memory: thin members by their thickness, thick ones by the head alone. */
const THIN = 690;
const THICK = 1725;
const THIN_TO_HEADS = 2.5;

/**
 * Adjusted pull-through value of a round head, lb.
 * @param thicknessIn net thickness of the member under the head
 * @throws BadInput for an edition before 2018, OutOfRange for a head, thickness or gravity outside the equation
 * Source: NDS 2018 12.2.5, from memory.
 */
export function pullThroughValue(
  headIn: number,
  thicknessIn: number,
  gravity: number,
  c: Conditions,
  tape?: Tape,
): number {
  if (Number(c.edition) < 2018) {
    throw new BadInput(
      `The wood standard is ${c.edition}`,
      "head pull-through came into the standard in 2018",
      "Give the wood standard 2018, or the value of a report",
    );
  }
  within("The diameter of the head", headIn, 0.2, 2, "in", "round heads of nails and screws");
  within("The thickness under the head", thicknessIn, 0.1, 12, "in", "wood and panels");
  within("The specific gravity", gravity, GRAVITY_RANGE.min, GRAVITY_RANGE.max, "", "NDS Tables 12.2A, 12.3.3");
  const thin = thicknessIn <= THIN_TO_HEADS * headIn;
  const value = thin
    ? THIN * Math.PI * headIn * gravity ** 2 * thicknessIn
    : THICK * Math.PI * headIn ** 2 * gravity ** 2;
  tape?.step(
    "W_H",
    thin ? `${THIN} pi D_H G^2 t, t up to 2.5 D_H` : `${THICK} pi D_H^2 G^2, t above 2.5 D_H`,
    value,
    "lb",
    recalled(nds(c.edition, "12.2.5")),
  );
  tape?.assume("A round head that bears flat on the face.");
  return adjusted("W_H'", value, undefined, "pull-through", c, tape);
}
