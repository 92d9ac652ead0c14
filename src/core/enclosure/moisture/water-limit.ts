import { plain } from "../../kit/refusal.ts";
import { M_IN_INCH } from "../air/si.ts";
import type { Layer } from "../layers/layer.ts";

const CLAUSE = "DIN 4108-3 5.2.2";
/** Most water at a face that takes up none, kg/m2. */
const FACE_KG_M2 = 0.5;
/** Most gain of the moisture content of wood by condensation, share of its mass. */
const WOOD_GAIN = { solid: 0.05, panel: 0.03 } as const;

/** Most water that may stand at a place in a wall. */
export interface WaterLimit {
  readonly kgM2: number;
  readonly says: string;
}

/**
 * Most water that may stand at a place between two layers, or inside one: 0.5 kg/m2, and no more than 5 % of the mass of solid wood or 3 % of
 * that of a wood panel beside it.
 * Source: DIN 4108-3 5.2.2.
 */
export function waterLimit(beside: readonly Layer[]): WaterLimit {
  const limits: WaterLimit[] = [{ kgM2: FACE_KG_M2, says: `0.5 kg/m2 (${CLAUSE})` }];
  for (const layer of beside) {
    if (layer.wood === undefined || layer.densityKgM3 === undefined || layer.thicknessIn === 0) continue;
    const share = WOOD_GAIN[layer.wood];
    const kgM2 = share * layer.densityKgM3 * layer.thicknessIn * M_IN_INCH;
    limits.push({ kgM2, says: `${plain(share * 100)} % of the mass of ${layer.name} (${CLAUSE})` });
  }
  return limits.reduce((least, l) => (l.kgM2 < least.kgM2 ? l : least));
}
