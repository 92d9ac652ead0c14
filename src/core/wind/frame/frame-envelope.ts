import { asce, type Edition } from "../../kit/edition.ts";
import { between } from "../../kit/interpolate.ts";
import { cautionRecalled } from "../../kit/known.ts";
import { windLevelFactor, windLevelText } from "../../kit/load-level.ts";
import { OutOfRange, plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { checkBuilding, meanRoofHeightFt } from "../building.ts";
import { directedPressure, directedSymbol } from "../directionality.ts";
import { edgeWidth, LOW_RISE_FT } from "../edge.ts";
import { internalCoefficient } from "../enclosure.ts";
import { CLAUSE } from "../tables/clauses.ts";
import { ENVELOPE_CASE_A, ENVELOPE_CASE_B, ENVELOPE_WORDS } from "../tables/frame-gcpf.ts";
import type { FrameInput, FrameRow } from "./frame.ts";
import { frameTable } from "./frame-directional.ts";
import { framePicture } from "./frame-picture.ts";

export function envelopeFigure(edition: Edition): string {
  return asce(edition, CLAUSE.envelopeFigure);
}

/**
 * Net pressures on the main frame of a low-rise building by the envelope procedure: load case A (wind across the ridge) and B (along it),
 * field and end zones (2 a wide at one corner), each with both signs of internal pressure. Each corner is the windward corner in turn.
 * @throws OutOfRange above 60 ft, where the height exceeds the least plan dimension, above 45 degrees, for open and partially open buildings
 * Source: ASCE/SEI 7-10 Eq. 28.4-1, Fig. 28.4-1; 7-16 and 7-22 Eq. 28.3-1, Fig. 28.3-1.
 */
export function envelopeFrame(input: FrameInput, tape?: Tape): readonly FrameRow[] {
  const { widthFt, lengthFt, slopeDeg, enclosure, level, edition } = input;
  checkBuilding(input);
  const figure = envelopeFigure(edition);
  const heightFt = meanRoofHeightFt(input);
  const least = Math.min(widthFt, lengthFt);
  within("The mean roof height", heightFt, 0, LOW_RISE_FT, "ft", asce(edition, "26.2, low-rise building"));
  within("The slope", slopeDeg, 0, 45, "degrees", figure);
  if (heightFt > least) {
    throw new OutOfRange(
      `The mean roof height of ${plain(heightFt)} ft exceeds the least plan dimension of ${plain(least)} ft`,
      `a low-rise building is no higher than it is wide (${asce(edition, "26.2")})`,
      "Use the directional procedure",
    );
  }
  const gcpi = internalCoefficient(enclosure, edition, tape);
  const edgeFt = edgeWidth(widthFt, lengthFt, heightFt, edition, tape);
  tape?.step("2 a", "width of the end zone", 2 * edgeFt, "ft", figure);
  const q = windLevelFactor(level) * directedPressure(input, tape);
  const row = (wind: EnvelopeCase, surface: string, gcpf: number): FrameRow => ({
    wind: WINDS[wind],
    surface: surfaceWords(wind, surface),
    part: surface.endsWith("E") ? "end zone" : "field",
    coefficient: gcpf,
    withPressurePsf: q * (gcpf - gcpi),
    withSuctionPsf: q * (gcpf + gcpi),
  });
  const rows = [
    ...ENVELOPE_CASE_A.map(({ surface, nodes }) => row("case A", surface, between(nodes, slopeDeg))),
    ...ENVELOPE_CASE_B.map(([surface, gcpf]) => row("case B", surface, gcpf)),
  ];
  caution(edition, figure, tape);
  tape?.show(framePicture(input, rows));
  const clause = asce(edition, CLAUSE.envelopeEquation);
  tape?.step(
    "p",
    `${directedSymbol(edition, "qh")} (GCpf - GCpi)${windLevelText(level)}: case, surface, zone, GCpf, net psf with internal pressure, with internal suction`,
    frameTable(rows),
    "psf",
    clause,
  );
  return rows;
}

type EnvelopeCase = keyof typeof ENVELOPE_WORDS;

const WINDS: Readonly<Record<EnvelopeCase, string>> = {
  "case A": "case A, across ridge",
  "case B": "case B, along ridge",
};

/** A numbered surface of the figure in words, its number behind: "windward wall (1E)". */
function surfaceWords(wind: EnvelopeCase, number: string): string {
  const words: Readonly<Record<string, string>> = ENVELOPE_WORDS[wind];
  return `${words[number.replace("E", "")] ?? "surface"} (${number})`;
}

function caution(edition: Edition, figure: string, tape: Tape | undefined): void {
  cautionRecalled(tape, `The coefficients GCpf of ${figure}`, "the figure");
  tape?.caution(
    `${figure}: in Exposure B the velocity pressure takes Kz of at least 0.70 (WIND_PRESSURE with use low-rise).`,
  );
  tape?.caution(
    `${figure}: torsional cases (a quarter of the pressure on half the building) apply unless the building is one story up to 30 ft, light-frame up to two stories, or has flexible diaphragms up to two stories.`,
  );
  if (edition === "7-22") tape?.caution("The envelope coefficients are those of 7-16; 7-22 is taken to keep them.");
}
