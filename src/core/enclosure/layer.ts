import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { airLayerRM2KW } from "./air-layer.ts";
import { M_IN_INCH, R_IP_IN_RSI, W_MK_IN_BTU_IN } from "./border.ts";
import { parseResistance, type Resistance } from "./layer-heat.ts";
import { NO_ROLE, parseRole, type Role } from "./layer-role.ts";
import { materialSd, parseVapor, type SdCurve } from "./layer-vapor.ts";
import { findMaterial, unknownMaterial } from "./materials.ts";
import type { HeatFlow } from "./tables/films.ts";
import type { HeatData, Material } from "./tables/materials.ts";
import { woodConductivityWmK } from "./wood.ts";

/** One row of a range of layers, as the reader hands it over: texts are still to be understood. */
export interface LayerRow {
  /** row of the range, from 1 */
  readonly row: number;
  readonly material: string;
  readonly thicknessIn: number | undefined;
  /** R of the layer, R per inch or conductivity: "3.5", "R 4.2/in", "k 0.25", "0.036 W/mK" */
  readonly resistance?: string | undefined;
  /** "0.5", "2 perm-in", "mu 100", "sd 2 m" */
  readonly vapor?: string | undefined;
  /** wet-cup figure, in the same forms */
  readonly vaporWet?: string | undefined;
  /** "air barrier", "ventilated cavity" */
  readonly role?: string | undefined;
}

/** A layer ready to calculate with. */
export interface Layer {
  readonly row: number;
  readonly name: string;
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
}

const OWN_ROW = "the row's own figure";

/**
 * Understands one row of layers.
 * @param flow direction of heat flow, for air layers
 * @throws BadInput naming the row: unknown material, no thickness, unreadable figure
 */
export function resolveLayer(row: LayerRow, flow: HeatFlow, tape?: Tape): Layer {
  const where = `row ${row.row}`;
  const material = findMaterial(row.material);
  const own = row.resistance === undefined ? undefined : parseResistance(row.resistance, where, tape);
  const role = row.role === undefined ? NO_ROLE : parseRole(row.role, where);
  const thicknessIn = row.thicknessIn ?? 0;
  const ownSd = row.vapor === undefined ? undefined : parseVapor(row.vapor, row.vaporWet, thicknessIn, where);
  const heat = own ? ownHeat(own, row, where) : knownHeat(material, row, ownSd !== undefined, flow, where, tape);
  if (material?.heatCaution !== undefined && own === undefined) tape?.caution(material.heatCaution);
  return {
    row: row.row,
    name: row.material,
    thicknessIn,
    rIp: heat.rIp,
    says: heat.says,
    source: heat.source,
    sd: ownSd ?? materialSd(material?.vapor, thicknessIn),
    sdSource: ownSd === undefined ? (material?.vaporSource ?? "") : OWN_ROW,
    role,
    vaporCaution: ownSd === undefined ? material?.vaporCaution : undefined,
  };
}

interface Heat {
  readonly rIp: number;
  readonly says: string;
  readonly source: string;
}

function ownHeat(own: Resistance, row: LayerRow, where: string): Heat {
  if (own.kind === "R") return { rIp: own.rIp, says: `R as given`, source: OWN_ROW };
  const thicknessIn = needThickness(row, where);
  const k = own.kBtuIn;
  return { rIp: thicknessIn / k, says: `${plain(thicknessIn)} in / k ${plain(k)}`, source: OWN_ROW };
}

function knownHeat(
  material: Material | undefined,
  row: LayerRow,
  hasVapor: boolean,
  flow: HeatFlow,
  where: string,
  tape: Tape | undefined,
): Heat {
  if (material === undefined) {
    // A sheet of the office's own, with a permeance and no thickness, is a membrane: no R is counted.
    if (hasVapor && (row.thicknessIn ?? 0) === 0) {
      return { rIp: 0, says: "a sheet without thickness, no R counted", source: OWN_ROW };
    }
    throw unknownMaterial(row.material, where);
  }
  const heat: HeatData = material.heat;
  if (heat.kind === "R") {
    return { rIp: heat.rM2KW * R_IP_IN_RSI, says: `R whatever the thickness`, source: material.heatSource };
  }
  const thicknessIn = needThickness(row, where);
  if (heat.kind === "air") {
    const rM2KW = airLayerRM2KW(thicknessIn * M_IN_INCH, flow, heat.emittances, tape);
    return {
      rIp: rM2KW * R_IP_IN_RSI,
      says: `${plain(thicknessIn)} in, heat flow ${flow}`,
      source: material.heatSource,
    };
  }
  const kWmK = heat.kind === "k" ? heat.kWmK : woodConductivityWmK(heat.specificGravity, heat.moisturePct, tape);
  const kBtuIn = kWmK / W_MK_IN_BTU_IN;
  return {
    rIp: thicknessIn / kBtuIn,
    says: `${plain(thicknessIn)} in / k ${plain(kBtuIn)}`,
    source: material.heatSource,
  };
}

function needThickness(row: LayerRow, where: string): number {
  if (row.thicknessIn !== undefined && row.thicknessIn > 0) return row.thicknessIn;
  throw new BadInput(
    `The ${row.material} in ${where} has no thickness`,
    "its R comes from thickness and conductivity",
    'Give the thickness in inches, or text such as "38 mm", in the second column',
  );
}
