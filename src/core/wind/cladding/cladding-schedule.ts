import { asce } from "../../kit/edition.ts";
import type { LoadLevel } from "../../kit/load-level.ts";
import { OutOfRange } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import type { RoofWind } from "../directionality.ts";
import { edgeWidth } from "../edge.ts";
import type { EnclosureClass } from "../enclosure.ts";
import type { WindZonesPicture, ZoneShape, ZoneView } from "../pictures.ts";
import { type CladdingInput, claddingPressure } from "./cladding.ts";
import { unreadFigure } from "./cladding-coefficients.ts";
import { type CladdingRoof, claddingFigure, type Surface } from "./cladding-figure.ts";
import { type GivenCoefficient, givenZones } from "./given-coefficients.ts";
import { flatRoofZones, gableRoofZones, wallZones, type ZoneOutlines } from "./zone-outlines.ts";

export interface ScheduleInput extends RoofWind {
  readonly roof: CladdingRoof;
  /** a flat roof may leave it out */
  readonly slopeDeg: number | undefined;
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
export interface ScheduleRow {
  readonly surface: Surface;
  readonly zone: string;
  readonly areaFt2: number;
  readonly towardPsf: number;
  readonly awayPsf: number;
}

/**
 * Net cladding pressures of every wall and roof zone, by effective wind area.
 * @throws as claddingPressure; OutOfRange where a roof figure is not held here and no coefficients are given
 * Source: ASCE/SEI 7-10 section 30.4, 7-16 and 7-22 section 30.3.
 */
export function claddingSchedule(input: ScheduleInput, tape?: Tape): readonly ScheduleRow[] {
  const { widthFt, lengthFt, heightFt, edition, roof } = input;
  const sized = widthFt !== undefined && lengthFt !== undefined && heightFt !== undefined;
  const edgeFt = sized ? edgeWidth(widthFt, lengthFt, heightFt, edition, tape) : undefined;
  const zones = roofZones(input);
  const walls = ["4", "5"].flatMap((zone) => lines(input, "wall", zone));
  const rows = [...walls, ...zones.flatMap((zone) => lines(input, roof, zone))];
  note(input, zones, tape);
  if (sized && edgeFt !== undefined) tape?.show(picture(input, rows, widthFt, lengthFt, heightFt, edgeFt));
  tape?.step(
    "p",
    "surface, zone, effective wind area ft2, toward psf, away psf",
    rows.map((r) => [r.surface, r.zone, r.areaFt2, r.towardPsf, r.awayPsf]),
    "",
    asce(edition, "chapter 30"),
  );
  return rows;
}

/** Zones of the roof: as given, else those of the figure held here. */
function roofZones({ roof, given, slopeDeg, edition }: ScheduleInput): readonly string[] {
  const figure = claddingFigure(roof, slopeDeg, edition);
  if (given.length > 0) return givenZones(given);
  if (figure.zones !== undefined) return Object.keys(figure.zones);
  const refusal = unreadFigure(roof, figure, edition);
  throw new OutOfRange(
    refusal.what,
    refusal.why,
    `${refusal.todo}, work with 7-22, or take the walls alone from WIND_CLADDING`,
  );
}

function lines(input: ScheduleInput, surface: Surface, zone: string): ScheduleRow[] {
  return input.areasFt2.map((areaFt2) => ({
    surface,
    zone,
    areaFt2,
    ...claddingPressure(oneZone(input, surface, zone, areaFt2)),
  }));
}

function oneZone(input: ScheduleInput, surface: Surface, zone: string, areaFt2: number): CladdingInput {
  const { qPsf, kd, slopeDeg, enclosure, level, heightFt, given, edition } = input;
  const roofOnly = surface === "wall" ? [] : given;
  return { qPsf, kd, edition, surface, zone, areaFt2, slopeDeg, enclosure, level, heightFt, given: roofOnly };
}

/** Writes the working of the wall's and the roof's last zone, with their cautions, so that the method stands once. */
function note(input: ScheduleInput, zones: readonly string[], tape: Tape | undefined): void {
  if (tape === undefined) return;
  const largest = Math.max(...input.areasFt2);
  claddingPressure(oneZone(input, "wall", "5", largest), tape);
  const zone = zones.at(-1);
  if (zone !== undefined) claddingPressure(oneZone(input, input.roof, zone, largest), tape);
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
      .filter((r) => r.surface === surface && r.areaFt2 === areaFt2 && Object.hasOwn(outlines, r.zone))
      .map(({ zone, towardPsf, awayPsf }) => ({ label: zone, outlines: outlines[zone] ?? [], towardPsf, awayPsf }));
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
  const most = Math.min(...rows.filter((r) => r.areaFt2 === areaFt2).map((r) => r.awayPsf));
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
  if ((slopeDeg ?? 0) <= 7 && roof !== "monoslope") return flatRoofZones(lengthFt, widthFt, edgeFt, heightFt, edition);
  return roof === "gable" && edition === "7-10" ? gableRoofZones(lengthFt, widthFt, edgeFt) : undefined;
}
