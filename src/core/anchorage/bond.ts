import { recalled } from "../kit/known.ts";
import { OutOfRange, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import {
  CLAUSES,
  type ConcreteStandard,
  type ConcreteState,
  LEAST_BOND_PSI,
  PHI,
  ROD_STRENGTH_PSI,
  RODS,
  SEISMIC_BOND,
  SEISMIC_CATEGORIES,
  SEISMIC_CONCRETE,
} from "./tables/anchors.ts";

export interface BondedRod {
  /** at strength level */
  readonly tensionLb: number;
  readonly diameterIn: number;
  readonly depthIn: number;
  /** to the nearest edge; the others are farther than the cone reaches */
  readonly edgeIn: number;
  /** to the next rod on both sides, along the edge; undefined for a rod that stands alone */
  readonly spacingIn: number | undefined;
  readonly concretePsi: number;
  /** characteristic bond stress in the concrete's state, from a report; undefined for the standard's least */
  readonly bondPsi: number | undefined;
  readonly state: ConcreteState;
  readonly seismicCategory: string | undefined;
  readonly standard: ConcreteStandard;
}

export interface AnchorCheck {
  readonly check: "steel" | "breakout" | "bond";
  readonly capacityLb: number;
  readonly ratio: number;
}

/** Basic breakout of a post-installed anchor in cracked concrete, and what uncracked concrete adds. */
const KC = 17;
const UNCRACKED = 1.4;
/** Reach of the breakout cone and, without a report, the edge distance at which splitting no longer counts, in depths. */
const REACH = 1.5;
const SPLITTING = 2;
const LEAST_DEPTH = 4;
const MOST_DEPTH = 20;
const TORQUED = 6;

/** Edge factor: 0.7 at the edge, 1 where the edge is farther than the reach. */
export function edgeFactor(edgeIn: number, reachIn: number): number {
  return Math.min(1, 0.7 + (0.3 * edgeIn) / reachIn);
}

/** Projected area of one rod of a row along an edge, in2: the square of twice the reach, cut off at the edge and halfway to the next rods. */
export function projectedAreaIn2(reachIn: number, edgeIn: number, spacingIn: number | undefined): number {
  const across = reachIn + Math.min(reachIn, edgeIn);
  const along = 2 * Math.min(reachIn, (spacingIn ?? Number.POSITIVE_INFINITY) / 2);
  return across * along;
}

/** Uncracked concrete may split before it breaks out. */
function splittingFactor(state: ConcreteState, edgeIn: number, reachIn: number, depthIn: number): number {
  const criticalIn = SPLITTING * depthIn;
  if (state === "cracked" || edgeIn >= criticalIn) return 1;
  return Math.min(1, Math.max(edgeIn, reachIn) / criticalIn);
}

const seismic = (rod: BondedRod): boolean =>
  (SEISMIC_CATEGORIES as readonly string[]).includes(rod.seismicCategory ?? "");

function threadsOf(diameterIn: number): number {
  const found = RODS.find(([d]) => Math.abs(d - diameterIn) < 1e-6);
  if (found !== undefined) return found[1];
  throw new OutOfRange(
    `A rod of ${plain(diameterIn)} in is no size of the table`,
    `threaded rods are held for ${RODS.map(([d]) => plain(d)).join(", ")} in`,
    "Give the nominal diameter of one of these",
  );
}

/**
 * Design strength of the rod's steel, lb: ASTM F1554 grade 36.
 * Source: ACI 318-19 17.6.1; A_se = pi/4 (d - 0.9743/n)^2.
 */
export function steelStrength(diameterIn: number, standard: ConcreteStandard, tape?: Tape): number {
  const areaIn2 = (Math.PI / 4) * (diameterIn - 0.9743 / threadsOf(diameterIn)) ** 2;
  const value = PHI.steel * areaIn2 * ROD_STRENGTH_PSI;
  tape?.step(
    "A_se",
    `pi/4 (d - 0.9743/n)^2, ${threadsOf(diameterIn)} threads to the inch`,
    areaIn2,
    "in2",
    "ASME B1.1",
  );
  tape?.step(
    "phi N_sa",
    `${PHI.steel} A_se ${ROD_STRENGTH_PSI} psi`,
    value,
    "lb",
    `ACI ${standard} ${CLAUSES[standard].steel}`,
  );
  return value;
}

/**
 * Design breakout strength of one rod, lb.
 * Source: ACI 318-19 17.6.2, from memory: post-installed, no supplementary reinforcement, normal weight concrete.
 */
export function breakoutStrength(rod: BondedRod, tape?: Tape): number {
  const { depthIn: h, edgeIn, state, standard } = rod;
  const reachIn = REACH * h;
  const clause = recalled(`ACI ${standard} ${CLAUSES[standard].breakout}`);
  const basic = KC * Math.sqrt(rod.concretePsi) * h ** 1.5;
  const full = (2 * reachIn) ** 2;
  const area = projectedAreaIn2(reachIn, edgeIn, rod.spacingIn);
  const edge = edgeFactor(edgeIn, reachIn);
  const cracks = state === "uncracked" ? UNCRACKED : 1;
  const splits = splittingFactor(state, edgeIn, reachIn, h);
  const value = PHI.concrete * (area / full) * edge * cracks * splits * basic;
  tape?.step(
    "N_b",
    `${KC} sqrt(f'c) h_ef^1.5, f'c ${plain(rod.concretePsi)} psi, h_ef ${plain(h)} in`,
    basic,
    "lb",
    clause,
  );
  tape?.step("A_Nc", `of 9 h_ef^2 = ${plain(full)} in2, cut at the edge and between rods`, area, "in2", clause);
  tape?.step("psi_ed", "0.7 + 0.3 c / 1.5 h_ef, at most 1", edge, "", clause);
  tape?.step("psi_c psi_cp", `${state}: ${cracks} x splitting ${plain(splits)}`, cracks * splits, "", clause);
  tape?.step("phi N_cb", `${PHI.concrete} (A_Nc / 9 h_ef^2) psi_ed psi_c psi_cp N_b`, value, "lb", clause);
  return value;
}

/** Bond stress that counts and the uncracked one that sets the reach, psi. */
function bondStresses(rod: BondedRod, tape?: Tape): { readonly psi: number; readonly uncrackedPsi: number } {
  const clause = `ACI ${rod.standard} ${CLAUSES[rod.standard].bond}`;
  if (rod.bondPsi !== undefined) {
    const ratio = rod.state === "cracked" ? LEAST_BOND_PSI.uncracked / LEAST_BOND_PSI.cracked : 1;
    if (rod.state === "cracked") {
      tape?.assume(
        `The bond stress in uncracked concrete, which sets how far bond reaches, is taken ${ratio} times the given one, as in the standard's table.`,
      );
    }
    tape?.assume(
      "The given bond stress holds for the temperature, moisture and earthquake of the place as its report says.",
    );
    tape?.step("tau", "as given", rod.bondPsi, "psi", clause);
    return { psi: rod.bondPsi, uncrackedPsi: ratio * rod.bondPsi };
  }
  const factor = seismic(rod) ? SEISMIC_BOND[rod.state] : 1;
  const psi = LEAST_BOND_PSI[rod.state] * factor;
  tape?.step(
    "tau",
    `least of the table, outdoors, ${rod.state}${factor === 1 ? "" : `, x ${factor} for earthquake`}`,
    psi,
    "psi",
    recalled(`${clause} table`),
  );
  return { psi, uncrackedPsi: LEAST_BOND_PSI.uncracked };
}

/**
 * Design bond strength of one rod, lb.
 * Source: ACI 318-19 17.6.5 (318-14 17.4.5, read on a code page): N_a = (A_Na / A_Nao) psi_ed psi_cp tau pi d h_ef.
 */
export function bondStrength(rod: BondedRod, tape?: Tape): number {
  const { diameterIn: d, depthIn: h, edgeIn, standard } = rod;
  const clause = `ACI ${standard} ${CLAUSES[standard].bond}`;
  const { psi, uncrackedPsi } = bondStresses(rod, tape);
  const reachIn = 10 * d * Math.sqrt(uncrackedPsi / 1100);
  const basic = psi * Math.PI * d * h;
  const full = (2 * reachIn) ** 2;
  const area = projectedAreaIn2(reachIn, edgeIn, rod.spacingIn);
  const edge = edgeFactor(edgeIn, reachIn);
  const splits = splittingFactor(rod.state, edgeIn, reachIn, h);
  const value = PHI.concrete * (area / full) * edge * splits * basic;
  tape?.step("c_Na", `10 d sqrt(tau_uncr / 1100), tau_uncr ${plain(uncrackedPsi)} psi`, reachIn, "in", clause);
  tape?.step("N_ba", "tau pi d h_ef", basic, "lb", clause);
  tape?.step("A_Na", `of (2 c_Na)^2 = ${plain(full)} in2, cut at the edge and between rods`, area, "in2", clause);
  tape?.step("psi_ed,Na", "0.7 + 0.3 c / c_Na, at most 1", edge, "", clause);
  tape?.step("psi_cp,Na", `splitting, ${rod.state}`, splits, "", clause);
  tape?.step("phi N_a", `${PHI.concrete} (A_Na / (2 c_Na)^2) psi_ed psi_cp N_ba`, value, "lb", clause);
  return value;
}

function checkRod(rod: BondedRod): void {
  const { diameterIn: d, depthIn } = rod;
  const { limits } = CLAUSES[rod.standard];
  threadsOf(d);
  within(
    "The depth",
    depthIn,
    LEAST_DEPTH * d,
    MOST_DEPTH * d,
    "in",
    `${LEAST_DEPTH} to ${MOST_DEPTH} rod diameters, ACI ${rod.standard}`,
  );
  within("The edge distance", rod.edgeIn, 1.5, 240, "in", `cover, ACI ${rod.standard} ${limits}`);
  if (rod.spacingIn !== undefined)
    within(
      "The spacing",
      rod.spacingIn,
      TORQUED * d,
      1200,
      "in",
      `${TORQUED} rod diameters, ACI ${rod.standard} ${limits}`,
    );
  within("The concrete strength", rod.concretePsi, 2500, 8000, "psi", "post-installed anchors, ACI 318 17.3.1");
}

/**
 * Adhesive anchor rod in tension, at strength level: steel, breakout and bond, the worst first.
 * @throws OutOfRange for a size, depth, edge, spacing or concrete outside the method
 * Source: ACI 318-19 chapter 17 (318-14 chapter 17), mostly from memory; bond formulas read.
 */
export function bondedRod(rod: BondedRod, tape?: Tape): readonly AnchorCheck[] {
  checkRod(rod);
  const keep = seismic(rod) ? SEISMIC_CONCRETE : 1;
  const capacities = [
    ["steel", steelStrength(rod.diameterIn, rod.standard, tape)],
    ["breakout", keep * breakoutStrength(rod, tape)],
    ["bond", keep * bondStrength(rod, tape)],
  ] as const;
  const rows = capacities
    .map(([check, capacityLb]) => ({ check, capacityLb, ratio: rod.tensionLb / capacityLb }))
    .sort((a, b) => b.ratio - a.ratio);
  if (keep < 1)
    tape?.step(
      "seismic",
      "breakout and bond keep in categories C to F",
      keep,
      "",
      recalled(`ACI ${rod.standard} ${CLAUSES[rod.standard].seismic}`),
    );
  for (const r of rows) tape?.step(r.check, `${plain(rod.tensionLb)} / ${plain(r.capacityLb)}`, r.ratio, "", "");
  says(rod, rows[0]?.check ?? "", tape);
  return rows;
}

function says(rod: BondedRod, governs: string, tape: Tape | undefined): void {
  tape?.assume(`${governs} governs. The tension is at strength level and short: no part of it is sustained.`);
  tape?.assume(
    `Rod of ASTM F1554 grade 36, futa ${ROD_STRENGTH_PSI} psi; anchor category 1 without supplementary reinforcement, phi ${PHI.concrete}.`,
  );
  tape?.assume("Normal weight concrete, one edge near, every rod of the row loaded alike.");
  tape?.caution(
    "A rod in the middle of a narrow wall has two near edges, and one at a corner too: both carry less than this.",
  );
  if (rod.edgeIn < TORQUED * rod.diameterIn) {
    tape?.caution(
      `The edge is nearer than ${TORQUED} rod diameters, ${plain(TORQUED * rod.diameterIn)} in: without a report that allows it the rod may not be torqued there.`,
    );
  }
  tape?.caution(
    "Sustained tension needs a check of its own: 0.55 of the bond strength, with the table's stresses times 0.4.",
  );
  tape?.caution(
    "Adhesive anchors go into concrete of at least 21 days, holes drilled and cleaned as the maker's instructions say; those that point up or lie level under sustained tension need a certified installer and continuous special inspection, the others special inspection as the report says.",
  );
  tape?.caution(
    "The thickness of the concrete, shear, and in categories C to F the ductility or overstrength rules are not checked.",
  );
}
