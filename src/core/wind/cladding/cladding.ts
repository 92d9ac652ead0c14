import { asce } from "../../kit/edition.ts";
import { type LoadLevel, windLevelFactor, windLevelText } from "../../kit/load-level.ts";
import { within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { directedPressure, directedSymbol, type RoofWind } from "../directionality.ts";
import { LOW_RISE_FT } from "../edge.ts";
import { type EnclosureClass, internalCoefficient } from "../enclosure.ts";
import { CLAUSE } from "../tables/clauses.ts";
import { type Coefficients, claddingCoefficients } from "./cladding-coefficients.ts";
import { addsWall, isOverhang, type Surface } from "./cladding-figure.ts";
import type { GivenCoefficient } from "./given-coefficients.ts";

/** Least net pressure on components and cladding, each way, strength level. */
export const LEAST_NET_PSF = 16;
/** Above this tributary area a component may take the main-frame pressures. */
const LARGE_AREA_FT2 = 700;

export interface CladdingInput extends RoofWind {
  readonly surface: Surface;
  /** 4 or 5 on walls; 1', 1, 2, 2', 3, 3' on roofs */
  readonly zone: string;
  /** effective wind area, ft2 */
  readonly areaFt2: number;
  readonly slopeDeg: number | undefined;
  readonly enclosure: EnclosureClass;
  readonly level: LoadLevel;
  /** mean roof height, ft, only held against the limit of the method */
  readonly heightFt: number | undefined;
  /** coefficients that the reader took from the figure; used instead of those held here, none where empty */
  readonly given: readonly GivenCoefficient[];
}

/** Net pressure on a surface: toward it above 0, away from it below 0. */
export interface NetPressure {
  readonly towardPsf: number;
  readonly awayPsf: number;
}

/**
 * Net pressures on components and cladding of a building up to 60 ft, with the internal pressure of the worse sign and the least
 * net pressure of 16 psf each way (strength level).
 * @throws BadInput for a zone that the figure does not have, OutOfRange above 60 ft, for open buildings, and where the
 * coefficients of a figure are not held here and none are given
 * Source: ASCE/SEI 7-10 Eq. 30.4-1, 7-16 and 7-22 Eq. 30.3-1, section 30.2.2.
 */
export function claddingPressure(input: CladdingInput, tape?: Tape): NetPressure {
  const { areaFt2, level, heightFt, edition } = input;
  if (heightFt !== undefined) {
    within("The mean roof height", heightFt, 0, LOW_RISE_FT, "ft", asce(edition, CLAUSE.claddingLowRise));
  }
  if (areaFt2 > LARGE_AREA_FT2) {
    tape?.caution(
      `Tributary areas above ${LARGE_AREA_FT2} ft2 may take the main-frame pressures (${asce(edition, "30.2.3")}).`,
    );
  }
  const { toward, away } = netPressure(input, tape);
  const factor = windLevelFactor(level);
  const net: NetPressure = {
    towardPsf: factor * Math.max(toward, LEAST_NET_PSF),
    awayPsf: factor * Math.min(away, -LEAST_NET_PSF),
  };
  const least = `at least ${LEAST_NET_PSF} psf each way${windLevelText(level)}`;
  tape?.step("p", `toward and away, ${least}`, [[net.towardPsf, net.awayPsf]], "psf", asce(edition, "30.2.2"));
  return net;
}

/** Net pressures at strength level, before the least. */
function netPressure(input: CladdingInput, tape: Tape | undefined): Coefficients {
  const { surface, edition } = input;
  const gcp = claddingCoefficients(input, tape);
  if (isOverhang(surface) && !addsWall(surface, edition)) return overhangPressure(input, gcp, tape);
  const gcpi = internalCoefficient(input.enclosure, edition, tape);
  const q = directedPressure(input, tape);
  const symbol = directedSymbol(edition, "q");
  const clause = asce(edition, CLAUSE.claddingEquation);
  const toward = q * (gcp.toward + gcpi);
  const away = q * (gcp.away - gcpi);
  tape?.step("p toward", `${symbol} (GCp + GCpi), internal suction`, toward, "psf", clause);
  tape?.step("p away", `${symbol} (GCp - GCpi), internal pressure`, away, "psf", clause);
  if (!addsWall(surface, edition)) return { toward, away };
  const both = away - wallBeside(input, tape);
  tape?.step("p away", "roof zone + adjacent wall zone", both, "psf", OVERHANG_NOTE);
  return { toward, away: both };
}

/** Pressure of the wall beside an overhang, which lifts it from below. */
function wallBeside(input: CladdingInput, tape: Tape | undefined): number {
  const wall = netPressure({ ...input, surface: "wall", zone: "4", slopeDeg: undefined, given: [] }, undefined).toward;
  tape?.step("p wall", "pressure toward the wall beside it, under the overhang", wall, "psf", OVERHANG_NOTE);
  tape?.assume(
    "Overhang: the sum of the roof zone and the wall zone beside it, each with its internal pressure, as the printed table adds them; on the safe side.",
  );
  return wall;
}

const OVERHANG_NOTE = "2023 Florida Building Code, Residential, Table R301.2(2) note g";

/** An overhang whose figure holds upper and lower face together: no internal pressure. */
function overhangPressure(input: CladdingInput, gcp: Coefficients, tape: Tape | undefined): Coefficients {
  const { edition } = input;
  tape?.step("GCpi", "overhang: GCp holds both faces", 0, "", asce(edition, CLAUSE.cladding));
  const q = directedPressure(input, tape);
  const away = q * gcp.away;
  tape?.step("p away", `${directedSymbol(edition, "q")} GCp`, away, "psf", asce(edition, CLAUSE.claddingEquation));
  return { toward: q * gcp.toward, away };
}
