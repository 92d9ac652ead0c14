import { BadInput, OutOfRange, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { vaporPressurePa } from "../air/humid-air.ts";
import { dewPointFromPressureC } from "../air/saturation.ts";
import { cToF, OZ_FT2_IN_KG_M2, R_IP_IN_RSI } from "../air/si.ts";
import type { Assembly } from "../layers/assembly.ts";
import { wallSection } from "./pictures.ts";
import { type AirBothSides, faceName, stateOf, steadyProfile } from "./profile.ts";
import { nodeTemperaturesC } from "./vapor-path.ts";

const CLAUSE = "ISO 13788:2012 6.4";
const SECONDS_A_DAY = 86400;

export const DEW_METHODS = ["diffusion", "air"] as const;
export type DewMethod = (typeof DEW_METHODS)[number];

export type FaceState = "dry" | "water" | "ice";

/** A face of the steady profile in the units of the trade. */
export interface FaceRow {
  readonly name: string;
  readonly temperatureF: number;
  readonly dewPointF: number;
  /** temperature less dew point: 0 where water gathers */
  readonly marginF: number;
  readonly vaporPa: number;
  readonly saturationPa: number;
  readonly wettingOzFt2Day: number;
  readonly state: FaceState;
}

/**
 * The steady profile, a row for each face from the inside surface to the outside surface.
 * @throws as steadyProfile
 */
export function dewProfile(assembly: Assembly, air: AirBothSides, tape?: Tape): readonly FaceRow[] {
  const profile = steadyProfile(assembly, air, tape);
  tape?.show(wallSection(assembly, profile));
  return profile.faces.map((f) => ({
    name: stateOf(f) === "dry" ? f.name : f.wetAt,
    temperatureF: cToF(f.tempC),
    dewPointF: cToF(f.dewPointC),
    marginF: cToF(f.tempC) - cToF(f.dewPointC),
    vaporPa: f.vaporPa,
    saturationPa: f.saturationPa,
    wettingOzFt2Day: f.wettingKgM2s * SECONDS_A_DAY * OZ_FT2_IN_KG_M2,
    state: stateOf(f),
  }));
}

/**
 * The first face that water forms at, from the warm side: "none", or such as "row 3, OSB | air space: ice".
 * Method "diffusion": vapor moves by diffusion only (steadyProfile). Method "air": the air of the warmer side itself reaches every face up to the air barrier.
 * @throws as steadyProfile; OutOfRange for "air" where both sides are as warm
 */
export function dewLayer(assembly: Assembly, air: AirBothSides, method: DewMethod, tape?: Tape): string {
  const result = method === "diffusion" ? byDiffusion(assembly, air, tape) : byAir(assembly, air, tape);
  tape?.step("first wet face", "from the warmer side", result, "", CLAUSE);
  return result;
}

function byDiffusion(assembly: Assembly, air: AirBothSides, tape: Tape | undefined): string {
  const profile = steadyProfile(assembly, air, tape);
  tape?.show(wallSection(assembly, profile));
  for (const f of profile.faces) {
    const margin = cToF(f.tempC) - cToF(f.dewPointC);
    tape?.step("T - T_d", `${f.name}: ${plain(cToF(f.tempC))} F less dew point`, margin, "F", CLAUSE);
  }
  const wet = profile.faces.flatMap((f, i) => (stateOf(f) === "dry" ? [] : [i]));
  const at = air.insideC >= air.outsideC ? wet[0] : wet.at(-1);
  const face = profile.faces[at ?? -1];
  return at === undefined || face === undefined ? "none" : wetFace(assembly, at, face.wetAt, stateOf(face));
}

function wetFace(assembly: Assembly, at: number, name: string, state: string): string {
  const row = assembly.layers[Math.max(0, at - 1)]?.row;
  return at === 0 ? `${name}: ${state}` : `row ${row}, ${name}: ${state}`;
}

function noLayer(): BadInput {
  return new BadInput(
    "There is no layer to check",
    "from a ventilated cavity outward nothing counts, and nothing else is given",
    "Give the layers inside the cavity",
  );
}

function byAir(assembly: Assembly, air: AirBothSides, tape: Tape | undefined): string {
  const { layers } = assembly;
  const barrier = layers.findIndex((l) => l.role.kind === "air barrier");
  if (layers.length === 0) throw noLayer();
  const inward = air.outsideC > air.insideC;
  if (air.outsideC === air.insideC) {
    throw new OutOfRange(
      "Both sides are equally warm",
      "air that moves through a wall cools only towards a colder side",
      'Give unlike temperatures, or use "diffusion"',
    );
  }
  if (barrier < 0) {
    tape?.caution(
      `No layer is marked as the air barrier: ${inward ? "outdoor" : "indoor"} air is taken to reach every face. Mark the air barrier in the role column.`,
    );
  }
  const warmPa = inward
    ? vaporPressurePa(air.outsideC, air.outsideRh, air.curve)
    : vaporPressurePa(air.insideC, air.insideRh, air.curve);
  const dewC = dewPointFromPressureC(warmPa, air.curve);
  const side = inward ? "outdoor" : "indoor";
  tape?.step("T_d", `dew point of the ${side} air`, cToF(dewC), "F", "ISO 13788:2012 Annex E");
  const temperatures = temperaturesC(assembly, air);
  for (const i of facesReached(layers.length, barrier, inward)) {
    const tempC = temperatures[i] ?? 0;
    const name = faceName(layers, i - 1);
    tape?.step("T - T_d", name, cToF(tempC) - cToF(dewC), "F", CLAUSE);
    if (tempC < dewC) return wetFace(assembly, i, name, tempC < 0 ? "ice" : "water");
  }
  return "none";
}

/** Faces that moving air reaches, from its own side on. Face i lies inside of layer i; air goes no further than the near face of the air barrier. */
function facesReached(count: number, barrier: number, inward: boolean): readonly number[] {
  const [from, to] = inward ? [count, barrier < 0 ? 0 : barrier + 1] : [0, barrier < 0 ? count : barrier];
  const faces = Array.from({ length: Math.abs(to - from) + 1 }, (_, k) => (inward ? from - k : from + k));
  // The surface that faces the far air takes nothing from the near one.
  return faces.filter((i) => (inward ? i > 0 : i < count));
}

/** Temperatures from the inside surface to the outside surface. */
export function temperaturesC(assembly: Assembly, air: { insideC: number; outsideC: number }): readonly number[] {
  const layers = assembly.layers.map((l) => ({
    row: l.row,
    name: l.name,
    rM2KW: l.rIp / R_IP_IN_RSI,
    sd: [],
  }));
  const rsiM2KW = assembly.inside.rIp / R_IP_IN_RSI;
  const rseM2KW = assembly.outside.rIp / R_IP_IN_RSI;
  return nodeTemperaturesC({ layers, rsiM2KW, rseM2KW }, air.insideC, air.outsideC);
}
