import { asce, type Edition } from "../../kit/edition.ts";
import type { LoadLevel } from "../../kit/load-level.ts";
import { BadInput, plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { ECCENTRICITY_SHARE, TORSION_CASES, TORSION_FIGURE, type TorsionCase } from "../tables/torsion.ts";
import type { BaseShear } from "./base-shear.ts";
import type { FrameWind } from "./frame-directional.ts";

/** A line of walls by its place: it resists the wind of its name. */
export interface TorsionLine {
  readonly name: string;
  readonly wind: FrameWind;
  /** from the middle of the face that the wind meets, ft, to one side above 0 and to the other below */
  readonly positionFt: number;
}

/** A load case, or what one line takes in it. Forces and moment in lb and ft lb; the moment acts either way. */
export interface TorsionRow {
  readonly name: string;
  readonly acrossLb: number;
  readonly alongLb: number;
  readonly momentFtLb: number;
  readonly lineLb: number | "";
  readonly level: LoadLevel;
}

/** The force along one axis and the face that it meets. */
interface Axis {
  readonly wind: FrameWind;
  readonly forceLb: number;
  readonly faceFt: number;
}

/** The axes that the wind of a case acts on. */
type Winds = readonly [Axis, ...Axis[]];

/**
 * The four load cases of the wind on the frame: whole on each axis; three quarters with a torsional moment of the force times 0.15 B; three quarters on both
 * axes; 0.563 on both with both moments. Of two winds along one axis the larger counts. Lines share a case by statics: equal stiffness, a stiff floor or roof,
 * and no help from the lines of the other axis; each line has the larger of both senses of the moment.
 * @param shears sideways forces of the building, as baseShear gives them
 * @throws BadInput for a line beyond the face, or fewer than two places of lines along an axis
 * Source: ASCE/SEI 7-10 Fig. 27.4-8; 7-16 and 7-22 Fig. 27.3-8.
 */
export function torsionCases(
  shears: readonly BaseShear[],
  lines: readonly TorsionLine[],
  edition: Edition,
  tape?: Tape,
): readonly TorsionRow[] {
  const [across, along] = [axisOf(shears, "across ridge"), axisOf(shears, "along ridge")];
  for (const axis of [across, along]) checkLines(axis, lines);
  const level = shears[0]?.level ?? "strength";
  const rows = TORSION_CASES.flatMap((c) => {
    const winds: readonly Winds[] = c.both ? [[across, along]] : [[across], [along]];
    return winds.flatMap((axes) => caseRows(c, axes, lines, level, edition, tape));
  });
  tape?.assume("the moment of a case acts either way, about an upright axis through the middle of the building");
  if (lines.length > 0) {
    tape?.caution(
      "Lines share each case as of equal stiffness under a stiff floor or roof, without help from the walls of the other axis: with a flexible one WIND_BASESHEAR shares by width.",
    );
  }
  return rows;
}

function axisOf(shears: readonly BaseShear[], wind: FrameWind): Axis {
  const largest = shears.filter((r) => r.wind.startsWith(wind)).reduce((a, b) => (b.designLb > a.designLb ? b : a));
  return { wind, forceLb: largest.designLb, faceFt: largest.designLb / largest.designPlf };
}

function checkLines(axis: Axis, lines: readonly TorsionLine[]): void {
  const own = lines.filter((l) => l.wind === axis.wind);
  for (const l of own) {
    within(
      `The position of ${l.name}`,
      Math.abs(l.positionFt),
      0,
      axis.faceFt / 2,
      "ft",
      `half of the face of ${plain(axis.faceFt)} ft, counted from its middle`,
    );
  }
  if (own.length > 0 && new Set(own.map((l) => l.positionFt)).size < 2) {
    throw new BadInput(
      `The wind ${axis.wind} has its lines in one place`,
      "a moment takes two lines apart from each other",
      "Give every line that resists this wind, with its distance from the middle of the face",
    );
  }
}

function caseRows(
  c: TorsionCase,
  axes: Winds,
  lines: readonly TorsionLine[],
  level: LoadLevel,
  edition: Edition,
  tape: Tape | undefined,
): readonly TorsionRow[] {
  const figure = asce(edition, TORSION_FIGURE);
  const force = (wind: FrameWind) => c.share * (axes.find((a) => a.wind === wind)?.forceLb ?? 0);
  const twist = (a: Axis) => (c.twist ? force(a.wind) * ECCENTRICITY_SHARE * a.faceFt : 0);
  const momentFtLb = axes.reduce((sum, a) => sum + twist(a), 0);
  const name = `${c.number}, ${c.both ? "both" : axes[0].wind}`;
  tape?.step(`F ${name}`, `${c.share} x the whole force`, Math.max(...axes.map((a) => force(a.wind))), "lb", figure);
  if (c.twist) tape?.step(`MT ${name}`, `${c.share} F x ${ECCENTRICITY_SHARE} B`, momentFtLb, "ft lb", figure);
  const total = {
    name,
    acrossLb: force("across ridge"),
    alongLb: force("along ridge"),
    momentFtLb,
    level,
  };
  const shares = axes.flatMap((axis) =>
    lineForces(
      lines.filter((l) => l.wind === axis.wind),
      force(axis.wind),
      momentFtLb,
    ).map(({ line, lb }): TorsionRow => ({ ...total, name: `${line.name}: ${name}`, lineLb: lb })),
  );
  return [{ ...total, lineLb: "" }, ...shares];
}

/** A force in the middle of the face and a moment either way, shared by lines of equal stiffness: F/n + M d / sum d2 about their middle. */
function lineForces(lines: readonly TorsionLine[], forceLb: number, momentFtLb: number) {
  const middle = lines.reduce((s, l) => s + l.positionFt, 0) / Math.max(1, lines.length);
  const spread = lines.reduce((s, l) => s + (l.positionFt - middle) ** 2, 0);
  const moments = [momentFtLb, -momentFtLb].map((m) => m - forceLb * middle);
  return lines.map((line) => {
    const parts = moments.map((m) => forceLb / lines.length + (m * (line.positionFt - middle)) / spread);
    return { line, lb: Math.max(...parts) };
  });
}
