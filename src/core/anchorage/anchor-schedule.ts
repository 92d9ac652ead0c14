import { roundedDownIn } from "../fasteners/spacing.ts";
import { atDesignLevel, type Designed } from "../kit/load-level.ts";
import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { OverturningPicture } from "./pictures.ts";
import { SILL_RULES } from "./tables/anchors.ts";

export interface SillLine {
  readonly line: string;
  readonly shearPlf: number;
  readonly lengthFt: number;
  readonly upliftPlf: number;
}

/** An anchor of the office's own, from an evaluation report. */
export interface Anchor {
  readonly anchor: string;
  readonly shearLb: number;
  readonly tensionLb: number;
  readonly leastSpacingIn: number | undefined;
  readonly leastEdgeIn: number | undefined;
  /** area of the plate that spreads the pull on the wood */
  readonly plateIn2: number | undefined;
}

export interface ScheduledAnchor {
  readonly line: string;
  readonly anchor: string;
  /** undefined where none of the list holds */
  readonly spacingIn: number | undefined;
  readonly count: number | undefined;
  readonly shearRatio: number | undefined;
  readonly tensionRatio: number | undefined;
  readonly combined: number | undefined;
}

const NONE_HOLDS = "none of the list";
const BOTH = 1.2;
const CLAUSE = "ACI 318-19 17.8 (318-14 17.6)";

/**
 * Shear and tension together, 1 at the limit: each alone where the other is up to a fifth, else their sum over 1.2.
 * Source: ACI 318-19 17.8, from memory.
 */
export function interaction(shearRatio: number, tensionRatio: number): number {
  return Math.max(shearRatio, tensionRatio, (shearRatio + tensionRatio) / BOTH);
}

interface Trial {
  readonly anchor: Anchor;
  readonly spacingIn: number;
  readonly shearRatio: number;
  readonly tensionRatio: number;
  readonly combined: number;
}

function trial(anchor: Anchor, shearPlf: number, upliftPlf: number): Trial {
  const shearPerIn = shearPlf / 12 / anchor.shearLb;
  const tensionPerIn = upliftPlf / 12 / anchor.tensionLb;
  const exact = 1 / interaction(shearPerIn, tensionPerIn);
  const spacingIn = Math.min(SILL_RULES.mostIn, roundedDownIn(exact));
  const shearRatio = shearPerIn * spacingIn;
  const tensionRatio = tensionPerIn * spacingIn;
  return { anchor, spacingIn, shearRatio, tensionRatio, combined: interaction(shearRatio, tensionRatio) };
}

/** Anchors of a sill: one near each end, at most the spacing between, and no fewer than the load over the whole length asks. */
export function anchorCount(lengthFt: number, spacingIn: number): number {
  const lengthIn = lengthFt * 12;
  const between = Math.ceil((lengthIn - 2 * SILL_RULES.endIn) / spacingIn - 1e-9) + 1;
  return Math.max(SILL_RULES.least, between, Math.ceil(lengthIn / spacingIn - 1e-9));
}

const fits = (t: Trial) => t.spacingIn >= Math.max(1, t.anchor.leastSpacingIn ?? 0);

function scheduled(line: SillLine, anchors: readonly Anchor[], tape?: Tape): ScheduledAnchor {
  const held = anchors.map((a) => trial(a, line.shearPlf, line.upliftPlf)).find(fits);
  if (held === undefined) {
    tape?.caution(`Line ${line.line}: no anchor of the list holds at its least spacing.`);
    return {
      line: line.line,
      anchor: NONE_HOLDS,
      spacingIn: undefined,
      count: undefined,
      shearRatio: undefined,
      tensionRatio: undefined,
      combined: undefined,
    };
  }
  const { anchor: a, spacingIn, shearRatio, tensionRatio, combined } = held;
  const count = anchorCount(line.lengthFt, spacingIn);
  const on = `${a.anchor} on line ${line.line}`;
  tape?.step("s", `${on}: down to the inch, at most ${SILL_RULES.mostIn} in`, spacingIn, "in", "IRC R403.1.6");
  tape?.step("n", `${on}: over ${plain(line.lengthFt)} ft`, count, "anchors", "IRC R403.1.6");
  tape?.step("V", `${on}: ${plain(line.shearPlf)} plf x s / 12 / ${plain(a.shearLb)} lb`, shearRatio, "", "statics");
  tape?.step(
    "N",
    `${on}: ${plain(line.upliftPlf)} plf x s / 12 / ${plain(a.tensionLb)} lb`,
    tensionRatio,
    "",
    "statics",
  );
  tape?.step("V and N", `${on}: each alone, or their sum / ${BOTH}`, combined, "", CLAUSE);
  says(held, tape);
  return { line: line.line, anchor: a.anchor, spacingIn, count, shearRatio, tensionRatio, combined };
}

function says({ anchor: a, tensionRatio }: Trial, tape: Tape | undefined): void {
  if (a.leastEdgeIn !== undefined)
    tape?.caution(
      `${a.anchor} needs ${plain(a.leastEdgeIn)} in to the edge of the concrete: no wall here says how much it has.`,
    );
  if (a.plateIn2 !== undefined && tensionRatio > 0) {
    tape?.step(
      "f_c",
      `${a.anchor}: pull on the plate of ${plain(a.plateIn2)} in2`,
      (tensionRatio * a.tensionLb) / a.plateIn2,
      "psi",
      "statics",
    );
    tape?.caution("Compare the pressure under the plate with the bearing strength of the sill across its grain.");
  }
}

/**
 * Sill anchors of wall lines for shear and uplift together: of the office's own list the first that holds at its least spacing or wider.
 * @throws BadInput for loads of unknown level
 * Source: statics; interaction ACI 318-19 17.8; spacing and number IRC R403.1.6. No capacity is built in.
 */
export function anchorSchedule(
  lines: readonly SillLine[],
  anchors: readonly Anchor[],
  design: Designed,
  tape?: Tape,
): readonly ScheduledAnchor[] {
  const atLevel = lines.map((l) => ({
    ...l,
    shearPlf: atDesignLevel("The shear", l.shearPlf, "plf", design, tape),
    upliftPlf: atDesignLevel("The uplift", l.upliftPlf, "plf", design, tape),
  }));
  const rows = atLevel.map((l) => scheduled(l, anchors, tape));
  tape?.assume("The first anchor of the list that holds is taken: list them in the order in which you would use them.");
  tape?.assume(
    "Capacities are those of the evaluation report for the design method, with its edge, depth and concrete.",
  );
  tape?.caution(
    "Install and inspect as the evaluation report says; hold-downs at the ends of shear walls are further anchors.",
  );
  for (const [i, row] of rows.entries()) tape?.show(sillPicture(row, atLevel[i] as SillLine));
  return rows;
}

function sillPicture(row: ScheduledAnchor, line: SillLine): OverturningPicture {
  const { count = 0 } = row;
  const endFt = Math.min(SILL_RULES.endIn / 12, line.lengthFt / 4);
  const stepFt = (line.lengthFt - 2 * endFt) / Math.max(1, count - 1);
  return {
    kind: "overturning",
    alt:
      row.spacingIn === undefined
        ? `Line ${line.line}: no anchor of the list holds.`
        : `Line ${line.line}: ${count} of ${row.anchor} at most ${plain(row.spacingIn)} in apart over ${plain(line.lengthFt)} ft.`,
    name: line.line,
    lengthFt: line.lengthFt,
    floors: [],
    couple: undefined,
    anchorsFt: Array.from({ length: count }, (_, i) => endFt + i * stepFt),
    anchor: row.anchor,
  };
}
