import { asce, type Edition } from "../kit/edition.ts";
import { BadInput, OutOfRange, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import {
  HIGHEST_FT,
  LEAST_CS,
  LIGHT_FRAME_R,
  LIGHT_FRAME_WORDS,
  PERIOD,
  SEISMIC_IMPORTANCE,
  type SeismicCategory,
} from "./tables/seismic.ts";
import type { RiskCategory } from "./tables/snow.ts";

/** A floor or roof with the weight that shakes with it. */
export interface SeismicLevel {
  readonly name: string;
  readonly weightLb: number;
  /** above the base, ft */
  readonly heightFt: number;
}

/** What resists, and the ground that shakes it. Accelerations in g. */
export interface SeismicSystem {
  readonly name: string;
  readonly sds: number;
  /** undefined: the cap by the period is not used */
  readonly sd1: number | undefined;
  readonly s1: number | undefined;
  readonly r: number | undefined;
}

export interface SeismicSite {
  readonly category: SeismicCategory | undefined;
  readonly risk: RiskCategory;
  readonly edition: Edition;
}

/** A level with its force and the shear below it, lb at strength level. */
export interface SeismicRow {
  readonly name: string;
  readonly weightLb: number;
  readonly forceLb: number;
  readonly shearLb: number;
}

/**
 * Seismic base shear and its levels by the equivalent lateral force procedure, at strength level, the highest level first. V = Cs W, Fx = V wx hx / sum(w h).
 * @throws BadInput for a system whose R is not held and not given; OutOfRange for category A and for levels above 65 ft
 * Source: ASCE/SEI 7-10, 7-16, 7-22 section 12.8.
 */
export function seismicForces(
  levels: readonly SeismicLevel[],
  system: SeismicSystem,
  site: SeismicSite,
  tape?: Tape,
): readonly SeismicRow[] {
  if (site.category === "A") {
    throw new OutOfRange(
      "Seismic category A has a rule of its own",
      `${asce(site.edition, "11.7")} asks there for a share of the weight alone, and its print is not held`,
      "Ask the engineer; such forces are small",
    );
  }
  for (const l of levels) {
    within(
      `The height of ${l.name}`,
      l.heightFt,
      Number.MIN_VALUE,
      HIGHEST_FT,
      "ft",
      "light-frame walls, height above the base",
    );
  }
  const weightLb = levels.reduce((sum, l) => sum + l.weightLb, 0);
  const cs = responseCoefficient(Math.max(...levels.map((l) => l.heightFt)), system, site, tape);
  const baseLb = cs * weightLb;
  tape?.step("V", `Cs x ${plain(weightLb)} lb`, baseLb, "lb", asce(site.edition, "Eq. 12.8-1"));
  sayCautions(site, tape);
  return shareOut(levels, baseLb, site.edition, tape);
}

/** Cs = SDS / (R / Ie), not more than SD1 / (T R / Ie), not less than 0.044 SDS Ie, 0.01, and 0.5 S1 / (R / Ie) where the ground is strong. */
function responseCoefficient(topFt: number, system: SeismicSystem, site: SeismicSite, tape: Tape | undefined): number {
  const { edition, risk } = site;
  const r = responseR(system, edition, tape);
  const ie = SEISMIC_IMPORTANCE[risk];
  tape?.step("Ie", `importance, risk category ${risk}`, ie, "", asce(edition, "Table 1.5-2"));
  if (ie !== 1)
    tape?.caution(
      `The seismic importance factor ${ie} is from memory: check it against ${asce(edition, "Table 1.5-2")}.`,
    );
  const plainCs = system.sds / (r / ie);
  tape?.step("Cs", "SDS / (R / Ie)", plainCs, "", asce(edition, "Eq. 12.8-2"));
  if (system.sd1 !== undefined && system.sd1 > system.sds) {
    tape?.caution(
      `SD1 of ${plain(system.sd1)} is above SDS of ${plain(system.sds)}, which no usual site has: were they swapped?`,
    );
  }
  const most = mostCs(topFt, system.sd1, r / ie, edition, tape);
  const least = leastCs(system, r / ie, ie, edition, tape);
  const cs = Math.max(Math.min(plainCs, most), least);
  tape?.step("Cs", "within its greatest and least", cs, "", asce(edition, "12.8.1.1"));
  return cs;
}

function responseR({ name, r }: SeismicSystem, edition: Edition, tape: Tape | undefined): number {
  const known = LIGHT_FRAME_WORDS.includes(name.trim().toLowerCase());
  if (r === undefined && !known) {
    throw new BadInput(
      `The R of "${name}" is not held`,
      `${LIGHT_FRAME_R} of light-frame wood walls is; thick panels as shear walls have one by an evaluation report or by the engineer`,
      "Give R in the system row, or name the system light-frame wood walls",
    );
  }
  const value = r ?? LIGHT_FRAME_R;
  tape?.step(
    "R",
    r === undefined ? `${name}, sheathed with wood structural panels` : `${name}, as given`,
    value,
    "",
    asce(edition, "Table 12.2-1"),
  );
  return value;
}

function mostCs(
  topFt: number,
  sd1: number | undefined,
  rOverIe: number,
  edition: Edition,
  tape: Tape | undefined,
): number {
  const period = PERIOD.ct * topFt ** PERIOD.exponent;
  tape?.step("Ta", `${PERIOD.ct} x ${plain(topFt)} ft^${PERIOD.exponent}`, period, "s", asce(edition, "Eq. 12.8-7"));
  if (sd1 === undefined) {
    tape?.assume("SD1 is not given: the cap of Cs by the period is not used, which is on the safe side");
    return Number.POSITIVE_INFINITY;
  }
  const most = sd1 / (period * rOverIe);
  tape?.step("Cs most", "SD1 / (T R / Ie)", most, "", asce(edition, "Eq. 12.8-3"));
  return most;
}

function leastCs(
  { sds, s1 }: SeismicSystem,
  rOverIe: number,
  ie: number,
  edition: Edition,
  tape: Tape | undefined,
): number {
  const ordinary = Math.max(LEAST_CS.perSds * sds * ie, LEAST_CS.ever);
  tape?.step(
    "Cs least",
    `${LEAST_CS.perSds} SDS Ie, not below ${LEAST_CS.ever}`,
    ordinary,
    "",
    asce(edition, "Eq. 12.8-5"),
  );
  if (s1 === undefined || s1 < LEAST_CS.fromS1) return ordinary;
  const strong = (LEAST_CS.perS1 * s1) / rOverIe;
  tape?.step(
    "Cs least",
    `S1 from ${LEAST_CS.fromS1}: ${LEAST_CS.perS1} S1 / (R / Ie)`,
    strong,
    "",
    asce(edition, "Eq. 12.8-6"),
  );
  return Math.max(ordinary, strong);
}

/** Fx = V wx hx / sum(w h): the exponent k is 1 up to a period of 0.5 s, which no height here reaches. */
function shareOut(
  levels: readonly SeismicLevel[],
  baseLb: number,
  edition: Edition,
  tape: Tape | undefined,
): readonly SeismicRow[] {
  const down = [...levels].sort((a, b) => b.heightFt - a.heightFt);
  const sum = down.reduce((s, l) => s + l.weightLb * l.heightFt, 0);
  let shearLb = 0;
  return down.map((l) => {
    const share = (l.weightLb * l.heightFt) / sum;
    const forceLb = share * baseLb;
    shearLb += forceLb;
    tape?.step(
      `Fx ${l.name}`,
      `${plain(Number(share.toPrecision(3)))} V, w h over the sum of w h`,
      forceLb,
      "lb",
      asce(edition, "Eq. 12.8-11"),
    );
    return { name: l.name, weightLb: l.weightLb, forceLb, shearLb };
  });
}

function sayCautions({ category, edition }: SeismicSite, tape: Tape | undefined): void {
  tape?.assume(
    "a redundancy factor rho of 1: forces are at strength level, 0.7 of them in allowable stress combinations",
  );
  if (category === undefined || category >= "D") {
    tape?.caution(
      `In seismic categories D to F the forces are multiplied by a redundancy factor of 1.3 unless ${asce(edition, "12.3.4.2")} is met: it is not in these numbers.`,
    );
  }
  tape?.caution(
    "Site class D without a ground motion study may ask for more (7-16 section 11.4.8); diaphragms, parts and torsion of the plan have rules of their own.",
  );
}
