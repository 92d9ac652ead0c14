import { plain } from "../kit/refusal.ts";
import type { Cell, Table, Tape } from "../kit/tape.ts";
import type { Assembly } from "./assembly.ts";
import { cToF } from "./border.ts";
import { OZ_FT2_IN_KG_M2 } from "./dew-profile.ts";
import type { WettingYearPicture } from "./pictures.ts";
import { faceName, moistWall } from "./profile.ts";
import { PIECE_R_M2KW, piecesOf, subdivide } from "./vapor-path.ts";
import { type DryOut, type MonthAir, wettingYear } from "./wetting-year.ts";

const CLAUSE = "ISO 13788:2012 6.4 to 6.6";

/**
 * A year of condensation and drying, month by month, with the verdict in a last row.
 * @param limitOzFt2 most water that may stand, oz/ft2, above 0
 * @returns rows: month, outdoor F, outdoor Pa, indoor Pa, change oz/ft2, standing oz/ft2, where
 * @throws BadInput for a layer without a vapor figure
 * Source: ISO 13788:2012 clause 6.
 */
export function dewMonths(
  assembly: Assembly,
  air: readonly MonthAir[],
  dryOut: DryOut,
  limitOzFt2: number,
  tape?: Tape,
): Table {
  const wall = moistWall(assembly, tape);
  const split = { ...wall, layers: subdivide(wall.layers, PIECE_R_M2KW) };
  const year = wettingYear(split, air, dryOut);
  const names = nodeNames(assembly, wall);
  const oz = (kgM2: number) => kgM2 * OZ_FT2_IN_KG_M2;
  const rows: Cell[][] = year.months.map((m) => [
    m.month.name,
    cToF(m.month.outsideC),
    m.month.outsidePa,
    m.month.insidePa,
    oz(m.changeKgM2),
    oz(m.totalKgM2),
    wettest(m.standing, names),
  ]);
  for (const m of year.months) {
    const where = m.rates.map((r) => `${names[r.node] ?? ""} ${r.kgM2s.toExponential(3)} kg/(m2 s)`).join("; ");
    tape?.step(`M ${m.month.name}`, where === "" ? "no water" : where, m.totalKgM2, "kg/m2", CLAUSE);
  }
  const verdict = yearVerdict(oz(year.peakKgM2), oz(year.endKgM2), limitOzFt2);
  rows.push(["year", "", "", "", oz(year.endKgM2), oz(year.peakKgM2), verdict]);
  tape?.show(picture(rows, limitOzFt2, verdict));
  tape?.step("year", "months, then the end and the peak of the year with the verdict", rows, "oz/ft2", CLAUSE);
  return rows;
}

/** The verdict of a year against a limit, as a sentence. Amounts in oz/ft2. */
function yearVerdict(peak: number, end: number, limit: number): string {
  const shown = (oz: number) => plain(Number(oz.toPrecision(3)));
  if (peak === 0) return "no condensation";
  if (end > 0) return `does not dry within the year: ${shown(end)} oz/ft2 stays`;
  if (peak > limit) return `dries, but the peak of ${shown(peak)} oz/ft2 is above the limit of ${shown(limit)}`;
  return `dries within the year, peak ${shown(peak)} oz/ft2 within the limit of ${shown(limit)}`;
}

/** What each node of the split wall is called. */
function nodeNames(assembly: Assembly, wall: ReturnType<typeof moistWall>): readonly string[] {
  const names = ["inside surface"];
  wall.layers.forEach((layer, i) => {
    const pieces = piecesOf(layer, PIECE_R_M2KW);
    for (let p = 1; p < pieces; p++) names.push(`in ${layer.name}, ${plain(Math.round((100 * p) / pieces))} % through`);
    names.push(faceName(assembly.layers, i));
  });
  return names;
}

function wettest(standing: ReadonlyMap<number, number>, names: readonly string[]): string {
  let best = "";
  let most = 0;
  for (const [node, amount] of standing) {
    if (amount > most) {
      most = amount;
      best = names[node] ?? "";
    }
  }
  return best;
}

function picture(rows: readonly (readonly Cell[])[], limitOzFt2: number, verdict: string): WettingYearPicture {
  return {
    kind: "wetting-year",
    alt: `Water in the wall month by month: ${verdict}.`,
    months: rows
      .slice(0, 12)
      .map((r) => ({ name: String(r[0]), changeOzFt2: Number(r[4]), standingOzFt2: Number(r[5]) })),
    limitOzFt2,
  };
}
