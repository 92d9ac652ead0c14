import { recalled } from "../../kit/known.ts";
import { BadInput, plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { M_IN_INCH, R_IP_IN_RSI, W_M2K_IN_BTU } from "../air/si.ts";
import type { Assembly } from "./assembly.ts";

const CLAUSE = recalled("ISO 6946:2017 Annex F (2007: D.3)");
/** Conductivity of common fixings, W/(m K). ISO 10456:2007 Table 3, from memory; wood by the Wood Handbook near 0.5 specific gravity. */
export const FIXING_W_MK = {
  steel: 50,
  stainless: 17,
  aluminum: 160,
  fiberglass: 0.3,
  plastic: 0.25,
  wood: 0.15,
} as const;
/** The formula is made for fixings that conduct far better than what they cross: ISO 6946 leaves out those under 1 W/(m K). */
const LEAST_W_MK = 1;
const ALPHA = 0.8;
const FT2_IN_M2 = 1 / 0.3048 ** 2;

/** One kind of point fixing through one layer. */
export interface Fixing {
  readonly row: number;
  readonly name: string;
  /** above 0 */
  readonly conductivityWmK: number;
  readonly diameterIn: number;
  readonly perFt2: number;
  /** row of the layer that it crosses */
  readonly layerRow: number;
  /** length inside that layer; undefined: it crosses it fully */
  readonly depthIn: number | undefined;
}

/**
 * What point fixings add to U: dU = a (lambda A n / d1) (R1 / R_T)^2, a = 0.8, or 0.8 d1/d0 where the fixing ends inside the layer.
 * @param rTotalIp total R without the fixings
 * @returns Btu/(h ft2 F)
 * @throws BadInput for a layer that is not in the stack or has no thickness
 * Source: ISO 6946:2017 Annex F.
 */
export function fixingsU(assembly: Assembly, fixings: readonly Fixing[], rTotalIp: number, tape?: Tape): number {
  let sum = 0;
  for (const f of fixings) sum += oneFixing(assembly, f, rTotalIp, tape);
  if (fixings.length > 0) {
    tape?.caution(`The correction for fixings (${CLAUSE}) has no published example to check against.`);
    tape?.assume("no fixing touches metal at both ends; there the formula does not hold");
    const share = sum * rTotalIp;
    if (share < 0.03)
      tape?.assume(
        `the fixings add ${plain(Number((share * 100).toPrecision(2)))} % to U; below 3 % ISO 6946 lets them be left out`,
      );
  }
  return sum;
}

function oneFixing(assembly: Assembly, f: Fixing, rTotalIp: number, tape: Tape | undefined): number {
  const layer = assembly.layers.find((l) => l.row === f.layerRow);
  if (layer === undefined || !(layer.thicknessIn > 0)) {
    throw new BadInput(
      `The fixing in row ${f.row} crosses layer ${f.layerRow}`,
      layer === undefined ? "no counted layer has that row" : "that layer has no thickness",
      "Give the row number of the insulation that it goes through",
    );
  }
  within(`The diameter of the fixing in row ${f.row}`, f.diameterIn, 0.01, 2, "in", CLAUSE);
  const lambda = f.conductivityWmK;
  within(`The conductivity of the fixing in row ${f.row}`, lambda, 0.01, 500, "W/(m K)", CLAUSE);
  if (lambda < LEAST_W_MK) {
    tape?.assume(`${f.name}: a fixing under ${LEAST_W_MK} W/(m K) needs no correction (ISO 6946:2017 Annex F)`);
    return 0;
  }
  const depthIn = f.depthIn ?? layer.thicknessIn;
  if (!(depthIn > 0 && depthIn <= layer.thicknessIn)) {
    throw new BadInput(
      `The fixing in row ${f.row} is ${plain(depthIn)} in deep in a layer of ${plain(layer.thicknessIn)} in`,
      "its length inside the layer is above 0 and no more than the thickness",
      "Leave the depth blank where it crosses the layer fully",
    );
  }
  const d1 = depthIn * M_IN_INCH;
  const area = (Math.PI / 4) * (f.diameterIn * M_IN_INCH) ** 2;
  const perM2 = f.perFt2 * FT2_IN_M2;
  // R1 is the R of the insulation that the fixing runs through; of a recessed one only that part of the layer.
  const r1 = (layer.rIp / R_IP_IN_RSI) * (depthIn / layer.thicknessIn);
  const alpha = ALPHA * (depthIn / layer.thicknessIn);
  const ratio = (r1 * R_IP_IN_RSI) / rTotalIp;
  const dU = (alpha * lambda * area * perM2 * ratio ** 2) / d1 / W_M2K_IN_BTU;
  tape?.step(
    `dU_f ${f.row}`,
    `${plain(alpha)} x ${plain(lambda)} x ${plain(area)} x ${plain(perM2)} / ${plain(d1)} x ${plain(ratio)}^2, ${f.name} through ${layer.name}`,
    dU,
    "Btu/(h ft2 F)",
    CLAUSE,
  );
  return dU;
}
