import { BadInput, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { equilibriumMoisturePct } from "../../wood/moisture/moisture.ts";
import { saturationPressurePa } from "../air/saturation.ts";
import { cToF } from "../air/si.ts";
import type { Assembly } from "../layers/assembly.ts";
import { moistWall } from "./profile.ts";
import { pieceRM2KW, piecesOf, subdivide } from "./vapor-path.ts";
import { type DryOut, type MonthAir, monthPressures } from "./wetting-year.ts";

/** Wood decays from this moisture content on: fungi need at least 20 %. */
const DECAY_PCT = 20;
/** Mold needs 80 % at a face in the mean of thirty days, at 41 to 104 F. */
const MOLD = {
  rhShare: 0.8,
  coldC: 5,
  hotC: 40,
  clause: "2009 criterion: 30-day mean surface humidity under 80 % at 41 to 104 F",
};
const DECAY_CLAUSE = "fungi need at least 20 % (USDA FPL wood decay guidance)";
/** Range in which the equation of moisture holds. */
const EMC = { coldF: 30, dryPct: 5, wetPct: 95 };

/** A wood layer in a month. */
export interface WoodMonth {
  readonly layer: string;
  readonly month: string;
  /** mean of the layer, percent */
  readonly moisturePct: number;
  readonly limitPct: number;
  readonly verdict: string;
}

/**
 * Moisture content of each wood layer, month by month: the mean over the layer of what its air would bring wood to, and the humidity at its faces.
 * @throws BadInput for a wall without a wood layer, or a layer without a vapor figure
 * Source: ISO 13788:2012 clause 6 for the humidity; USDA FPL Wood Handbook GTR-190 eq. 4-5 for the moisture.
 */
export function dewWood(
  assembly: Assembly,
  air: readonly MonthAir[],
  dryOut: DryOut,
  tape?: Tape,
): readonly WoodMonth[] {
  const wall = moistWall(assembly, tape);
  const pieceR = pieceRM2KW(wall);
  const months = monthPressures({ ...wall, layers: subdivide(wall.layers, pieceR) }, air, dryOut);
  const rows: WoodMonth[] = [];
  let node = 0;
  wall.layers.forEach((moist, i) => {
    const pieces = piecesOf(moist, pieceR);
    const layer = assembly.layers[i];
    if (layer?.wood !== undefined) {
      for (const m of months) {
        const places = Array.from({ length: pieces + 1 }, (_, k) => ({
          tempC: m.temperaturesC[node + k] ?? 0,
          pressurePa: m.pressuresPa[node + k] ?? 0,
        }));
        rows.push(woodMonth(`row ${layer.row}, ${layer.name}`, m.name, places));
      }
    }
    node += pieces;
  });
  if (rows.length === 0) {
    throw new BadInput(
      "No layer is of wood that is known here",
      "moisture content is worked out for lumber, panels and sheathing of the built-in materials",
      "Name the wood layers as MATERIALS lists them",
    );
  }
  tape?.assume("each layer is in balance with the air of the month; thick wood lags behind by months");
  tape?.step("M", "worst of all layers and months", Math.max(...rows.map((r) => r.moisturePct)), "%", DECAY_CLAUSE);
  return rows;
}

interface Place {
  readonly tempC: number;
  readonly pressurePa: number;
}

function woodMonth(layer: string, month: string, places: readonly Place[]): WoodMonth {
  const humidities = places.map((p) => Math.min(1, p.pressurePa / saturationPressurePa(p.tempC, "ISO 13788")));
  const moistures = places.map((p, i) => moistureAt(p.tempC, humidities[i] ?? 0));
  const moisturePct = moistures.reduce((a, b) => a + b, 0) / moistures.length;
  const molds = [0, places.length - 1].some((i) => {
    const tempC = places[i]?.tempC ?? 0;
    return (humidities[i] ?? 0) > MOLD.rhShare && tempC >= MOLD.coldC && tempC <= MOLD.hotC;
  });
  return { layer, month, moisturePct, limitPct: DECAY_PCT, verdict: verdictOf(moisturePct, molds) };
}

/** Below freezing the equation's lowest temperature stands in, and at its ends the driest and wettest air that it knows. */
function moistureAt(tempC: number, rhShare: number): number {
  const tempF = Math.max(EMC.coldF, cToF(tempC));
  return equilibriumMoisturePct(tempF, Math.min(EMC.wetPct, Math.max(EMC.dryPct, 100 * rhShare)));
}

function verdictOf(moisturePct: number, molds: boolean): string {
  if (moisturePct >= DECAY_PCT) return `${plain(DECAY_PCT)} % or more: decay is possible`;
  return molds ? "above 80 % at a face: mold is possible" : "dry enough";
}

export const WOOD_LIMIT_SOURCES = [MOLD.clause, DECAY_CLAUSE] as const;
