import { BadInput, OutOfRange } from "../../kit/refusal.ts";
import { type SaturationFormula, saturationPressurePa } from "../air/saturation.ts";
import { type SdCurve, sdAtM, varies } from "../layers/layer-vapor.ts";
import type { VaporPath, VaporSolution } from "./taut-string.ts";

/** A layer as heat and vapor see it, in the units of ISO 13788. */
export interface MoistLayer {
  /** row of the range it comes from */
  readonly row: number;
  readonly name: string;
  readonly rM2KW: number;
  readonly sd: SdCurve;
}

export interface MoistWall {
  readonly layers: readonly MoistLayer[];
  readonly rsiM2KW: number;
  readonly rseM2KW: number;
}

/** Most R of a piece of a layer, m2 K/W. ISO 13788:2012 6.3 splits thicker ones, so that condensation inside a layer is found. */
const PIECE_R_M2KW = 0.25;
/** A wall is cut into no more pieces than this by its R, however much it insulates. */
const MOST_PIECES = 400;

/** Most R of a piece of a layer of this wall, m2 K/W. */
export function pieceRM2KW(wall: MoistWall): number {
  const total = wall.layers.reduce((sum, l) => sum + l.rM2KW, 0);
  return Math.max(PIECE_R_M2KW, total / MOST_PIECES);
}

/** Number of equal pieces of a layer. The allowance keeps a whole number from getting one more through rounding. */
export function piecesOf(layer: MoistLayer, pieceR: number): number {
  return Math.max(1, Math.ceil(layer.rM2KW / pieceR - 1e-9));
}

/** The layers cut into equal pieces of no more R than `pieceR`. */
export function subdivide(layers: readonly MoistLayer[], pieceR: number): readonly MoistLayer[] {
  return layers.flatMap((layer) => {
    const pieces = piecesOf(layer, pieceR);
    return Array.from({ length: pieces }, () => ({
      ...layer,
      rM2KW: layer.rM2KW / pieces,
      sd: part(layer.sd, pieces),
    }));
  });
}

function part(curve: SdCurve, pieces: number): SdCurve {
  return curve.map(([rh, sd]) => [rh, sd / pieces]);
}

/**
 * Temperatures from the inside surface to the outside surface: theta_n = theta_i - (theta_i - theta_e) R_in / R_T.
 * Source: ISO 13788:2012 6.4; ASHRAE Handbook Fundamentals 2021 ch. 27.
 */
export function nodeTemperaturesC(wall: MoistWall, insideC: number, outsideC: number): readonly number[] {
  const total = wall.layers.reduce((sum, l) => sum + l.rM2KW, wall.rsiM2KW + wall.rseM2KW);
  if (!(total > 0)) throw new OutOfRange("The total R is 0", "no layer and no film resists heat", "Give thicknesses");
  let inner = wall.rsiM2KW;
  const temperatures = [insideC - ((insideC - outsideC) * inner) / total];
  for (const layer of wall.layers) {
    inner += layer.rM2KW;
    temperatures.push(insideC - ((insideC - outsideC) * inner) / total);
  }
  return temperatures;
}

/** The vapor path of a wall whose layers lie at given relative humidities (shares). */
export function vaporPath(
  wall: MoistWall,
  temperaturesC: readonly number[],
  rhShares: readonly number[],
  curve: SaturationFormula,
): VaporPath {
  const x = [0];
  wall.layers.forEach((layer, i) => {
    x.push((x[i] ?? 0) + sdAtM(layer.sd, rhShares[i] ?? 0.5));
  });
  if (!((x[x.length - 1] ?? 0) > 0)) {
    throw new BadInput("No layer resists vapor", "every sd is 0", "Give at least one layer a vapor figure");
  }
  return { x, saturationPa: temperaturesC.map((t) => saturationPressurePa(t, curve)) };
}

/** Mean relative humidity (share) in each layer of a solution, from its two faces. */
function layerHumidities(path: VaporPath, solution: VaporSolution): readonly number[] {
  const rh = solution.pressurePa.map((p, n) => Math.min(1, p / (path.saturationPa[n] ?? p)));
  return rh.slice(1).map((r, i) => (r + (rh[i] ?? r)) / 2);
}

/** Humidities that agree this closely (share) are settled: far finer than any vapor figure is known. */
const SETTLED_RH = 1e-8;
const MOST_ROUNDS = 2000;

/**
 * Solves a wall whose layers resist vapor by their own humidity: humidity and sd are brought into agreement by repeated solving with damping.
 * Walls of constant layers are solved once.
 * @param solve the solution for a given path
 * @throws OutOfRange where no agreement is reached
 */
export function settle<S extends VaporSolution>(
  wall: MoistWall,
  temperaturesC: readonly number[],
  curve: SaturationFormula,
  solve: (path: VaporPath) => S,
): { readonly path: VaporPath; readonly solution: S; readonly rhShares: readonly number[] } {
  let rhShares: readonly number[] = wall.layers.map(() => 0.5);
  let step = 0.5;
  let lastGap = Number.POSITIVE_INFINITY;
  const moving = wall.layers.map((l) => varies(l.sd));
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const path = vaporPath(wall, temperaturesC, rhShares, curve);
    const solution = solve(path);
    const found = layerHumidities(path, solution);
    const gap = found.reduce(
      (most, rh, i) => (moving[i] ? Math.max(most, Math.abs(rh - (rhShares[i] ?? rh))) : most),
      0,
    );
    if (gap < SETTLED_RH) return { path, solution, rhShares: found };
    // A step too long overshoots where a steep curve meets a wet plane: halve it then, and lengthen it while it leads on.
    step = gap > lastGap ? Math.max(step / 2, 0.01) : Math.min(step * 1.1, 20);
    lastGap = gap;
    const share = step;
    rhShares = rhShares.map((rh, i) => rh + share * ((found[i] ?? rh) - rh));
  }
  throw new OutOfRange(
    "The humidity in the layers does not settle",
    "the vapor resistance of a layer changes too steeply with its humidity at these conditions",
    "Give that layer one vapor figure of its own",
  );
}
