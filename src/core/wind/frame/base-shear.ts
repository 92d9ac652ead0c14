import { asce, type Edition } from "../../kit/edition.ts";
import { type LoadLevel, windLevelFactor, windLevelText } from "../../kit/load-level.ts";
import { BadInput, plain } from "../../kit/refusal.ts";
import type { Table, Tape } from "../../kit/tape.ts";
import { checkBuilding, isSloped, meanRoofHeightFt, riseFt } from "../building.ts";
import { directedPressure } from "../directionality.ts";
import type { WindForcesPicture } from "../pictures.ts";
import { CLAUSE } from "../tables/clauses.ts";
import { GUST_FACTOR, LEAST_ROOF_PSF, LEAST_WALL_PSF, WINDWARD_WALL_CP } from "../tables/frame-cp.ts";
import type { FrameInput } from "./frame.ts";
import { leewardRoofCp, leewardWallCp, windwardRoofCp } from "./frame-coefficients.ts";
import { type FrameWind, frameFigure, roofStrips, wallBands, windRatios } from "./frame-directional.ts";

/** Total sideways force for one wind direction. */
export interface BaseShear {
  readonly wind: string;
  /** from the pressures, lb */
  readonly pressureLb: number;
  /** least load of the frame, lb */
  readonly leastLb: number;
  /** the larger of the two, lb */
  readonly designLb: number;
  /** the larger over the length of the face, plf */
  readonly designPlf: number;
  readonly level: LoadLevel;
}

/** The face that one wind meets: areas projected on a plane across the wind, ft2. */
interface Face {
  readonly wind: FrameWind;
  readonly name: string;
  /** of the face across the wind, ft */
  readonly lengthFt: number;
  /** height of the straight part of the windward wall, ft, and the area of a gable triangle on it */
  readonly windwardWallFt: number;
  readonly windwardGableFt2: number;
  readonly leewardWallFt2: number;
  /** windward and leeward roof slopes */
  readonly windwardRoofFt2: number;
  readonly leewardRoofFt2: number;
}

function faces(input: FrameInput): readonly Face[] {
  const { widthFt, lengthFt, eaveFt, roof } = input;
  const rise = riseFt(input);
  const triangle = (widthFt * rise) / 2;
  const across = { wind: "across ridge", lengthFt, windwardGableFt2: 0 } as const;
  const along = { wind: "along ridge", name: "along ridge", lengthFt: widthFt, windwardWallFt: eaveFt } as const;
  const end: Face =
    roof === "hip"
      ? {
          ...along,
          windwardGableFt2: 0,
          leewardWallFt2: widthFt * eaveFt,
          windwardRoofFt2: triangle,
          leewardRoofFt2: triangle,
        }
      : {
          ...along,
          windwardGableFt2: triangle,
          leewardWallFt2: widthFt * eaveFt + triangle,
          windwardRoofFt2: 0,
          leewardRoofFt2: 0,
        };
  if (roof === "monoslope") {
    const high = eaveFt + rise;
    const slope = rise * lengthFt;
    return [
      {
        ...across,
        name: "across ridge, from the low side",
        windwardWallFt: eaveFt,
        leewardWallFt2: lengthFt * high,
        windwardRoofFt2: slope,
        leewardRoofFt2: 0,
      },
      {
        ...across,
        name: "across ridge, from the high side",
        windwardWallFt: high,
        leewardWallFt2: lengthFt * eaveFt,
        windwardRoofFt2: 0,
        leewardRoofFt2: slope,
      },
      end,
    ];
  }
  const slope = rise * (roof === "hip" ? lengthFt - widthFt / 2 : lengthFt);
  return [
    {
      ...across,
      name: "across ridge",
      windwardWallFt: eaveFt,
      leewardWallFt2: lengthFt * eaveFt,
      windwardRoofFt2: slope,
      leewardRoofFt2: slope,
    },
    end,
  ];
}

/**
 * Total sideways force of the wind on a rectangular building, across and along the ridge: windward and leeward walls and roof slopes by the
 * directional procedure, not less than 16 psf on the walls and 8 psf on the roof in projection. Internal pressure cancels.
 * Roofs under 10 degrees count by their strips: only a slope that turns from the wind adds to it.
 * @throws as directionalFrame
 * Source: ASCE/SEI 7-10 sections 27.4.1, 27.4.7; 7-16 and 7-22 sections 27.3.1, 27.1.5.
 */
export function baseShear(input: FrameInput, tape?: Tape): readonly BaseShear[] {
  const { level, edition } = input;
  checkBuilding(input);
  const rows = faces(input).map((face) => shear(input, face, tape));
  tape?.step(
    "F",
    `larger of pressure and least load${windLevelText(level)}: wind, pressure lb, least lb, design lb, design plf, level`,
    shearTable(rows),
    "lb",
    leastClause(edition),
  );
  return rows;
}

function leastClause(edition: Edition): string {
  return asce(edition, CLAUSE.frameLeast);
}

function shear(input: FrameInput, face: Face, tape: Tape | undefined): BaseShear {
  const { level, edition } = input;
  const figure = frameFigure(edition);
  const { lOverB, hOverL } = windRatios(input, face.wind);
  const leeWallCp = leewardWallCp(lOverB);
  const bands = wallBands(input, face.windwardWallFt);
  const mean = bands.reduce((sum, b) => sum + b.share * (b.toFt - b.fromFt), 0) / face.windwardWallFt;
  const top = bands.at(-1)?.share ?? 1;
  const gableShare = input.exposure === undefined ? 1 : Math.max(top, 1);
  const q = directedPressure(input) * GUST_FACTOR;
  const wallFt2 = face.lengthFt * face.windwardWallFt;
  const windwardLb = q * WINDWARD_WALL_CP * (mean * wallFt2 + gableShare * face.windwardGableFt2);
  const leewardLb = -q * leeWallCp * face.leewardWallFt2;
  const roofFt2 = Math.max(face.windwardRoofFt2, face.leewardRoofFt2);
  const faceWallFt2 = Math.max(wallFt2 + face.windwardGableFt2, face.leewardWallFt2);
  const factor = windLevelFactor(level);
  tape?.step(`h, ${face.name}`, "mean roof height", meanRoofHeightFt(input), "ft", asce(edition, "26.2"));
  tape?.step(`F windward wall, ${face.name}`, "qz G 0.8 A", windwardLb, "lb", figure);
  tape?.step(`F leeward wall, ${face.name}`, `qh G ${leeWallCp.toFixed(3)} A`, leewardLb, "lb", figure);
  const roofLb = roofForce(input, face, q, hOverL, tape);
  const pressureLb = factor * (windwardLb + leewardLb + roofLb);
  const leastLb = factor * (LEAST_WALL_PSF * faceWallFt2 + LEAST_ROOF_PSF * roofFt2);
  tape?.step(
    `least, ${face.name}`,
    `${LEAST_WALL_PSF} psf walls + ${LEAST_ROOF_PSF} psf roof`,
    leastLb / factor,
    "lb",
    leastClause(edition),
  );
  const designLb = Math.max(pressureLb, leastLb);
  return { wind: face.name, pressureLb, leastLb, designLb, designPlf: designLb / face.lengthFt, level };
}

/**
 * Force of the roof along the wind: what pushes on the slope that faces it and pulls on the slope that turns from it. Under 10 degrees by strips
 * along the wind; a gable's windward slope then pulls back more than the leeward one pulls on, and a force below 0 is not counted.
 */
function roofForce(input: FrameInput, face: Face, q: number, hOverL: number, tape: Tape | undefined): number {
  const sum = isSloped(input) ? slopeForce(input, face, hOverL) : stripForce(input, face, hOverL);
  const how = isSloped(input) ? "qh G (Cp windward A - Cp leeward A)" : "qh G sum of Cp A of the strips";
  tape?.step(
    `F roof, ${face.name}`,
    `${how}, level share of each slope, not below 0`,
    Math.max(0, q * sum),
    "lb",
    frameFigure(input.edition),
  );
  return Math.max(0, q * sum);
}

function slopeForce({ slopeDeg }: FrameInput, face: Face, hOverL: number): number {
  const { suction, pressure } = windwardRoofCp(slopeDeg, hOverL);
  const windward = Math.max(suction, pressure) * face.windwardRoofFt2;
  return windward - leewardRoofCp(slopeDeg, hOverL) * face.leewardRoofFt2;
}

/** The strips of a low roof over its two slopes; each slope's projection lies evenly along the wind. */
function stripForce(input: FrameInput, face: Face, hOverL: number): number {
  const deepFt = face.wind === "across ridge" ? input.widthFt : input.lengthFt;
  const bothFt2 = face.windwardRoofFt2 + face.leewardRoofFt2;
  if (bothFt2 === 0) return 0;
  const ridgeFt = (deepFt * face.windwardRoofFt2) / bothFt2;
  return roofStrips(input, face.wind, hOverL).reduce((sum, { fromFt, toFt, cp }) => {
    const before = Math.max(0, Math.min(toFt, ridgeFt) - fromFt);
    return sum + (cp * bothFt2 * (2 * before - (toFt - fromFt))) / deepFt;
  }, 0);
}

function shearTable(rows: readonly BaseShear[]): Table {
  return rows.map((r) => [r.wind, r.pressureLb, r.leastLb, r.designLb, r.designPlf, r.level]);
}

/** A line of walls that takes part of the sideways force. */
export interface WallLine {
  readonly name: string;
  readonly wind: FrameWind;
  /** width of the face that the line carries, ft */
  readonly tributaryFt: number;
}

/**
 * The share of each wall line by the width of the face that it carries: a flexible diaphragm. Of two winds along one axis the larger counts.
 * @throws BadInput where a line carries more than the whole face
 */
export function wallLineShear(
  rows: readonly BaseShear[],
  lines: readonly WallLine[],
  tape?: Tape,
): readonly BaseShear[] {
  const shares = lines.map((line): BaseShear => {
    const governing = rows
      .filter((r) => r.wind.startsWith(line.wind))
      .reduce((a, b) => (b.designPlf > a.designPlf ? b : a));
    const faceFt = governing.designLb / governing.designPlf;
    if (line.tributaryFt > faceFt * (1 + 1e-9)) {
      throw new BadInput(
        `Wall line ${line.name} carries ${plain(line.tributaryFt)} ft`,
        `the face that the wind ${line.wind} meets is ${plain(faceFt)} ft long`,
        "Give the width of the face that the line carries: half the distance to the next line on each side",
      );
    }
    const share = line.tributaryFt / faceFt;
    return {
      wind: `${line.name}: ${governing.wind}`,
      pressureLb: share * governing.pressureLb,
      leastLb: share * governing.leastLb,
      designLb: share * governing.designLb,
      designPlf: governing.designPlf,
      level: governing.level,
    };
  });
  if (shares.length > 0) {
    tape?.caution(
      "Wall lines share the force by tributary width, as under a flexible diaphragm; a stiff one shares it by stiffness.",
    );
    tape?.step(
      "F",
      "wall lines: design plf x tributary width, below the totals",
      shearTable([...rows, ...shares]),
      "lb",
      "tributary width",
    );
  }
  return [...rows, ...shares];
}

/**
 * Sideways force of the building and its wall lines, with their picture.
 * @throws as baseShear and wallLineShear
 */
export function shearWithLines(input: FrameInput, lines: readonly WallLine[], tape?: Tape): readonly BaseShear[] {
  const totals = baseShear(input, tape);
  tape?.caution(
    `${asce(input.edition, CLAUSE.frameCases)}: torsion (75 percent with an eccentricity of 0.15 B) and wind on both axes at once can govern single wall lines; they are not in this total.`,
  );
  const rows = wallLineShear(totals, lines, tape);
  tape?.show(forcesPicture(input, rows, totals.length));
  return rows;
}

function forcesPicture(input: FrameInput, rows: readonly BaseShear[], totals: number): WindForcesPicture {
  const largest = rows.slice(0, totals).reduce((a, b) => (b.designLb > a.designLb ? b : a));
  return {
    kind: "wind-forces",
    alt: `The building from above; the largest sideways force is ${Math.round(largest.designLb)} lb, wind ${largest.wind}.`,
    widthFt: input.widthFt,
    lengthFt: input.lengthFt,
    level: input.level,
    forces: rows.map((r, i) => ({
      name: r.wind,
      designLb: r.designLb,
      designPlf: r.designPlf,
      least: r.leastLb > r.pressureLb,
      line: i >= totals,
    })),
  };
}
