import { BadInput, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { vaporPressurePa } from "../air/humid-air.ts";
import { dewPointFromPressureC, type SaturationFormula, saturationPressurePa } from "../air/saturation.ts";
import { cToF, R_IP_IN_RSI } from "../air/si.ts";
import type { Assembly } from "../layers/assembly.ts";
import { varies } from "../layers/layer-vapor.ts";
import { straightLine, tautString } from "./taut-string.ts";
import {
  type MoistLayer,
  type MoistWall,
  nodeTemperaturesC,
  pieceRM2KW,
  piecesOf,
  settle,
  subdivide,
} from "./vapor-path.ts";

const CLAUSE = "ISO 13788:2012 6.4";

/** Air on both sides. Humidity as a share, above 0 to 1. */
export interface AirBothSides {
  readonly insideC: number;
  readonly insideRh: number;
  readonly outsideC: number;
  readonly outsideRh: number;
  readonly curve: SaturationFormula;
}

/** A face between two layers, or a surface. */
export interface Interface {
  readonly name: string;
  readonly tempC: number;
  readonly saturationPa: number;
  /** vapor pressure with the water that forms taken out: nowhere above saturation */
  readonly vaporPa: number;
  /** vapor pressure of the straight line between both sides, with which the dew-point method begins */
  readonly initialPa: number;
  readonly dewPointC: number;
  /** water that gathers inside the layer before it and at this face, kg/(m2 s) */
  readonly wettingKgM2s: number;
  /** where that water is, in words: within the outermost layer it is not at the surface that the outdoor air passes */
  readonly wetAt: string;
}

/** "dry", or what the water at a face is. A face is wet exactly where water gathers, not where a straight line would pass saturation. */
export function stateOf(face: Interface): "dry" | "water" | "ice" {
  if (!(face.wettingKgM2s > 0)) return "dry";
  return face.tempC < 0 ? "ice" : "water";
}

export interface Profile {
  readonly air: AirBothSides;
  readonly faces: readonly Interface[];
  readonly wall: MoistWall;
  /** mean relative humidity (share) of each layer */
  readonly layerRh: readonly number[];
}

/**
 * The wall as vapor sees it: each layer must resist vapor by a known amount.
 * @throws BadInput naming the row without a vapor figure
 */
export function moistWall(assembly: Assembly, tape?: Tape): MoistWall {
  if (assembly.ventilated !== undefined) {
    tape?.caution("The slightly ventilated cavity is taken as still air for temperature and vapor.");
  }
  const layers = assembly.layers.map((l): MoistLayer => {
    if (l.sd === undefined) {
      throw new BadInput(
        `The ${l.name} in row ${l.row} has no vapor figure`,
        "vapor cannot be followed through a layer whose resistance is not known",
        "Give its perm, perm-inch, mu or sd in the fourth column",
      );
    }
    if (l.vaporCaution !== undefined) tape?.caution(l.vaporCaution);
    return { row: l.row, name: l.name, rM2KW: l.rIp / R_IP_IN_RSI, sd: l.sd };
  });
  const { inside, outside } = assembly;
  return { layers, rsiM2KW: inside.rIp / R_IP_IN_RSI, rseM2KW: outside.rIp / R_IP_IN_RSI };
}

/** Name of the face at the outer side of layer `i` (0 to N - 1) of a wall; of the inside surface for -1. */
export function faceName(layers: readonly { readonly name: string }[], i: number): string {
  if (i < 0) return "inside surface";
  const inner = layers[i]?.name ?? "";
  const outer = layers[i + 1]?.name;
  return outer === undefined ? `outside surface (${inner})` : `${inner} | ${outer}`;
}

/**
 * Temperature, vapor pressure and saturation pressure at each face of a wall in a steady state, and where water gathers.
 * Layers of much R are split, so that water inside a layer is found; it is counted with the layer's outer face.
 * @throws BadInput for a layer without a vapor figure, OutOfRange outside the saturation curve
 * Source: ISO 13788:2012 6.3 and 6.4.
 */
export function steadyProfile(assembly: Assembly, air: AirBothSides, tape?: Tape): Profile {
  const wall = moistWall(assembly, tape);
  const pieceR = pieceRM2KW(wall);
  const split: MoistWall = { ...wall, layers: subdivide(wall.layers, pieceR) };
  const insidePa = vaporPressurePa(air.insideC, air.insideRh, air.curve);
  const outsidePa = vaporPressurePa(air.outsideC, air.outsideRh, air.curve);
  tape?.step("p_i", `${plain(air.insideRh)} p_sat(${plain(cToF(air.insideC))} F)`, insidePa, "Pa", CLAUSE);
  tape?.step("p_e", `${plain(air.outsideRh)} p_sat(${plain(cToF(air.outsideC))} F)`, outsidePa, "Pa", CLAUSE);
  const temperatures = nodeTemperaturesC(split, air.insideC, air.outsideC);
  const { path, solution, rhShares } = settle(split, temperatures, air.curve, (p) =>
    tautString(p, insidePa, outsidePa, new Set()),
  );
  const line = straightLine(path.x, insidePa, outsidePa);
  const faces: Interface[] = [];
  const layerRh: number[] = [];
  let node = 0;
  const face = (name: string, from: number, to: number, outermost = "") => {
    const tempC = temperatures[to] ?? 0;
    const vaporPa = solution.pressurePa[to] ?? 0;
    const initialPa = line[to] ?? 0;
    const planes = solution.planes.filter((p) => p.node > from && p.node <= to);
    const wettingKgM2s = planes.reduce((sum, p) => sum + p.kgM2s, 0);
    const atFace = outermost === "" || planes.some((p) => p.node === to && p.kgM2s > 0);
    const wetAt = atFace ? name : `inside ${outermost}`;
    const saturationPa = saturationPressurePa(tempC, air.curve);
    const dewPointC = dewPointFromPressureC(vaporPa, air.curve);
    faces.push({ name, tempC, saturationPa, vaporPa, initialPa, dewPointC, wettingKgM2s, wetAt });
    tape?.step(`p ${name}`, "straight line before any water leaves it", initialPa, "Pa", CLAUSE);
  };
  face(faceName(wall.layers, -1), -1, 0);
  wall.layers.forEach((layer, i) => {
    const pieces = piecesOf(layer, pieceR);
    const outermost = i === wall.layers.length - 1 ? layer.name : "";
    face(faceName(wall.layers, i), node, node + pieces, outermost);
    layerRh.push(rhShares.slice(node, node + pieces).reduce((a, b) => a + b, 0) / pieces);
    const sdM = (path.x[node + pieces] ?? 0) - (path.x[node] ?? 0);
    const at = varies(layer.sd) ? ` at ${plain(Math.round((layerRh[i] ?? 0) * 100))} % RH` : "";
    tape?.step(`sd_${layer.row}`, `${layer.name}${at}`, sdM, "m", CLAUSE);
    node += pieces;
  });
  return { air, faces, wall, layerRh };
}
