import { BadInput, Refusal } from "../kit/refusal.ts";
import { parseQuantity } from "../units/quantity.ts";
import { DELTA_0, M_IN_INCH, sdFromPerm } from "./border.ts";
import type { VaporData } from "./tables/materials.ts";

/** Equivalent air layer of a whole layer, as a function of the relative humidity in it: pairs of humidity (share) and m. */
export type SdCurve =
  | { readonly kind: "points"; readonly points: readonly (readonly [number, number])[] }
  | {
      readonly kind: "power";
      readonly sdAt100M: number;
      readonly exponent: number;
      readonly from: number;
      readonly to: number;
    };

/** Mean humidity in the two cup tests of ASTM E96: dry cup 0 to 50 %, wet cup 50 to 100 %. */
const DRY_CUP_RH = 0.25;
const WET_CUP_RH = 0.75;

/** True where the layer's resistance to vapor depends on the humidity in it. */
export function varies(curve: SdCurve): boolean {
  return curve.kind === "power" || curve.points.length > 1;
}

/** Equivalent air layer in m at a relative humidity (share). Between points ln sd is straight; beyond them the end value holds. */
export function sdAtM(curve: SdCurve, rhShare: number): number {
  if (curve.kind === "power") {
    return curve.sdAt100M * Math.min(Math.max(rhShare, curve.from), curve.to) ** -curve.exponent;
  }
  const { points } = curve;
  const next = points.findIndex(([rh]) => rh >= rhShare);
  if (next < 0) return points[points.length - 1]?.[1] ?? 0;
  const [rhHigh, sdHigh] = points[next] as readonly [number, number];
  if (next === 0) return sdHigh;
  const [rhLow, sdLow] = points[next - 1] as readonly [number, number];
  const t = (rhShare - rhLow) / (rhHigh - rhLow);
  return sdLow ** (1 - t) * sdHigh ** t;
}

/** The curve of a built-in material at a thickness. */
export function materialSd(data: VaporData | undefined, thicknessIn: number): SdCurve | undefined {
  if (data === undefined) return undefined;
  const thicknessM = thicknessIn * M_IN_INCH;
  if (data.kind === "mu power") {
    const { muAt100, exponent, from, to } = data;
    return { kind: "power", sdAt100M: muAt100 * thicknessM, exponent, from, to };
  }
  const times = data.kind === "mu" ? thicknessM : 1;
  return { kind: "points", points: data.points.map(([rh, value]) => [rh, value * times]) };
}

const NUMBER = String.raw`(\d+\.?\d*(?:e[-+]?\d+)?|\.\d+(?:e[-+]?\d+)?)`;
const MU = new RegExp(String.raw`^mu\s*=?\s*${NUMBER}$`, "i");
const SD = new RegExp(String.raw`^sd\s*=?\s*${NUMBER}\s*(m|ft|in)?$`, "i");

/**
 * Reads a resistance to vapor: `0.5` or `0.5 perm` (of the whole layer), `2 perm-in`, `mu 100`, `sd 2 m`, `57 ng/s m2 Pa`.
 * @param wet the wet-cup figure where there is one; the first is then the dry-cup figure
 * @param where "row 4"
 * @throws BadInput for text that is none of these, or a figure by thickness without thickness
 */
export function parseVapor(text: string, wet: string | undefined, thicknessIn: number, where: string): SdCurve {
  const dryM = sdM(text, thicknessIn, where);
  if (wet === undefined) return { kind: "points", points: [[DRY_CUP_RH, dryM]] };
  return {
    kind: "points",
    points: [
      [DRY_CUP_RH, dryM],
      [WET_CUP_RH, sdM(wet, thicknessIn, where)],
    ],
  };
}

function sdM(text: string, thicknessIn: number, where: string): number {
  const value = read(text.trim(), thicknessIn, where);
  if (value !== undefined && value > 0 && Number.isFinite(value)) return value;
  throw new BadInput(
    `The vapor figure "${text}" in ${where} cannot be read`,
    "it is a permeance, a permeability, a mu or an sd, above 0",
    "Write it like 0.5 (perm of the whole layer), 2 perm-in, mu 100 or sd 2 m",
  );
}

function read(text: string, thicknessIn: number, where: string): number | undefined {
  const mu = MU.exec(text);
  if (mu !== null) return Number(mu[1]) * needThickness(text, thicknessIn, where) * M_IN_INCH;
  const sd = SD.exec(text);
  if (sd !== null) return Number(sd[1]) * { m: 1, ft: 0.3048, in: M_IN_INCH }[(sd[2] ?? "m").toLowerCase() as "m"];
  const perm = quantity(text, "perm");
  if (perm !== undefined) return sdFromPerm(perm);
  const permIn = quantity(text, "perm-in");
  if (permIn !== undefined) return sdFromPerm(permIn / needThickness(text, thicknessIn, where));
  return undefined;
}

function needThickness(text: string, thicknessIn: number, where: string): number {
  if (thicknessIn > 0) return thicknessIn;
  throw new BadInput(
    `The vapor figure "${text}" in ${where} is per thickness, and the row has none`,
    "mu and perm-inch belong to a material, not to a sheet",
    "Give the thickness, or the perm or sd of the whole layer",
  );
}

function quantity(text: string, unit: string): number | undefined {
  try {
    return parseQuantity(text, unit);
  } catch (refusal) {
    if (refusal instanceof Refusal) return undefined;
    throw refusal;
  }
}

/** Still air's permeability over an equivalent thickness: kg/(s m2) that passes per Pa. */
export const permeanceOfSd = (sdMeters: number): number => DELTA_0 / sdMeters;
