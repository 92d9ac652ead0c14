import { BadInput, OutOfRange } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { permFromSd } from "../air/si.ts";
import type { Assembly } from "./assembly.ts";
import { askThinLayer, type Layer, type LayerInput, resolveLayer } from "./layer.ts";
import { sdAtM } from "./layer-vapor.ts";

const SERIES = "ISO 6946:2017 6.7.1; ASHRAE Handbook Fundamentals 2021 ch. 27";

/**
 * R of one layer.
 * @returns h ft2 F/Btu
 * @throws BadInput for an unknown material or a missing thickness
 * Source: R = d/k (ISO 6946:2017 6.7.1); the material's own source in the working.
 */
export function layerR(input: LayerInput, tape?: Tape): number {
  const layer = resolveLayer(input, "horizontal", tape);
  tape?.step("R", `${layer.name}: ${layer.says}`, layer.rIp, "h ft2 F/Btu", layer.source);
  return layer.rIp;
}

/**
 * Vapor permeance of one layer at a relative humidity in it.
 * @param rhShare 0 to 1
 * @returns perm
 * @throws BadInput for a material without a vapor figure
 * Source: W = delta_0 / sd, sd = mu d (ISO 13788:2012); the material's own source in the working.
 */
export function layerPerm(input: LayerInput, rhShare: number, tape?: Tape): number {
  const layer = resolveLayer(input, "horizontal");
  askThinLayer(input, tape);
  if (layer.sd === undefined) {
    throw new BadInput(
      `No vapor figure is known for ${layer.name}`,
      "it is kept for its R only",
      "Use the maker's dry-cup permeance",
    );
  }
  if (layer.vaporCaution !== undefined) tape?.caution(layer.vaporCaution);
  const sdM = sdAtM(layer.sd, rhShare);
  tape?.step("sd", `${layer.name} at ${Math.round(rhShare * 100)} % RH`, sdM, "m", layer.sdSource);
  const perm = permFromSd(sdM);
  tape?.step("W", "delta_0 / sd", perm, "perm", "ISO 13788:2012, delta_0 = 2e-10 kg/(m s Pa)");
  return perm;
}

/** R in series from air to air, and of the same wall without its slightly ventilated cavity. */
export function totalRIp(assembly: Assembly): number {
  const films = assembly.inside.rIp + assembly.outside.rIp;
  const still = films + sum(assembly.layers);
  if (assembly.ventilated === undefined) return still;
  const { share, layers } = assembly.ventilated;
  const open = assembly.inside.rIp + assembly.inside.stillAirRIp + sum(layers);
  return (1 - share) * still + share * open;
}

const sum = (layers: readonly Layer[]): number => layers.reduce((total, l) => total + l.rIp, 0);

/** Writes the films and layers of a stack to the working. */
export function writeLayers(assembly: Assembly, tape: Tape | undefined): void {
  const { inside, outside } = assembly;
  tape?.step("R_si", `film inside: ${inside.says}`, inside.rIp, "h ft2 F/Btu", inside.clause);
  for (const l of assembly.layers) {
    tape?.step(`R_${l.row}`, `${l.name}: ${l.says}`, l.rIp, "h ft2 F/Btu", l.source);
  }
  tape?.step("R_se", `film outside: ${outside.says}`, outside.rIp, "h ft2 F/Btu", outside.clause);
}

/**
 * Total R of a stack of layers, air to air.
 * @returns h ft2 F/Btu
 * Source: ISO 6946:2017 6.7.1 and 6.9; ASHRAE Handbook Fundamentals 2021 ch. 27.
 */
export function stackR(assembly: Assembly, tape?: Tape): number {
  writeLayers(assembly, tape);
  const rIp = totalRIp(assembly);
  if (rIp <= 0) {
    throw new OutOfRange("The total R is 0", "no layer and no film resists heat", "Give thicknesses or a film");
  }
  if (assembly.ventilated !== undefined) {
    const { share } = assembly.ventilated;
    tape?.step("w", "(A_v - 500) / 1000, openings A_v in mm2 per m", share, "", "ISO 6946:2017 6.9.3");
    tape?.step("R_T", "(1 - w) R_unventilated + w R_ventilated", rIp, "h ft2 F/Btu", "ISO 6946:2017 6.9.3");
  } else tape?.step("R_T", "R_si + sum R + R_se", rIp, "h ft2 F/Btu", SERIES);
  return rIp;
}

/** A layer or film of the schedule. */
export interface ScheduleRow {
  readonly name: string;
  /** undefined for a film */
  readonly thicknessIn: number | undefined;
  readonly rIp: number;
  /** R from the inside air up to and with this row */
  readonly totalIp: number;
}

/** R layer by layer with the running total. */
export function rSchedule(assembly: Assembly, tape?: Tape): readonly ScheduleRow[] {
  const rows: ScheduleRow[] = [];
  let totalIp = 0;
  const add = (name: string, thicknessIn: number | undefined, rIp: number) => {
    totalIp += rIp;
    rows.push({ name, thicknessIn, rIp, totalIp });
  };
  writeLayers(assembly, tape);
  add("inside film", undefined, assembly.inside.rIp);
  for (const l of assembly.layers) add(l.name, l.thicknessIn, l.rIp);
  for (const l of assembly.dropped) add(`${l.name} (not counted: ventilated)`, l.thicknessIn, 0);
  add("outside film", undefined, assembly.outside.rIp);
  if (assembly.ventilated !== undefined) add("slightly ventilated cavity", undefined, totalRIp(assembly) - totalIp);
  return rows;
}
