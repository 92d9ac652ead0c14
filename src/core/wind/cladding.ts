import { asce, type Edition } from "../kit/edition.ts";
import { type LoadLevel, windLevelFactor, windLevelText } from "../kit/load-level.ts";
import { BadInput, OutOfRange, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { curveText, gcpAt } from "./area-curve.ts";
import { type CladdingFigure, claddingFigure, isOverhang, type Surface, type UnreadFigure } from "./cladding-figure.ts";
import { directedPressure, directedSymbol, type RoofWind } from "./directionality.ts";
import { LOW_RISE_FT } from "./edge.ts";
import { type EnclosureClass, internalCoefficient } from "./enclosure.ts";
import { LOW_SLOPE_WALL_DEGREES, LOW_SLOPE_WALL_FACTOR } from "./tables/cladding-walls.ts";
import { CLAUSE } from "./tables/clauses.ts";

/** Least net pressure on components and cladding, each way, strength level. */
const LEAST_NET_PSF = 16;
/** Above this tributary area a component may take the main-frame pressures. */
const LARGE_AREA_FT2 = 700;
/** Hip roofs up to this slope take zone 2 in their corners (7-10). */
const GENTLE_HIP_DEGREES = 25;

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
  /** coefficients that the reader took from the figure; used instead of those held here */
  readonly gcpAway: number | undefined;
  readonly gcpToward: number | undefined;
}

/** Net pressure on a surface: toward it above 0, away from it below 0. */
export interface NetPressure {
  readonly towardPsf: number;
  readonly awayPsf: number;
}

interface Coefficients {
  readonly toward: number | undefined;
  readonly away: number;
}

/**
 * Net pressures on components and cladding of a building up to 60 ft, with the internal pressure of the worse sign and the least
 * net pressure of 16 psf each way (strength level).
 * @throws BadInput for a zone that the figure does not have, OutOfRange above 60 ft, for open buildings, and where the
 * coefficients of a figure are not held here and none are given
 * Source: ASCE/SEI 7-10 Eq. 30.4-1, 7-16 and 7-22 Eq. 30.3-1, section 30.2.2.
 */
export function claddingPressure(input: CladdingInput, tape?: Tape): NetPressure {
  const { surface, areaFt2, enclosure, level, heightFt, edition } = input;
  if (heightFt !== undefined) {
    within("The mean roof height", heightFt, 0, LOW_RISE_FT, "ft", asce(edition, CLAUSE.claddingLowRise));
  }
  if (areaFt2 > LARGE_AREA_FT2) {
    tape?.caution(
      `Tributary areas above ${LARGE_AREA_FT2} ft2 may take the main-frame pressures (${asce(edition, "30.2.3")}).`,
    );
  }
  const gcp = coefficients(input, tape);
  const gcpi = isOverhang(surface) ? 0 : internalCoefficient(enclosure, edition, tape);
  if (isOverhang(surface)) tape?.step("GCpi", "overhang: GCp holds both faces", 0, "", asce(edition, "30.4"));
  const qPsf = directedPressure(input, tape);
  const factor = windLevelFactor(level);
  const q = directedSymbol(edition, "q");
  const clause = asce(edition, CLAUSE.claddingEquation);
  const toward = gcp.toward === undefined ? 0 : qPsf * (gcp.toward + gcpi);
  const away = qPsf * (gcp.away - gcpi);
  if (gcp.toward !== undefined) tape?.step("p toward", `${q} (GCp + GCpi), internal suction`, toward, "psf", clause);
  tape?.step("p away", `${q} (GCp - GCpi), internal pressure`, away, "psf", clause);
  const net: NetPressure = {
    towardPsf: factor * Math.max(toward, LEAST_NET_PSF),
    awayPsf: factor * Math.min(away, -LEAST_NET_PSF),
  };
  const least = `at least ${LEAST_NET_PSF} psf each way${windLevelText(level)}`;
  tape?.step("p", `toward and away, ${least}`, [[net.towardPsf, net.awayPsf]], "psf", asce(edition, "30.2.2"));
  return net;
}

function coefficients(input: CladdingInput, tape: Tape | undefined): Coefficients {
  const { surface, slopeDeg, gcpAway, gcpToward, edition } = input;
  const figure = claddingFigure(surface, slopeDeg, edition);
  const clause = asce(edition, figure.figure);
  if (gcpAway === undefined && gcpToward !== undefined) {
    throw new BadInput(
      "GCp away is missing",
      "GCp toward is given, and the two go together",
      `Give both from ${clause}`,
    );
  }
  if (gcpAway !== undefined) {
    if (gcpToward === undefined && !isOverhang(surface)) {
      throw new BadInput(
        "GCp toward is missing",
        "GCp away is given, and the two go together",
        `Give both from ${clause}`,
      );
    }
    tape?.step("GCp away", "given", gcpAway, "", clause);
    if (gcpToward !== undefined) tape?.step("GCp toward", "given", gcpToward, "", clause);
    tape?.caution(`GCp is as given: it must come from ${clause} for this slope, zone and area.`);
    return { away: gcpAway, toward: gcpToward };
  }
  if (figure.zones === undefined) throw unreadFigure(surface, figure, edition);
  return figureCoefficients(input, figure, clause, tape);
}

/** A surface in a sentence: "gable roof", "gable overhang", "wall". */
function partName(surface: Surface): string {
  return surface === "wall" || isOverhang(surface) ? surface : `${surface} roof`;
}

/** The refusal for a figure whose coefficients could not be read: the reader can. */
export function unreadFigure(surface: Surface, figure: UnreadFigure, edition: Edition): OutOfRange {
  const clause = asce(edition, figure.figure);
  return new OutOfRange(
    `The coefficients for this ${partName(surface)} are not held here`,
    `no public print of ${clause} was found to take them from`,
    `Read GCp for your slope, zone and effective wind area in ${clause} and give it as gcpAway and gcpToward`,
  );
}

function figureCoefficients(
  input: CladdingInput,
  figure: CladdingFigure,
  clause: string,
  tape: Tape | undefined,
): Coefficients {
  const { surface, areaFt2, slopeDeg, edition } = input;
  const zone = zoneTaken(input, tape);
  const curves = Object.hasOwn(figure.zones, zone) ? figure.zones[zone] : undefined;
  if (curves === undefined) {
    throw new BadInput(
      `There is no zone "${zone}" on this ${partName(surface)}`,
      `${clause} has zones ${Object.keys(figure.zones).join(", ")}`,
      "Give one of these",
    );
  }
  const source = `${clause}${figure.basis === "read" ? "" : " (coefficients from memory)"}`;
  const low = surface === "wall" && slopeDeg !== undefined && slopeDeg <= LOW_SLOPE_WALL_DEGREES;
  const share = low ? LOW_SLOPE_WALL_FACTOR : 1;
  const toward = curves.toward === undefined ? undefined : share * gcpAt(curves.toward, areaFt2);
  const away = share * gcpAt(curves.away, areaFt2);
  const reduced = low ? `; times ${LOW_SLOPE_WALL_FACTOR}, roof up to ${LOW_SLOPE_WALL_DEGREES} degrees` : "";
  if (toward !== undefined && curves.toward !== undefined) {
    tape?.step("GCp toward", `zone ${zone}: ${curveText(curves.toward)}${reduced}`, toward, "", source);
  }
  tape?.step("GCp away", `zone ${zone}: ${curveText(curves.away)}${reduced}`, away, "", source);
  if (figure.basis === "memory" || figure.unchecked?.includes(zone) === true) {
    tape?.caution(
      `The coefficients of ${clause}, zone ${zone}, are from memory, not from a print: check GCp against the figure before use.`,
    );
  } else if (figure.basis === "checked") {
    tape?.caution(
      `The coefficients of ${clause} are from memory; published pressure tables made with them agree. Check GCp against the figure.`,
    );
  }
  if (edition === "7-22" && surface !== "wall") {
    tape?.caution("The flat-roof coefficients are those of 7-16; 7-22 is taken to keep them. Check its Fig. 30.3-2A.");
  }
  return { toward, away };
}

function zoneTaken(input: CladdingInput, tape: Tape | undefined): string {
  const { surface, slopeDeg, edition } = input;
  const zone = input.zone.trim().replace(/[\u2019\u2032]/g, "'");
  const gentle =
    edition === "7-10" && surface === "hip" && slopeDeg !== undefined && slopeDeg > 7 && slopeDeg <= GENTLE_HIP_DEGREES;
  if (!gentle || zone !== "3") return zone;
  tape?.step(
    "zone",
    `hip roof up to ${GENTLE_HIP_DEGREES} degrees: zone 3 counts as zone 2`,
    "2",
    "",
    asce(edition, "Fig. 30.4-2B"),
  );
  return "2";
}
