import { asce } from "../../kit/edition.ts";
import { type LoadLevel, windLevelFactor, windLevelText } from "../../kit/load-level.ts";
import type { Tape } from "../../kit/tape.ts";
import { directedPressure, directedSymbol, type RoofWind } from "../directionality.ts";
import { CLAUSE } from "../tables/clauses.ts";
import { LEAST_NET_PSF } from "./cladding.ts";
import { claddingCoefficients } from "./cladding-coefficients.ts";
import type { CladdingRoof } from "./cladding-figure.ts";

/** GCpn of a parapet in the main frame. ASCE/SEI 7-10 section 27.4.5, 7-16 and 7-22 section 27.3.4; read in a page-scan of 7-22. */
const FRAME_GCPN = { windward: 1.5, leeward: -1 } as const;

/** A stretch of parapet: along the middle of a wall, or at a corner. */
export const PARAPET_ZONES = ["4", "5"] as const;
export type ParapetZone = (typeof PARAPET_ZONES)[number];

/** The roof zone behind each wall zone: edge and corner. */
const ROOF_BEHIND: Readonly<Record<ParapetZone, string>> = { "4": "2", "5": "3" };

export interface ParapetInput extends RoofWind {
  /** effective wind area of the component, ft2 */
  readonly areaFt2: number;
  readonly zone: ParapetZone;
  readonly roof: CladdingRoof;
  readonly slopeDeg: number | undefined;
  readonly level: LoadLevel;
}

/** Net pressure of both faces of a parapet: toward the roof above 0, away from it below 0. */
export interface ParapetPressure {
  readonly load: "frame, windward" | "frame, leeward" | "cladding, windward" | "cladding, leeward";
  readonly towardPsf: number;
  readonly awayPsf: number;
}

/**
 * Net pressures on a solid parapet, from the velocity pressure at its top. Frame: GCpn on both faces together. Cladding: windward parapet, the wall's
 * pressure in front and the roof's edge or corner suction behind; leeward parapet, the wall's pressure behind and its suction in front.
 * Internal pressure cancels between the faces of a solid parapet.
 * @throws as claddingCoefficients
 * Source: ASCE/SEI 7-10 sections 27.4.5, 30.9; 7-16 and 7-22 sections 27.3.4, 30.8 (the cladding rule from memory).
 */
export function parapetPressures(input: ParapetInput, tape?: Tape): readonly ParapetPressure[] {
  const { areaFt2, zone, roof, slopeDeg, level, edition } = input;
  const q = directedPressure(input, tape);
  const factor = windLevelFactor(level);
  const read = { areaFt2, given: [], edition };
  const wall = claddingCoefficients({ ...read, surface: "wall", zone, slopeDeg: undefined }, tape);
  const behind = claddingCoefficients({ ...read, surface: roof, zone: ROOF_BEHIND[zone], slopeDeg }, tape);
  const symbol = directedSymbol(edition, "qp");
  const say = (name: string, how: string, psf: number, clause: string) => {
    tape?.step(`p ${name}`, `${symbol} ${how}${windLevelText(level)}`, psf, "psf", clause);
    return psf;
  };
  const frame = asce(edition, CLAUSE.frameParapet);
  const cladding = `${asce(edition, CLAUSE.claddingParapet)} (rule from memory)`;
  const least = (psf: number) => factor * Math.max(psf, LEAST_NET_PSF);
  const rows: ParapetPressure[] = [
    toward("frame, windward", say("frame, windward", "GCpn 1.5", factor * q * FRAME_GCPN.windward, frame)),
    away("frame, leeward", say("frame, leeward", "GCpn -1.0", factor * q * FRAME_GCPN.leeward, frame)),
    toward(
      "cladding, windward",
      say("cladding, windward", "(GCp wall toward - GCp roof away)", least(q * (wall.toward - behind.away)), cladding),
    ),
    away(
      "cladding, leeward",
      say("cladding, leeward", "(GCp wall away - GCp wall toward)", -least(q * (wall.toward - wall.away)), cladding),
    ),
  ];
  tape?.assume("A solid parapet: internal pressure cancels between its faces.");
  tape?.caution(`The rule that puts the cladding pressures of a parapet together (${cladding}) was not seen in print.`);
  tape?.step(
    "p",
    "case, toward psf, away psf",
    rows.map((r) => [r.load, r.towardPsf, r.awayPsf]),
    "psf",
    cladding,
  );
  return rows;
}

function toward(load: ParapetPressure["load"], psf: number): ParapetPressure {
  return { load, towardPsf: psf, awayPsf: 0 };
}

function away(load: ParapetPressure["load"], psf: number): ParapetPressure {
  return { load, towardPsf: 0, awayPsf: psf };
}
