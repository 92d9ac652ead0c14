import { plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { cToF, OZ_FT2_IN_KG_M2 } from "../air/si.ts";
import type { Assembly } from "../layers/assembly.ts";
import type { Layer } from "../layers/layer.ts";
import type { WettingYearPicture } from "./pictures.ts";
import { faceName, moistWall } from "./profile.ts";
import { type MoistWall, pieceRM2KW, piecesOf, subdivide } from "./vapor-path.ts";
import { type WaterLimit, waterLimit } from "./water-limit.ts";
import { type DryOut, type MonthAir, type MonthWater, type WettingYear, wettingYear } from "./wetting-year.ts";

const CLAUSE = "ISO 13788:2012 6.4 to 6.6";

/** A month in the units of the trade. */
export interface DewMonth {
  readonly name: string;
  readonly outdoorF: number;
  readonly outdoorPa: number;
  readonly indoorPa: number;
  /** water that came (above 0) or went, and what stands at the end, oz/ft2 */
  readonly changeOzFt2: number;
  readonly standingOzFt2: number;
  /** the place that holds most, "" where none does */
  readonly where: string;
}

/** A year of condensation and drying. */
export interface DewYear {
  /** from the first wet month */
  readonly months: readonly DewMonth[];
  readonly endOzFt2: number;
  readonly peakOzFt2: number;
  readonly verdict: string;
}

/** A place in the wall where water may stand. */
interface Place {
  readonly name: string;
  /** the layers that it touches */
  readonly beside: readonly Layer[];
}

/** The place whose greatest amount comes nearest its limit, or farthest past it. */
interface Worst {
  readonly name: string;
  readonly peakKgM2: number;
  readonly limit: WaterLimit;
}

/**
 * A year of condensation and drying, month by month, with a verdict by the limit of the place that comes nearest to it.
 * @param givenOzFt2 most water that may stand, oz/ft2, above 0; undefined: by the layers at each place (waterLimit)
 * @throws BadInput for a layer without a vapor figure
 * Source: ISO 13788:2012 clause 6; DIN 4108-3 5.2.2 for the limits.
 */
export function dewMonths(
  assembly: Assembly,
  air: readonly MonthAir[],
  dryOut: DryOut,
  givenOzFt2: number | undefined,
  tape?: Tape,
): DewYear {
  const wall = moistWall(assembly, tape);
  const pieceR = pieceRM2KW(wall);
  const year = wettingYear({ ...wall, layers: subdivide(wall.layers, pieceR) }, air, dryOut);
  const places = placesOf(assembly, wall, pieceR);
  writeMonths(year, places, tape);
  const given =
    givenOzFt2 === undefined ? undefined : { kgM2: givenOzFt2 / OZ_FT2_IN_KG_M2, says: "the limit that is given" };
  const worst = worstPlace(year, places, given);
  const verdict = verdictOf(year, worst);
  const months = year.months.map((m) => dewMonth(m, places));
  const limitOzFt2 = (worst?.limit ?? given ?? waterLimit([])).kgM2 * OZ_FT2_IN_KG_M2;
  if (worst !== undefined) tape?.step("limit", `${worst.name}: ${worst.limit.says}`, limitOzFt2, "oz/ft2", CLAUSE);
  tape?.show(picture(months, limitOzFt2, verdict));
  return { months, endOzFt2: oz(year.endKgM2), peakOzFt2: oz(year.peakKgM2), verdict };
}

const oz = (kgM2: number): number => kgM2 * OZ_FT2_IN_KG_M2;
const shown = (kgM2: number): string => plain(Number(oz(kgM2).toPrecision(3)));

function verdictOf(year: WettingYear, worst: Worst | undefined): string {
  if (year.peakKgM2 === 0 || worst === undefined) return "no condensation";
  if (year.endKgM2 > 0) return `does not dry within the year: ${shown(year.endKgM2)} oz/ft2 stays`;
  const limit = `the limit of ${shown(worst.limit.kgM2)}, ${worst.limit.says}`;
  const peak = `${shown(worst.peakKgM2)} oz/ft2 at ${worst.name}`;
  return worst.peakKgM2 > worst.limit.kgM2
    ? `dries, but the peak of ${peak} is above ${limit}`
    : `dries within the year, peak ${peak} within ${limit}`;
}

function worstPlace(year: WettingYear, places: readonly Place[], given: WaterLimit | undefined): Worst | undefined {
  // A limit that is given holds for the whole wall; those of the layers hold each for its place.
  if (given !== undefined) return { name: "the whole wall", peakKgM2: year.peakKgM2, limit: given };
  const peaks = new Map<number, number>();
  for (const m of year.months) {
    for (const [node, amount] of m.standing) peaks.set(node, Math.max(amount, peaks.get(node) ?? 0));
  }
  const all: Worst[] = [...peaks].map(([node, peakKgM2]) => {
    const place = places[node];
    return { name: place?.name ?? "", peakKgM2, limit: waterLimit(place?.beside ?? []) };
  });
  all.push({ name: "the whole wall", peakKgM2: year.peakKgM2, limit: waterLimit([]) });
  return all.reduce((worst, p) => (p.peakKgM2 / p.limit.kgM2 > worst.peakKgM2 / worst.limit.kgM2 ? p : worst));
}

/** What each node of the split wall is called, and the layers that it touches. */
function placesOf({ layers }: Assembly, wall: MoistWall, pieceR: number): readonly Place[] {
  const beside = (...near: readonly (Layer | undefined)[]) => near.filter((l) => l !== undefined);
  const places: Place[] = [{ name: "inside surface", beside: beside(layers[0]) }];
  wall.layers.forEach((layer, i) => {
    const pieces = piecesOf(layer, pieceR);
    for (let p = 1; p < pieces; p++) {
      const name = `in ${layer.name}, ${plain(Math.round((100 * p) / pieces))} % through`;
      places.push({ name, beside: beside(layers[i]) });
    }
    places.push({ name: faceName(layers, i), beside: beside(layers[i], layers[i + 1]) });
  });
  return places;
}

function writeMonths(year: WettingYear, places: readonly Place[], tape: Tape | undefined): void {
  if (tape === undefined) return;
  for (const m of year.months) {
    const rates = m.rates.map((r) => `${places[r.node]?.name ?? ""} ${r.kgM2s.toExponential(3)} kg/(m2 s)`).join("; ");
    tape.step(`M ${m.month.name}`, rates === "" ? "no water" : rates, m.totalKgM2, "kg/m2", CLAUSE);
  }
}

function dewMonth(m: MonthWater, places: readonly Place[]): DewMonth {
  const most = [...m.standing].reduce((best, n) => (n[1] > best[1] ? n : best), [-1, 0]);
  return {
    name: m.month.name,
    outdoorF: cToF(m.month.outsideC),
    outdoorPa: m.month.outsidePa,
    indoorPa: m.month.insidePa,
    changeOzFt2: oz(m.changeKgM2),
    standingOzFt2: oz(m.totalKgM2),
    where: places[most[0]]?.name ?? "",
  };
}

function picture(months: readonly DewMonth[], limitOzFt2: number, verdict: string): WettingYearPicture {
  return {
    kind: "wetting-year",
    alt: `Water in the wall month by month: ${verdict}.`,
    months: months.map(({ name, changeOzFt2, standingOzFt2 }) => ({ name, changeOzFt2, standingOzFt2 })),
    limitOzFt2,
  };
}
