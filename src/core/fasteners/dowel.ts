import { recalled } from "../kit/known.ts";
import { OutOfRange, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import {
  BENDING_YIELD,
  BOLT_BENDING_YIELD_PSI,
  type FastenerType,
  LAG_ROOTS,
  WOOD_SCREW_ROOTS,
} from "./tables/fasteners.ts";

/** A fastener as the yield equations see it. */
export interface Dowel {
  readonly type: FastenerType;
  /** nominal diameter, by which the wood bears */
  readonly nominalIn: number;
  /** diameter in the yield equations: the root of threaded fasteners */
  readonly yieldIn: number;
  readonly bendingYieldPsi: number;
}

/** Sizes are given to three places or as a fraction: so much may a diameter be off its size. */
const SAME_SIZE_IN = 0.0011;

interface Size {
  readonly nominalIn: number;
  readonly rootIn: number;
  /** as lists call it */
  readonly says: string;
}

const LAGS: readonly Size[] = LAG_ROOTS.map(([nominalIn, rootIn]) => ({ nominalIn, rootIn, says: plain(nominalIn) }));
const SCREWS: readonly Size[] = WOOD_SCREW_ROOTS.map(([number, nominalIn, rootIn]) => ({
  nominalIn,
  rootIn,
  says: `${plain(nominalIn)} (No. ${number})`,
}));

function rootOf(sizes: readonly Size[], type: string, diameterIn: number): number {
  const found = sizes.find(({ nominalIn }) => Math.abs(nominalIn - diameterIn) < SAME_SIZE_IN);
  if (found !== undefined) return found.rootIn;
  throw new OutOfRange(
    `A ${type} of ${plain(diameterIn)} in is no size of the table`,
    `the root diameter is known for ${sizes.map(({ says }) => says).join(", ")} in (NDS Appendix L)`,
    "Give the nominal diameter of one of these",
  );
}

function yieldDiameterIn(type: FastenerType, diameterIn: number): number {
  if (type === "lag screw") return rootOf(LAGS, type, diameterIn);
  if (type === "wood screw") return rootOf(SCREWS, type, diameterIn);
  if (type === "nail") within("The diameter of the nail", diameterIn, 0.099, 0.273, "in", "NDS Appendix I");
  else within("The diameter of the bolt", diameterIn, 0.25, 1, "in", "NDS 12.3.1");
  return diameterIn;
}

/** Bending yield strength by the nominal diameter, psi. NDS Appendix I. */
export function bendingYieldPsi(type: FastenerType, diameterIn: number): number {
  if (type === "bolt") return BOLT_BENDING_YIELD_PSI;
  return BENDING_YIELD.find(([toIn]) => diameterIn <= toIn)?.[1] ?? BOLT_BENDING_YIELD_PSI;
}

/**
 * The fastener of a lateral connection: its diameter in the yield equations and its bending yield strength.
 * Lag and wood screws take the root diameter, as if the threads reached the shear plane.
 * @throws OutOfRange for a size that the tables do not hold
 * Source: NDS 2018 12.3.7, Appendices I and L.
 */
export function dowelOf(type: FastenerType, diameterIn: number, tape?: Tape): Dowel {
  const yieldIn = yieldDiameterIn(type, diameterIn);
  const psi = bendingYieldPsi(type, diameterIn);
  const root = yieldIn === diameterIn ? `nominal diameter of the ${type}` : `root diameter of the ${type}`;
  tape?.step("D", root, yieldIn, "in", recalled("NDS Appendix L"));
  tape?.step("Fyb", `bending yield strength at ${plain(diameterIn)} in`, psi, "psi", recalled("NDS Appendix I"));
  return { type, nominalIn: diameterIn, yieldIn, bendingYieldPsi: psi };
}
