import { BadInput, OutOfRange, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { cToF } from "../air/si.ts";
import { type Zone, zoneColumn, zoneName } from "../climate/zone.ts";
import type { Assembly } from "../layers/assembly.ts";
import { totalRIp } from "../layers/r-value.ts";
import { CLASS_III_R, RETARDER_CLAUSE } from "../tables/retarders.ts";
import type { Stud } from "./retarder.ts";

const CLAUSE = "steady temperature by R: T = T_o + (T_i - T_o) R_out / R_T (ASHRAE Handbook Fundamentals 2021 ch. 27)";
/** Cavity R that the code table's walls are filled with; an assumption of this comparison, not of the table. */
const CAVITY_R: Readonly<Record<Stud, number>> = { "2x4": 13, "2x6": 20 };

/**
 * Least share of the total R that must lie outboard of a plane to keep it at the dew point of the indoor air or above.
 * @param insideC above `outsideC`
 * @returns share, 0 to 1
 * @throws OutOfRange where the inside is not the warmer side
 */
export function leastExteriorShare(insideC: number, dewC: number, outsideC: number, tape?: Tape): number {
  if (!(insideC > outsideC)) {
    throw new OutOfRange(
      `The indoor ${plain(cToF(insideC))} F is not above the outdoor ${plain(cToF(outsideC))} F`,
      "the rule is for the heating season",
      "Use a winter design temperature outdoors",
    );
  }
  const share = Math.max(0, (dewC - outsideC) / (insideC - outsideC));
  tape?.step("T_d", "dew point of the indoor air", cToF(dewC), "F", "ISO 13788:2012 Annex E");
  tape?.step("R_out/R_T", "at least (T_d - T_o) / (T_i - T_o)", share, "", CLAUSE);
  return share;
}

/**
 * Share of the total R, air to air, that lies outboard of the inner face of the air barrier.
 * @throws BadInput where no layer is marked as the air barrier
 */
export function exteriorShareOf(assembly: Assembly, tape?: Tape): number {
  const at = assembly.layers.findIndex((l) => l.role.kind === "air barrier");
  if (at < 0) {
    throw new BadInput(
      "No layer is marked as the air barrier",
      "the share is counted from its inner face outward",
      'Write "air barrier" in the role column of that layer',
    );
  }
  const inboard = assembly.layers.slice(0, at).reduce((r, l) => r + l.rIp, assembly.inside.rIp);
  const total = totalRIp(assembly);
  const share = (total - inboard) / total;
  tape?.step("R_in", "inside film and layers inboard of the air barrier", inboard, "h ft2 F/Btu", CLAUSE);
  tape?.step("R_T", "air to air", total, "h ft2 F/Btu", CLAUSE);
  tape?.step("R_out/R_T", "1 - R_in / R_T", share, "", CLAUSE);
  return share;
}

/**
 * Share that the code's table of continuous insulation implies for a wall of its kind, without films: ci / (ci + cavity).
 * @returns undefined where the table has no row for the zone
 * Source: IRC 2021 Table R702.7(2) and (3), with cavities of R-13 (2x4) and R-20 (2x6).
 */
export function codeExteriorShare(zone: Zone, stud: Stud, tape?: Tape): { share: number; ci: number } | undefined {
  const row = CLASS_III_R[zoneColumn(zone, tape)];
  if (row === undefined) return undefined;
  const ci = row[stud];
  const share = ci / (ci + CAVITY_R[stud]);
  tape?.step("code share", `${ci} / (${ci} + ${CAVITY_R[stud]})`, share, "", RETARDER_CLAUSE["2021"]);
  return { share, ci };
}

/** A share with what it belongs to and what it means. */
export interface ShareRow {
  readonly what: string;
  readonly share: number;
  readonly remark: string;
}

/** The shares side by side: needed by dew point, of this wall, and implied by the code. */
export function exteriorShareRows(
  least: number,
  own: number,
  code: { readonly zone: Zone; readonly stud: Stud } | undefined,
  tape?: Tape,
): readonly ShareRow[] {
  const rows: ShareRow[] = [
    { what: "needed by dew point", share: least, remark: "least share of R outboard of the air barrier" },
    {
      what: "this wall",
      share: own,
      remark: own >= least ? "enough" : "too little: the air barrier is below the dew point",
    },
  ];
  if (code !== undefined) rows.push(codeRow(own, code, tape));
  return rows;
}

function codeRow(own: number, { zone, stud }: { zone: Zone; stud: Stud }, tape: Tape | undefined): ShareRow {
  const what = `code, zone ${zoneName(zone)}, ${stud}`;
  const found = codeExteriorShare(zone, stud, tape);
  if (found === undefined) return { what, share: 0, remark: "no row in the table: no least R there" };
  tape?.caution("The code's table is made for stud cavities; for a wall without them its share is a comparison only.");
  const met = own >= found.share ? "met by this wall" : "not met by this wall";
  const table = `R-${plain(found.ci)} outside a cavity of R-${CAVITY_R[stud]}, for a class III retarder`;
  return { what, share: found.share, remark: `${met}: ${table}` };
}
