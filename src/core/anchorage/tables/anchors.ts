/** Threaded rods: nominal diameter, threads to the inch. ASME B1.1 coarse threads, from memory. */
export const RODS: readonly (readonly [diameterIn: number, threads: number])[] = [
  [0.375, 16],
  [0.5, 13],
  [0.625, 11],
  [0.75, 10],
  [0.875, 9],
  [1, 8],
  [1.25, 7],
];

/** Tensile strength of ASTM F1554 grade 36 rod, psi; ductile. */
export const ROD_STRENGTH_PSI = 58_000;

const CONCRETE_STATES = ["cracked", "uncracked"] as const;
export type ConcreteState = (typeof CONCRETE_STATES)[number];

/** Least characteristic bond stress outdoors, psi. ACI 318-19 Table 17.6.5.2.5 (318-14 Table 17.4.5.2), from memory. */
export const LEAST_BOND_PSI: Readonly<Record<ConcreteState, number>> = { cracked: 200, uncracked: 650 };

/** What the least bond stress keeps in seismic design categories C to F. The same tables, from memory. */
export const SEISMIC_BOND: Readonly<Record<ConcreteState, number>> = { cracked: 0.8, uncracked: 0.4 };

/** Strength reduction: ductile steel; concrete and bond of a post-installed anchor of category 1 without supplementary reinforcement. From memory. */
export const PHI = { steel: 0.75, concrete: 0.65 } as const;

/** What concrete and bond keep in seismic design categories C to F. ACI 318-19 17.10.5.4 (318-14 17.2.3.4.4), from memory. */
export const SEISMIC_CONCRETE = 0.75;
export const SEISMIC_CATEGORIES = ["C", "D", "E", "F"] as const;

/** Clauses that the editions number apart. */
export const CLAUSES = {
  "318-14": {
    steel: "17.4.1",
    breakout: "17.4.2",
    bond: "17.4.5",
    seismic: "17.2.3.4.4",
    factors: "17.3.3",
    limits: "17.7",
  },
  "318-19": {
    steel: "17.6.1",
    breakout: "17.6.2",
    bond: "17.6.5",
    seismic: "17.10.5.4",
    factors: "17.5.3",
    limits: "17.9",
  },
} as const;
const CONCRETE_STANDARDS = ["318-14", "318-19"] as const;
export type ConcreteStandard = (typeof CONCRETE_STANDARDS)[number];

/**
 * Sill anchors of the residential code: greatest spacing, the first from each end of a plate, least from the end in diameters, and the anchors a
 * plate has at least. IRC R403.1.6, read in two adoptions.
 */
export const SILL_RULES = { mostIn: 72, endIn: 12, endDiameters: 7, least: 2 } as const;
