import { asce } from "../kit/edition.ts";
import type { LoadLevel } from "../kit/load-level.ts";
import { OutOfRange } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { type CladdingInput, claddingPressure, type NetPressure, unreadFigure } from "./cladding.ts";
import { claddingFigure, type Surface } from "./cladding-figure.ts";
import type { RoofWind } from "./directionality.ts";
import { edgeWidth } from "./edge.ts";
import type { EnclosureClass } from "./enclosure.ts";
import type { WindZonesPicture, ZoneShape, ZoneView } from "./pictures.ts";
import { flatRoofZones, gableRoofZones, wallZones, type ZoneOutlines } from "./zone-outlines.ts";

export const SCHEDULE_ROOFS = ["flat", "gable", "hip", "monoslope", "none"] as const;
export type ScheduleRoof = (typeof SCHEDULE_ROOFS)[number];

/** A coefficient that the reader took from the figure, for a roof zone and an effective area. */
export interface GivenCoefficient {
  readonly zone: string;
  readonly areaFt2: number;
  readonly toward: number;
  readonly away: number;
}

export interface ScheduleInput extends RoofWind {
  readonly roof: ScheduleRoof;
  readonly slopeDeg: number;
  readonly areasFt2: readonly number[];
  /** plan across the ridge, along it, and mean roof height, ft; all three give the edge width and the picture */
  readonly widthFt: number | undefined;
  readonly lengthFt: number | undefined;
  readonly heightFt: number | undefined;
  readonly enclosure: EnclosureClass;
  readonly level: LoadLevel;
  readonly given: readonly GivenCoefficient[];
}

/** One line of the schedule. */
export type ScheduleRow = readonly [surface: string, zone: string, areaFt2: number, towardPsf: number, awayPsf: number];

/**
 * Net cladding pressures of every wall and roof zone, by effective wind area.
 * @throws as claddingPressure; OutOfRange where a roof figure is not held here and no coefficients are given
 * Source: ASCE/SEI 7-10 section 30.4, 7-16 and 7-22 section 30.3.
 */
export function claddingSchedule(input: ScheduleInput, tape?: Tape): readonly ScheduleRow[] {
  const { areasFt2 } = input;
  const { widthFt, lengthFt, heightFt, edition } = input;
  const sized = widthFt !== undefined && lengthFt !== undefined && heightFt !== undefined;
  const edgeFt = sized ? edgeWidth(widthFt, lengthFt, heightFt, edition, tape) : undefined;
  const walls = ["4", "5"].flatMap((zone) => areasFt2.map((areaFt2) => line(input, "wall", zone, areaFt2)));
  const rows = [...walls, ...roofLines(input)];
  note(input, tape);
  if (sized && edgeFt !== undefined) tape?.show(picture(input, rows, widthFt, lengthFt, heightFt, edgeFt));
  tape?.step(
    "p",
    "surface, zone, effective wind area ft2, toward psf, away psf",
    rows,
    "",
    asce(edition, "chapter 30"),
  );
  return rows;
}

function roofLines(input: ScheduleInput): ScheduleRow[] {
  const { roof, slopeDeg, given, areasFt2, edition } = input;
  if (roof === "none") return [];
  if (given.length > 0) return given.map((g) => line(input, roof, g.zone, g.areaFt2, g));
  const figure = claddingFigure(roof, slopeDeg, edition);
  if (figure.zones === undefined) {
    const refusal = unreadFigure(roof, figure, edition);
    const todo =
      "Read GCp in the figure and give it as coefficients (zone, area, toward, away), or give the roof none for the walls alone";
    throw new OutOfRange(refusal.what, refusal.why, todo);
  }
  return Object.keys(figure.zones).flatMap((zone) => areasFt2.map((areaFt2) => line(input, roof, zone, areaFt2)));
}

function line(
  input: ScheduleInput,
  surface: Surface,
  zone: string,
  areaFt2: number,
  given?: GivenCoefficient,
): ScheduleRow {
  const net = pressure(input, surface, zone, areaFt2, given);
  return [surface, zone, areaFt2, net.towardPsf, net.awayPsf];
}

function pressure(
  input: ScheduleInput,
  surface: Surface,
  zone: string,
  areaFt2: number,
  given?: GivenCoefficient,
  tape?: Tape,
): NetPressure {
  const { qPsf, kd, slopeDeg, enclosure, level, heightFt, edition } = input;
  const one: CladdingInput = {
    qPsf,
    kd,
    surface,
    zone,
    areaFt2,
    slopeDeg,
    enclosure,
    level,
    heightFt,
    gcpAway: given?.away,
    gcpToward: given?.toward,
    edition,
  };
  return claddingPressure(one, tape);
}

/** Writes the working of the first wall and roof line, with their cautions, so that the method stands once. */
function note(input: ScheduleInput, tape: Tape | undefined): void {
  if (tape === undefined) return;
  const areaFt2 = input.areasFt2[0] ?? 10;
  pressure(input, "wall", "5", areaFt2, undefined, tape);
  if (input.roof === "none") return;
  const first = input.given[0];
  const figure = claddingFigure(input.roof, input.slopeDeg, input.edition);
  const zone = first?.zone ?? (Object.hasOwn(figure.zones ?? {}, "3") ? "3" : "2");
  pressure(input, input.roof, zone, first?.areaFt2 ?? areaFt2, first, tape);
}

function picture(
  input: ScheduleInput,
  rows: readonly ScheduleRow[],
  widthFt: number,
  lengthFt: number,
  heightFt: number,
  edgeFt: number,
): WindZonesPicture {
  const areaFt2 = input.areasFt2[0] ?? 10;
  const shapes = (surface: string, outlines: ZoneOutlines): ZoneShape[] =>
    rows
      .filter(([s, zone, area]) => s === surface && area === areaFt2 && Object.hasOwn(outlines, zone))
      .map(([, label, , towardPsf, awayPsf]) => ({ label, outlines: outlines[label] ?? [], towardPsf, awayPsf }));
  const wall = (name: ZoneView["name"], along: number): ZoneView => ({
    name,
    widthFt: along,
    heightFt,
    zones: shapes("wall", wallZones(along, heightFt, edgeFt)),
  });
  const views = [wall("long wall", lengthFt), wall("end wall", widthFt)];
  const plan = roofPlan(input, widthFt, lengthFt, heightFt, edgeFt);
  if (plan !== undefined) {
    views.unshift({ name: "roof plan", widthFt: lengthFt, heightFt: widthFt, zones: shapes(input.roof, plan) });
  }
  const most = Math.min(...rows.filter(([, , area]) => area === areaFt2).map(([, , , , away]) => away));
  return {
    kind: "wind-zones",
    alt: `Wall and roof zones of a building of ${widthFt} x ${lengthFt} ft with their pressures at ${areaFt2} ft2; the strongest suction is ${most.toFixed(1)} psf.`,
    areaFt2,
    views,
  };
}

function roofPlan(
  input: ScheduleInput,
  widthFt: number,
  lengthFt: number,
  heightFt: number,
  edgeFt: number,
): ZoneOutlines | undefined {
  const { roof, slopeDeg, edition } = input;
  if (roof === "none") return undefined;
  if (slopeDeg <= 7 && roof !== "monoslope") return flatRoofZones(lengthFt, widthFt, edgeFt, heightFt, edition);
  return roof === "gable" && edition === "7-10" ? gableRoofZones(lengthFt, widthFt, edgeFt) : undefined;
}
