import { BadInput, plain } from "../kit/refusal.ts";
import type { Table, Tape } from "../kit/tape.ts";
import type { Assembly } from "./assembly.ts";
import { cToF, R_IP_IN_RSI } from "./border.ts";
import { vaporPressurePa } from "./humid-air.ts";
import { wallSection } from "./pictures.ts";
import { type AirBothSides, faceName, stateOf, steadyProfile } from "./profile.ts";
import { dewPointFromPressureC } from "./saturation.ts";
import { nodeTemperaturesC } from "./vapor-path.ts";

const CLAUSE = "ISO 13788:2012 6.4";
/** Ounces per square foot in one kg/m2. NIST SP 811 (2008) B.8. */
export const OZ_FT2_IN_KG_M2 = 0.3048 ** 2 / 0.028349523125;
const SECONDS_A_DAY = 86400;

export const DEW_METHODS = ["diffusion", "air"] as const;
export type DewMethod = (typeof DEW_METHODS)[number];

/**
 * The steady profile as a table, a row for each face from the inside surface to the outside surface.
 * @returns rows: face, temperature F, dew point F, margin F, vapor pressure Pa, saturation pressure Pa, wetting oz/(ft2 day), state
 * @throws as steadyProfile
 */
export function dewProfile(assembly: Assembly, air: AirBothSides, tape?: Tape): Table {
  const profile = steadyProfile(assembly, air, tape);
  const rows = profile.faces.map((f) => [
    f.name,
    cToF(f.tempC),
    cToF(f.dewPointC),
    cToF(f.tempC) - cToF(f.dewPointC),
    f.vaporPa,
    f.saturationPa,
    f.wettingKgM2s * SECONDS_A_DAY * OZ_FT2_IN_KG_M2,
    stateOf(f),
  ]);
  tape?.show(wallSection(assembly, profile));
  tape?.step("profile", "theta_n = theta_i - (theta_i - theta_e) R_n / R_T; p along sd", rows, "", CLAUSE);
  return rows;
}

/**
 * The first face, from inside, that water forms at: "none", or such as "row 3, OSB | air space: ice".
 * Method "diffusion": vapor moves by diffusion only (steadyProfile). Method "air": indoor air itself reaches every face up to the air barrier.
 * @throws as steadyProfile
 */
export function dewLayer(assembly: Assembly, air: AirBothSides, method: DewMethod, tape?: Tape): string {
  const result = method === "diffusion" ? byDiffusion(assembly, air, tape) : byAir(assembly, air, tape);
  tape?.step("first wet face", "from inside to outside", result, "", CLAUSE);
  return result;
}

function byDiffusion(assembly: Assembly, air: AirBothSides, tape: Tape | undefined): string {
  const profile = steadyProfile(assembly, air, tape);
  tape?.show(wallSection(assembly, profile));
  for (const f of profile.faces) {
    const margin = cToF(f.tempC) - cToF(f.dewPointC);
    tape?.step("T - T_d", `${f.name}: ${plain(cToF(f.tempC))} F less dew point`, margin, "F", CLAUSE);
  }
  const at = profile.faces.findIndex((f) => stateOf(f) !== "dry");
  const face = profile.faces[at];
  return face === undefined ? "none" : wetFace(assembly, at, face.name, stateOf(face));
}

function wetFace(assembly: Assembly, at: number, name: string, state: string): string {
  const row = assembly.layers[Math.max(0, at - 1)]?.row;
  return at === 0 ? `${name}: ${state}` : `row ${row}, ${name}: ${state}`;
}

function byAir(assembly: Assembly, air: AirBothSides, tape: Tape | undefined): string {
  const barrier = assembly.layers.findIndex((l) => l.role.kind === "air barrier");
  if (assembly.layers.length === 0) throw new BadInput("There is no layer", "nothing to check", "Give the layers");
  if (barrier < 0) {
    tape?.caution(
      "No layer is marked as the air barrier: indoor air is taken to reach every face. Mark the air barrier in the fifth column.",
    );
  }
  const insidePa = vaporPressurePa(air.insideC, air.insideRh, air.curve);
  const dewC = dewPointFromPressureC(insidePa, air.curve);
  tape?.step("T_d", "dew point of the indoor air", cToF(dewC), "F", "ISO 13788:2012 Annex E");
  const temperatures = temperaturesC(assembly, air);
  // Node i is the inner face of layer i; indoor air goes no further than the inner face of the air barrier.
  const last = barrier < 0 ? assembly.layers.length - 1 : barrier;
  for (let i = 0; i <= last; i++) {
    const tempC = temperatures[i] ?? 0;
    const name = faceName(assembly.layers, i - 1);
    tape?.step("T - T_d", name, cToF(tempC) - cToF(dewC), "F", CLAUSE);
    if (tempC < dewC) return wetFace(assembly, i, name, tempC < 0 ? "ice" : "water");
  }
  return "none";
}

/** Temperatures from the inside surface to the outside surface. */
export function temperaturesC(assembly: Assembly, air: { insideC: number; outsideC: number }): readonly number[] {
  const layers = assembly.layers.map((l) => ({
    row: l.row,
    name: l.name,
    rM2KW: l.rIp / R_IP_IN_RSI,
    sd: { kind: "points", points: [] } as const,
  }));
  const rsiM2KW = assembly.inside.rIp / R_IP_IN_RSI;
  const rseM2KW = assembly.outside.rIp / R_IP_IN_RSI;
  return nodeTemperaturesC({ layers, rsiM2KW, rseM2KW }, air.insideC, air.outsideC);
}
