import { plain } from "../../kit/refusal.ts";
import { KG_M3_IN_PCF, M_IN_INCH, permFromSd, R_IP_IN_RSI, W_MK_IN_BTU_IN } from "../air/si.ts";
import type { Material } from "../tables/materials.ts";
import { materialSd, sdAtM } from "./layer-vapor.ts";
import { woodConductivityWmK } from "./wood.ts";

/** Mean humidity of a dry-cup test, by which vapor figures are listed. */
const DRY_CUP_RH = 0.25;

/** A built-in material in the units of the trade. Undefined where it has no such figure. */
export interface MaterialFacts {
  readonly name: string;
  /** h ft2 F/Btu for an inch */
  readonly rPerIn: number | undefined;
  /** Btu in/(h ft2 F) */
  readonly kBtuIn: number | undefined;
  /** perm for an inch, by dry cup */
  readonly permIn: number | undefined;
  readonly mu: number | undefined;
  readonly densityPcf: number | undefined;
  /** what its figures go by */
  readonly thickness: string;
  readonly source: string;
}

export function materialFacts(m: Material): MaterialFacts {
  const kWmK = conductivity(m);
  const kBtuIn = kWmK === undefined ? undefined : kWmK / W_MK_IN_BTU_IN;
  const mu = muOf(m);
  return {
    name: m.name,
    rPerIn: kBtuIn === undefined ? undefined : 1 / kBtuIn,
    kBtuIn,
    permIn: mu === undefined ? undefined : permFromSd(mu * M_IN_INCH),
    mu,
    densityPcf: m.densityKgM3 === undefined ? undefined : m.densityKgM3 / KG_M3_IN_PCF,
    thickness: thicknessOf(m),
    source: sourceOf(m),
  };
}

function conductivity({ heat }: Material): number | undefined {
  if (heat.kind === "k") return heat.kWmK;
  return heat.kind === "wood" ? woodConductivityWmK(heat.specificGravity, heat.moisturePct) : undefined;
}

function muOf({ vapor }: Material): number | undefined {
  if (vapor === undefined || vapor.kind === "sd") return undefined;
  const sd = materialSd(vapor, 1);
  return sd === undefined ? undefined : sdAtM(sd, DRY_CUP_RH) / M_IN_INCH;
}

function thicknessOf({ heat, vapor }: Material): string {
  const says: string[] = [];
  if (heat.kind === "R")
    says.push(heat.rM2KW === 0 ? "sheet, no R" : `R ${short(heat.rM2KW * R_IP_IN_RSI)} whatever the thickness`);
  if (heat.kind === "air") says.push("by thickness and direction of heat");
  const sd = vapor?.kind === "sd" ? materialSd(vapor, 0) : undefined;
  if (sd !== undefined) says.push(`${short(permFromSd(sdAtM(sd, DRY_CUP_RH)))} perm whatever the thickness`);
  return says.length === 0 ? "by thickness" : says.join("; ");
}

function sourceOf(m: Material): string {
  const vapor = m.vaporSource === undefined ? "" : `; vapor: ${m.vaporSource}`;
  const cautions = [m.heatCaution, m.vaporCaution].filter((c) => c !== undefined);
  return [`heat: ${m.heatSource}${vapor}`, ...cautions].join(". ");
}

const short = (value: number): string => plain(Number(value.toPrecision(3)));
