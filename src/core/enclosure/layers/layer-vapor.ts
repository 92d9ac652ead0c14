import { BadInput, plain } from "../../kit/refusal.ts";
import { M_IN_INCH, sdFromPerm } from "../air/si.ts";
import type { VaporData } from "../tables/materials.ts";

/** Equivalent air layer of a whole layer by the relative humidity in it: pairs of humidity (share) and m. */
export type SdCurve = readonly (readonly [number, number])[];

/** Mean humidity in the two cup tests of ASTM E96: dry cup 0 to 50 %, wet cup 50 to 100 %. */
const DRY_CUP_RH = 0.25;
const WET_CUP_RH = 0.75;

/** True where the layer's resistance to vapor depends on the humidity in it. */
export function varies(curve: SdCurve): boolean {
  return curve.length > 1;
}

/** Equivalent air layer in m at a relative humidity (share). Between points ln sd is straight; beyond them the end value holds. */
export function sdAtM(curve: SdCurve, rhShare: number): number {
  const next = curve.findIndex(([rh]) => rh >= rhShare);
  if (next < 0) return curve[curve.length - 1]?.[1] ?? 0;
  const [rhHigh, sdHigh] = curve[next] as readonly [number, number];
  if (next === 0) return sdHigh;
  const [rhLow, sdLow] = curve[next - 1] as readonly [number, number];
  const t = (rhShare - rhLow) / (rhHigh - rhLow);
  return sdLow ** (1 - t) * sdHigh ** t;
}

/** The curve of a built-in material at a thickness. */
export function materialSd(data: VaporData | undefined, thicknessIn: number): SdCurve | undefined {
  if (data === undefined) return undefined;
  const times = data.kind === "mu" ? thicknessIn * M_IN_INCH : 1;
  return data.points.map(([rh, value]) => [rh, value * times]);
}

/** A resistance to vapor of a layer's own: of the whole layer (perm, sd in m) or of its material (perm-in, mu). */
export interface VaporFigure {
  readonly kind: "perm" | "perm-in" | "mu" | "sd";
  /** above 0 */
  readonly value: number;
}

export interface OwnVapor {
  readonly dry: VaporFigure;
  /** wet-cup figure; the first is then the dry-cup one */
  readonly wet: VaporFigure | undefined;
}

/**
 * The curve of a layer's own figures.
 * @param where "row 4"
 * @throws BadInput for a figure by thickness without thickness
 */
export function ownSd(own: OwnVapor, thicknessIn: number, where: string): SdCurve {
  const dryM = sdOfFigure(own.dry, thicknessIn, where);
  if (own.wet === undefined) return [[DRY_CUP_RH, dryM]];
  return [
    [DRY_CUP_RH, dryM],
    [WET_CUP_RH, sdOfFigure(own.wet, thicknessIn, where)],
  ];
}

function sdOfFigure({ kind, value }: VaporFigure, thicknessIn: number, where: string): number {
  if (kind === "sd") return value;
  if (kind === "perm") return sdFromPerm(value);
  if (!(thicknessIn > 0)) {
    throw new BadInput(
      `The vapor figure ${kind} ${plain(value)} in ${where} is per thickness, and the row has none`,
      "mu and perm-inch belong to a material, not to a sheet",
      "Give the thickness, or the perm or sd of the whole layer",
    );
  }
  return kind === "mu" ? value * thicknessIn * M_IN_INCH : sdFromPerm(value / thicknessIn);
}
