import { BadInput, OutOfRange, plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { askThin } from "../../kit/thin-layer.ts";
import { M_IN_INCH, R_IP_IN_RSI, W_MK_IN_BTU_IN } from "../air/si.ts";
import type { HeatFlow } from "../tables/films.ts";
import type { Material, WoodKind } from "../tables/materials.ts";
import { airLayerRM2KW } from "./air-layer.ts";
import type { Resistance } from "./layer-heat.ts";
import type { Role } from "./layer-role.ts";
import { materialSd, type OwnVapor, ownSd, type SdCurve } from "./layer-vapor.ts";
import { woodConductivityWmK } from "./wood.ts";

/** One row of a range of layers, its texts understood. */
export interface LayerInput {
  /** row of the range, from 1 */
  readonly row: number;
  readonly name: string;
  readonly thicknessIn: number | undefined;
  /** the built-in material of that name */
  readonly material: Material | undefined;
  /** the row's own figures, which win over the material's */
  readonly resistance: Resistance | undefined;
  readonly vapor: OwnVapor | undefined;
  readonly role: Role;
}

/** A layer ready to calculate with. */
export interface Layer {
  readonly row: number;
  readonly name: string;
  /** the built-in material's own name, undefined for an office's own row */
  readonly material: string | undefined;
  readonly thicknessIn: number;
  /** h ft2 F/Btu */
  readonly rIp: number;
  /** how its R comes about, for the working */
  readonly says: string;
  readonly source: string;
  readonly sd: SdCurve | undefined;
  readonly sdSource: string;
  readonly role: Role;
  /** what to know of a built-in vapor figure */
  readonly vaporCaution: string | undefined;
  readonly wood: WoodKind | undefined;
  readonly densityKgM3: number | undefined;
}

const OWN_ROW = "the row's own figure";
/** No layer of a building comes near either limit; beyond them a unit is wrong. */
const THICKEST_IN = 120;
const GREATEST_R_IP = 200;
/** An own figure this many times off the built-in one is asked about. */
const FAR_OFF = 2;

/**
 * Works out one layer.
 * @param flow direction of heat flow, for air layers
 * @throws BadInput naming the row that lacks a thickness; OutOfRange for a thickness above 120 in or an R above 200
 */
export function resolveLayer(input: LayerInput, flow: HeatFlow, tape?: Tape): Layer {
  const { row, name, material, resistance: own, role } = input;
  const where = `row ${row}`;
  const thicknessIn = input.thicknessIn ?? 0;
  within(`The thickness of the ${name} in ${where}`, thicknessIn, 0, THICKEST_IN, "in", "layers of a building");
  askThinLayer(input, tape);
  const ownCurve = input.vapor === undefined ? undefined : ownSd(input.vapor, thicknessIn, where);
  const heat = own === undefined ? knownHeat(input, flow, where, tape) : ownHeat(own, input, where, tape);
  within(`The R of the ${name} in ${where}`, heat.rIp, 0, GREATEST_R_IP, "h ft2 F/Btu", "layers of a building");
  if (own === undefined) {
    if (material?.heatCaution !== undefined) tape?.caution(material.heatCaution);
  } else askFarOff(heat.rIp, input, flow, where, tape);
  return {
    row,
    name,
    material: material?.name,
    thicknessIn,
    ...heat,
    sd: ownCurve ?? materialSd(material?.vapor, thicknessIn),
    sdSource: ownCurve === undefined ? (material?.vaporSource ?? "") : OWN_ROW,
    role,
    vaporCaution: ownCurve === undefined ? material?.vaporCaution : undefined,
    wood: material?.wood,
    densityKgM3: material?.densityKgM3,
  };
}

/** Asks about the thickness of a layer that seems to be in feet; a membrane or a sheet of metal has a fixed R and may be as thin. */
export function askThinLayer({ row, name, material, thicknessIn }: LayerInput, tape: Tape | undefined): void {
  const massive = material?.heat.kind === "k" || material?.heat.kind === "wood";
  if (massive) askThin(`${name} in row ${row}`, thicknessIn ?? 0, tape);
}

interface Heat {
  readonly rIp: number;
  readonly says: string;
  readonly source: string;
}

function ownHeat(own: Resistance, input: LayerInput, where: string, tape: Tape | undefined): Heat {
  if (own.kind === "R") return { rIp: own.rIp, says: "R as given", source: OWN_ROW };
  const wood = own.kind === "wood" ? woodConductivityWmK(own.specificGravity, own.moisturePct, tape) : undefined;
  const kBtuIn = own.kind === "k" ? own.kBtuIn : (wood ?? 0) / W_MK_IN_BTU_IN;
  return overK(kBtuIn, needThickness(input, where), OWN_ROW);
}

function overK(kBtuIn: number, thicknessIn: number, source: string): Heat {
  return { rIp: thicknessIn / kBtuIn, says: `${plain(thicknessIn)} in / k ${plain(kBtuIn)}`, source };
}

/** A figure far off the built-in one is more often a slip of the unit than a better material. */
function askFarOff(rIp: number, input: LayerInput, flow: HeatFlow, where: string, tape: Tape | undefined): void {
  const { material, thicknessIn } = input;
  if (tape === undefined || material === undefined || !(thicknessIn !== undefined && thicknessIn > 0)) return;
  const known = comparable(input, flow, where);
  if (known === undefined || known === 0 || (rIp <= known * FAR_OFF && rIp * FAR_OFF >= known)) return;
  tape.caution(
    `The ${input.name} in ${where} has an R of ${plain(Number(rIp.toPrecision(3)))} by its own figure, where ${plain(thicknessIn)} in of ${material.name} has ${plain(Number(known.toPrecision(3)))}: is it the R of the whole layer, in h ft2 F/Btu?`,
  );
}

/** The built-in figure; undefined beyond what it covers, where an own figure stands without one to compare it with. */
function comparable(input: LayerInput, flow: HeatFlow, where: string): number | undefined {
  try {
    return knownHeat(input, flow, where, undefined).rIp;
  } catch (refusal) {
    if (refusal instanceof OutOfRange) return undefined;
    throw refusal;
  }
}

function knownHeat(input: LayerInput, flow: HeatFlow, where: string, tape: Tape | undefined): Heat {
  const { material } = input;
  const sheet = input.vapor !== undefined && (input.thicknessIn ?? 0) === 0 && material?.heat.kind !== "R";
  if (material === undefined || sheet) {
    return { rIp: 0, says: "a sheet without thickness, no R counted", source: OWN_ROW };
  }
  const { heat, heatSource } = material;
  if (heat.kind === "R") return { rIp: heat.rM2KW * R_IP_IN_RSI, says: "R whatever the thickness", source: heatSource };
  const thicknessIn = needThickness(input, where);
  if (heat.kind === "air") {
    const rM2KW = airLayerRM2KW(thicknessIn * M_IN_INCH, flow, heat.emittances, tape);
    return { rIp: rM2KW * R_IP_IN_RSI, says: `${plain(thicknessIn)} in, heat flow ${flow}`, source: heatSource };
  }
  const kWmK = heat.kind === "k" ? heat.kWmK : woodConductivityWmK(heat.specificGravity, heat.moisturePct, tape);
  return overK(kWmK / W_MK_IN_BTU_IN, thicknessIn, heatSource);
}

function needThickness(input: LayerInput, where: string): number {
  if (input.thicknessIn !== undefined && input.thicknessIn > 0) return input.thicknessIn;
  throw new BadInput(
    `The ${input.name} in ${where} has no thickness`,
    "its R comes from thickness and conductivity",
    'Give the thickness in inches, or text such as "38 mm", in the thickness column',
  );
}
