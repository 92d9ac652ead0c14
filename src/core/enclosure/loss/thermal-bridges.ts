import { plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";

const CLAUSE = "ISO 13789:2017: H_tb = sum(psi L) + sum(chi n)";
/** No junction of a timber building comes near these, Btu/(h ft F) and Btu/(h F). */
const GREATEST_PSI = 2;
const GREATEST_CHI = 2;

/** A line of loss (psi over a length) or a kind of point (chi, counted). */
export interface ThermalBridge {
  readonly row: number;
  readonly name: string;
  /** Btu/(h ft F) over a length in ft */
  readonly line: { readonly psi: number; readonly lengthFt: number; readonly source: string } | undefined;
  /** Btu/(h F) each */
  readonly points: { readonly chi: number; readonly count: number } | undefined;
}

/**
 * Heat that thermal bridges pass beside the plane parts.
 * @returns Btu/(h F); below 0 where inside corners outweigh the rest
 * @throws OutOfRange for a psi or chi that no junction has
 * Source: ISO 13789:2017; ISO 14683 for what psi and chi are.
 */
export function thermalBridges(bridges: readonly ThermalBridge[], tape?: Tape): number {
  let sum = 0;
  for (const { row, name, line, points } of bridges) {
    if (line !== undefined) {
      within(`The psi of ${name} in row ${row}`, line.psi, -1, GREATEST_PSI, "Btu/(h ft F)", CLAUSE);
      const h = line.psi * line.lengthFt;
      tape?.step(
        `psi L ${row}`,
        `${name}: ${plain(line.psi)} x ${plain(line.lengthFt)} ft`,
        h,
        "Btu/(h F)",
        line.source,
      );
      sum += h;
    }
    if (points !== undefined) {
      within(`The chi of ${name} in row ${row}`, points.chi, 0, GREATEST_CHI, "Btu/(h F)", CLAUSE);
      const h = points.chi * points.count;
      tape?.step(`chi n ${row}`, `${name}: ${plain(points.chi)} x ${plain(points.count)}`, h, "Btu/(h F)", CLAUSE);
      sum += h;
    }
  }
  tape?.assume("psi goes with outside dimensions of the areas");
  tape?.step("H_tb", "sum(psi L) + sum(chi n)", sum, "Btu/(h F)", CLAUSE);
  return sum;
}
