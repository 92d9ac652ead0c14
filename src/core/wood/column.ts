import { recalled } from "../kit/known.ts";
import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { adjust, assumeCommon, type Member, showAdjusted } from "./adjust.ts";
import { type Section, sectionProperties, showSection, widthIn } from "./section.ts";
import { columnC, columnEuler, columnFactor } from "./stability.ts";
import { BUILT_UP } from "./tables/factors.ts";

export type Fastening = "nailed" | "bolted" | "none";

/** Where a column is held: unbraced lengths, in; 0 where it is held along its length. */
export interface Bracing {
  /** buckling along the depth of the section */
  readonly strongIn: number;
  /** buckling across the plies */
  readonly weakIn: number;
  readonly fastening: Fastening;
}

/** The answer of a column. */
export interface ColumnAnswer {
  readonly fcStarPsi: number;
  readonly fcPrimePsi: number;
  /** critical stress in the strong plane, psi; undefined where it is held along its length */
  readonly eulerStrongPsi: number | undefined;
  readonly capacityLb: number;
}

const CLAUSE = "NDS 3.7.1";
const BUILT_UP_CLAUSE = recalled("NDS 15.3");

/** Stability factor and critical stress of one plane; 1 where the column is held along its length. */
function plane(
  lengthIn: number,
  depthIn: number,
  axis: string,
  m: Stresses,
  tape?: Tape,
): { cp: number; fce?: number } {
  if (lengthIn === 0) {
    tape?.step(`CP ${axis}`, "held along its length", 1, "", CLAUSE);
    return { cp: 1 };
  }
  const fce = columnEuler(lengthIn, depthIn, m.eminPsi, axis, tape);
  const cp = columnFactor(fce / m.fcStarPsi, m.c);
  tape?.step(`CP ${axis}`, `FcE/Fc* ${plain(fce / m.fcStarPsi)}, c ${m.c}`, cp, "", "NDS Eq. 3.7-1");
  return { cp, fce };
}

interface Stresses {
  readonly fcStarPsi: number;
  readonly eminPsi: number;
  readonly c: number;
}

/** CP across the plies: of the whole with Kf, or of the plies by themselves where that is more or they are not joined. */
function weakFactor(section: Section, bracing: Bracing, m: Stresses, tape?: Tape): number {
  const whole = widthIn(section);
  const { weakIn, fastening } = bracing;
  if (section.plies === 1 || weakIn === 0) return plane(weakIn, whole, "weak", m, tape).cp;
  if (fastening === "none") {
    tape?.caution(
      "The plies are taken as not joined: each buckles by itself across its thickness. Say nailed or bolted as ply fastening where they are.",
    );
    return plane(weakIn, section.plyIn, "one ply", m, tape).cp;
  }
  checkPlies(section);
  const kf = BUILT_UP[fastening];
  const built = kf * plane(weakIn, whole, "weak", m, tape).cp;
  tape?.step("Kf CP", `${fastening}: Kf ${kf}`, built, "", BUILT_UP_CLAUSE);
  tape?.assume(
    `The plies are ${fastening} as NDS 15.3.3 or 15.3.4 asks: sizes, spacing and edge distances are not checked.`,
  );
  const alone = alonePly(section, weakIn, m);
  if (alone <= built) return built;
  tape?.step("CP one ply", "the plies by themselves carry more", alone, "", BUILT_UP_CLAUSE);
  return alone;
}

/** CP of one ply by itself, 0 where it is too slender to count. */
function alonePly(section: Section, weakIn: number, m: Stresses): number {
  try {
    return plane(weakIn, section.plyIn, "one ply", m).cp;
  } catch {
    return 0;
  }
}

function checkPlies(section: Section): void {
  const { leastPlies, mostPlies, leastPlyIn } = BUILT_UP;
  if (section.plies <= mostPlies && section.plyIn >= leastPlyIn) return;
  throw new BadInput(
    `${section.name} has ${section.plies} plies of ${plain(section.plyIn)} in`,
    `built-up columns have ${leastPlies} to ${mostPlies} plies of at least ${leastPlyIn} in (${BUILT_UP_CLAUSE})`,
    "Use fewer or thicker plies",
  );
}

/**
 * Adjusted compression stress and capacity of a column with hinged ends.
 * @throws BadInput for plies that the rules do not cover; OutOfRange for a slenderness above 50
 * Source: NDS 3.7.1, built-up columns 15.3; form with Emin (since 2005), not KcE.
 */
export function columnAnswer(member: Member, bracing: Bracing, tape?: Tape): ColumnAnswer {
  assumeCommon(member, tape);
  showSection(member.section, tape);
  const fc = adjust("Fc", member, tape);
  const emin = adjust("Emin", member, tape);
  showAdjusted(fc, tape, "Fc*");
  showAdjusted(emin, tape);
  const m = { fcStarPsi: fc.adjustedPsi, eminPsi: emin.adjustedPsi, c: columnC(member.wood.kind) };
  const strong = plane(bracing.strongIn, member.section.depthIn, "strong", m, tape);
  const cp = Math.min(strong.cp, weakFactor(member.section, bracing, m, tape));
  tape?.step("CP", "the smaller", cp, "", CLAUSE);
  const fcPrimePsi = m.fcStarPsi * cp;
  tape?.step("Fc'", `Fc* ${plain(m.fcStarPsi)} x CP`, fcPrimePsi, "psi", CLAUSE);
  const { areaIn2 } = sectionProperties(member.section);
  const capacityLb = fcPrimePsi * areaIn2;
  tape?.step("P'", `Fc' x ${plain(areaIn2)} in2`, capacityLb, "lb", CLAUSE);
  return { fcStarPsi: m.fcStarPsi, fcPrimePsi, eulerStrongPsi: strong.fce, capacityLb };
}
