/** Dowel-type fasteners of the wood standard. */
export const FASTENER_TYPES = ["lag screw", "wood screw", "nail", "bolt"] as const;
export type FastenerType = (typeof FASTENER_TYPES)[number];

/**
 * Lag screws: nominal and root diameter, in. NDS 2018 Appendix L Table L2, from memory; 1/4, 5/16 and 3/8 in are borne out by
 * the printed lateral values of Table 12K.
 */
export const LAG_ROOTS: readonly (readonly [nominalIn: number, rootIn: number])[] = [
  [0.25, 0.173],
  [0.3125, 0.227],
  [0.375, 0.265],
  [0.4375, 0.328],
  [0.5, 0.371],
  [0.625, 0.471],
  [0.75, 0.579],
  [0.875, 0.683],
  [1, 0.78],
];

/** Wood screws: number, nominal and root diameter, in. NDS 2018 Appendix L Table L3, from memory. */
export const WOOD_SCREW_ROOTS: readonly (readonly [number: number, nominalIn: number, rootIn: number])[] = [
  [6, 0.138, 0.113],
  [7, 0.151, 0.122],
  [8, 0.164, 0.131],
  [9, 0.177, 0.142],
  [10, 0.19, 0.152],
  [12, 0.216, 0.171],
  [14, 0.242, 0.196],
  [16, 0.268, 0.209],
  [18, 0.294, 0.232],
  [20, 0.32, 0.255],
  [24, 0.372, 0.298],
];

/**
 * Bending yield strength of nails, wood screws and lag screws: up to this nominal diameter, psi. NDS 2018 Appendix I Table I1, from memory;
 * the classes of the lag screws are borne out by the printed values of Table 12K.
 */
export const BENDING_YIELD: readonly (readonly [toIn: number, psi: number])[] = [
  [0.142, 100_000],
  [0.177, 90_000],
  [0.236, 80_000],
  [0.273, 70_000],
  [0.344, 60_000],
  [1, 45_000],
];

/** Bolts of common steel. NDS Commentary part VIII, read: 45,000 psi. */
export const BOLT_BENDING_YIELD_PSI = 45_000;

/** Dowel bearing strength of steel: from 1/4 in thick 1.5 Fu of A36, thinner 1.375 Fu of A653 grade 33. NDS 2018 Appendix I. */
export const STEEL_BEARING = { thickIn: 0.25, thickPsi: 87_000, thinPsi: 61_850 } as const;

/** Dowel bearing strength of concrete of 2,500 psi or more. University notes on the NDS, read; NDS 2018 Table 12E. */
export const CONCRETE_BEARING_PSI = 7500;

/** Dowel bearing strength of wood structural panels for fasteners under 1/4 in. NDS 2018 Table 12.3.3B, from memory. */
export const PANEL_BEARING: Readonly<Record<string, number>> = {
  OSB: 4650,
  plywood: 3350,
  "Structural I plywood": 4650,
};

/** Specific gravities that the tables of dowel bearing and withdrawal cover. NDS 2018 Tables 12.2A and 12.3.3. */
export const GRAVITY_RANGE = { min: 0.31, max: 0.73 } as const;

/** From this diameter on the direction of the grain counts, and the group action factor. NDS 2018 12.3.3, 11.3.6. */
export const SMALL_DOWEL_IN = 0.25;

/**
 * Least penetration of threads and nails without the tip, in diameters: 4 for lag screws; nails and wood screws take 6 with a tip of 2.
 * AWC answer on penetration (2006), read; NDS 2018 12.1.4 to 12.1.6.
 */
export const LEAST_PENETRATION = 4;

/** Modulus of elasticity of steel side plates behind the printed group action factors, psi. NDS 2018 Table 11.3.6C, from memory. */
export const STEEL_E_PSI = 30_000_000;
