import { recalled } from "../kit/known.ts";
import { BadInput, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { FastenerType } from "./tables/fasteners.ts";

/**
 * What a fastener carries at an angle to the face of the wood, lb: lag and wood screws by the sum of squares of sine and cosine, nails by
 * their plain sum.
 * @param angleDeg of the load from the face: 0 is lateral, 90 withdrawal
 * @throws BadInput for a bolt
 * Source: NDS 2018 12.4.1 and 12.4.2, from memory.
 */
export function combinedValue(
  type: FastenerType,
  withdrawalLb: number,
  lateralLb: number,
  angleDeg: number,
  tape?: Tape,
): number {
  if (type === "bolt") {
    throw new BadInput(
      "The type is bolt",
      "the standard combines lateral and withdrawal loads for lag screws, wood screws and nails",
      "Check a bolt in shear and its washer in bearing each by itself",
    );
  }
  within("The angle", angleDeg, 0, 90, "deg", "NDS 12.4");
  const cos = Math.cos((angleDeg * Math.PI) / 180);
  const sin = Math.sin((angleDeg * Math.PI) / 180);
  const power = type === "nail" ? 1 : 2;
  const value = (withdrawalLb * lateralLb) / (withdrawalLb * cos ** power + lateralLb * sin ** power);
  const [c, s] = power === 1 ? ["cos a", "sin a"] : ["cos^2 a", "sin^2 a"];
  if (type === "nail")
    tape?.assume("Nails by the equation as printed: between its ends it gives less than either end.");
  tape?.assume("Withdrawal and lateral value are adjusted values of the same load duration, method and service.");
  tape?.step(
    "Z'_a",
    `W'p Z' / (W'p ${c} + Z' ${s}), W'p ${plain(withdrawalLb)}, Z' ${plain(lateralLb)}, a ${plain(angleDeg)} deg`,
    value,
    "lb",
    recalled(type === "nail" ? "NDS 2018 12.4.2" : "NDS 2018 12.4.1"),
  );
  return value;
}
