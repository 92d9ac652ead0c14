import { asce, type Edition } from "../../kit/edition.ts";
import { BadInput, OutOfRange, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { curveText, gcpAt } from "../tables/area-curve.ts";
import { LOW_SLOPE_WALL_DEGREES, LOW_SLOPE_WALL_FACTOR } from "../tables/cladding-walls.ts";
import type { CladdingFigure, CladdingZone, UnreadFigure } from "../tables/cladding-zone.ts";
import { claddingFigure, partName, type Surface } from "./cladding-figure.ts";
import { type GivenCoefficient, givenCoefficients, zoneName } from "./given-coefficients.ts";

/** Hip roofs up to this slope take zone 2 in their corners (7-10). */
const GENTLE_HIP_DEGREES = 25;

export interface Coefficients {
  readonly toward: number;
  readonly away: number;
}

export interface CoefficientInput {
  readonly surface: Surface;
  readonly zone: string;
  readonly areaFt2: number;
  readonly slopeDeg: number | undefined;
  readonly given: readonly GivenCoefficient[];
  readonly edition: Edition;
}

/**
 * GCp toward and away from a surface, as given or from the figure held here.
 * @throws BadInput for a zone that is not of the surface, OutOfRange where the figure is not held and nothing is given
 * Source: as claddingFigure.
 */
export function claddingCoefficients(input: CoefficientInput, tape?: Tape): Coefficients {
  const { surface, areaFt2, slopeDeg, given, edition } = input;
  const figure = claddingFigure(surface, slopeDeg, edition);
  const clause = asce(edition, figure.figure);
  if (given.length > 0) {
    const gcp = givenCoefficients(surface, given, zoneName(input.zone), areaFt2);
    tape?.step("GCp away", "given", gcp.away, "", clause);
    tape?.step("GCp toward", "given", gcp.toward, "", clause);
    tape?.caution(`GCp is as given: it must come from ${clause} for this slope, zone and area.`);
    return gcp;
  }
  if (figure.zones === undefined) throw unreadFigure(surface, figure, edition);
  return figureCoefficients(input, figure, clause, tape);
}

/** The refusal for a figure whose coefficients could not be read: the reader can. */
export function unreadFigure(surface: Surface, figure: UnreadFigure, edition: Edition): OutOfRange {
  const clause = asce(edition, figure.figure);
  return new OutOfRange(
    `The coefficients for this ${partName(surface)} are not held here`,
    `no public print of ${clause} was found to take them from`,
    `Read GCp in ${clause} and give it as coefficients: zone, area, toward, away`,
  );
}

function figureCoefficients(
  input: CoefficientInput,
  figure: CladdingFigure,
  clause: string,
  tape: Tape | undefined,
): Coefficients {
  const { surface, slopeDeg } = input;
  const zone = zoneTaken(input, tape);
  const curves = Object.hasOwn(figure.zones, zone) ? figure.zones[zone] : undefined;
  if (curves === undefined) {
    throw new BadInput(
      `There is no zone "${zone}" on this ${partName(surface)}`,
      `${clause} has zones ${Object.keys(figure.zones).join(", ")}`,
      "Give one of these",
    );
  }
  const areaFt2 = areaTaken(input.areaFt2, figure, tape);
  const read = { ...reading(input, figure, curves, zone, areaFt2), zone, clause };
  const second = figure.orWorse?.zones[zone];
  let gcp = readCurves(curves, areaFt2, lowSlopeShare(surface, slopeDeg), read, tape);
  if (second !== undefined) {
    const other = readCurves(second, areaFt2, 1, read, tape);
    gcp = { toward: Math.max(gcp.toward, other.toward), away: Math.min(gcp.away, other.away) };
    tape?.step("GCp away", "the worse of the two figures", gcp.away, "", clause);
    tape?.caution(`${clause}: ${figure.orWorse?.why}.`);
  }
  if (read.caution !== undefined) tape?.caution(read.caution);
  return gcp;
}

interface Reading {
  /** behind the clause of a step */
  readonly known: string;
  readonly caution: string | undefined;
}

/** How far the coefficients are held by a print at this area. */
function reading(
  input: CoefficientInput,
  figure: CladdingFigure,
  curves: CladdingZone,
  zone: string,
  areaFt2: number,
): Reading {
  const printedToFt2 = curves.printedToFt2 ?? figure.printedToFt2;
  if (areaFt2 <= printedToFt2)
    return { known: figure.print === undefined ? "" : ` (${figure.print})`, caution: undefined };
  const clause = asce(input.edition, figure.figure);
  const upTo = printedToFt2 === 0 ? "" : ` beyond ${printedToFt2} ft2`;
  return {
    known: " (coefficients from memory)",
    caution: `The coefficients of ${clause}, zone ${zone}${upTo}, are from memory, not from a print: check GCp against the figure before use.`,
  };
}

/** The area that the curves are read at: past the end of the print it is the end. */
function areaTaken(areaFt2: number, { keptFromFt2 }: CladdingFigure, tape: Tape | undefined): number {
  if (keptFromFt2 === undefined || areaFt2 <= keptFromFt2) return areaFt2;
  tape?.assume(
    `GCp at ${keptFromFt2} ft2 is kept for the ${plain(areaFt2)} ft2: the print ends there, and more area never has more suction.`,
  );
  return keptFromFt2;
}

/** Walls under a low roof take less. */
function lowSlopeShare(surface: Surface, slopeDeg: number | undefined): number {
  const low = surface === "wall" && slopeDeg !== undefined && slopeDeg <= LOW_SLOPE_WALL_DEGREES;
  return low ? LOW_SLOPE_WALL_FACTOR : 1;
}

function readCurves(
  curves: CladdingZone,
  areaFt2: number,
  share: number,
  at: Reading & { readonly zone: string; readonly clause: string },
  tape: Tape | undefined,
): Coefficients {
  const toward = curves.toward === undefined ? 0 : share * gcpAt(curves.toward, areaFt2);
  const away = share * gcpAt(curves.away, areaFt2);
  const reduced = share === 1 ? "" : `; times ${share}, roof up to ${LOW_SLOPE_WALL_DEGREES} degrees`;
  const source = `${at.clause}${at.known}`;
  if (curves.toward !== undefined) {
    tape?.step("GCp toward", `zone ${at.zone}: ${curveText(curves.toward)}${reduced}`, toward, "", source);
  }
  tape?.step("GCp away", `zone ${at.zone}: ${curveText(curves.away)}${reduced}`, away, "", source);
  return { toward, away };
}

/** The zone as the figure has it: corners of gentle hips count as edges in 7-10, on overhangs too. */
function zoneTaken(input: CoefficientInput, tape: Tape | undefined): string {
  const { surface, slopeDeg, edition } = input;
  const zone = zoneName(input.zone);
  const hip = surface.startsWith("hip");
  const gentle = edition === "7-10" && hip && slopeDeg !== undefined && slopeDeg > 7 && slopeDeg <= GENTLE_HIP_DEGREES;
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
