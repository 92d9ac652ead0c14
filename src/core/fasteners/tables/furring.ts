/** Weights of cladding that the tables have a column for, psf; the 2018 code has none for 15 psf. */
export const CLADDING_PSF = [3, 11, 15, 18, 25] as const;
export const NOT_IN_2018_PSF = 15;

/** Spacings of furring, or of the framing where cladding is fastened straight to it, in. */
export const FURRING_SPACINGS_IN = [16, 24] as const;

export const FURRING_FASTENERS = [
  "0.113 nail",
  "0.120 nail",
  "0.131 nail",
  "0.162 nail",
  "No. 10 wood screw",
  "1/4 lag screw",
] as const;
export type FurringFastener = (typeof FURRING_FASTENERS)[number];

/** Least penetration into the framing, in. R703.15, read; the wood screw from IBC 2018 Table 2603.13.2. */
export const PENETRATION_IN: Readonly<Record<FurringFastener, number>> = {
  "0.113 nail": 1.25,
  "0.120 nail": 1.25,
  "0.131 nail": 1.25,
  "0.162 nail": 1.25,
  "No. 10 wood screw": 1,
  "1/4 lag screw": 1.5,
};

export const FURRING_TABLES = ["furred", "direct"] as const;
export type FurringTable = (typeof FURRING_TABLES)[number];

export const TABLE_NUMBER: Readonly<Record<FurringTable, string>> = {
  furred: "Table R703.15.2",
  direct: "Table R703.15.1",
};

/** A cell of the table: greatest thickness of foam, in, or design required. */
export type Cell = number | undefined;
const DR: Cell = undefined;

/** Spacing along the framing, and the cells by cladding weight for furring at 16 and at 24 in. */
export interface FurringRow {
  readonly spacingIn: number;
  readonly at16: readonly Cell[];
  readonly at24: readonly Cell[];
}

/**
 * Greatest thickness of foam, in. R703.15.1 and R703.15.2 of a state residential code of 2023 whose base is the IRC 2021, read in all 240 cells (its "DF" of one
 * cell is DR); the furred table without its 15 psf column agrees with IBC 2018 Table 2603.13.2 in the 77 cells read there.
 */
export const FOAM: Readonly<Record<FurringTable, Readonly<Partial<Record<FurringFastener, readonly FurringRow[]>>>>> = {
  furred: {
    "0.131 nail": [
      { spacingIn: 8, at16: [4, 2.45, 1.75, 1.45, 0.95], at24: [4, 1.6, 1.1, 0.85, DR] },
      { spacingIn: 12, at16: [4, 1.6, 1.1, 0.85, DR], at24: [4, 0.95, 0.55, DR, DR] },
      { spacingIn: 16, at16: [4, 1.1, 0.7, DR, DR], at24: [3.05, 0.6, DR, DR, DR] },
    ],
    "0.162 nail": [
      { spacingIn: 8, at16: [4, 4, 3.05, 2.45, 1.6], at24: [4, 2.75, 1.85, 1.45, 0.85] },
      { spacingIn: 12, at16: [4, 2.75, 1.85, 1.45, 0.85], at24: [4, 1.65, 1.05, 0.75, DR] },
      { spacingIn: 16, at16: [4, 1.9, 1.25, 0.95, DR], at24: [4, 1.05, 0.6, DR, DR] },
    ],
    "No. 10 wood screw": [
      { spacingIn: 12, at16: [4, 2.3, 1.6, 1.2, 0.7], at24: [4, 1.4, 0.85, 0.6, DR] },
      { spacingIn: 16, at16: [4, 1.65, 1.05, 0.75, DR], at24: [4, 0.9, DR, DR, DR] },
      { spacingIn: 24, at16: [4, 0.9, DR, DR, DR], at24: [2.85, DR, DR, DR, DR] },
    ],
    "1/4 lag screw": [
      { spacingIn: 12, at16: [4, 2.65, 1.9, 1.5, 0.9], at24: [4, 1.65, 1.05, 0.8, DR] },
      { spacingIn: 16, at16: [4, 1.95, 1.25, 0.95, 0.5], at24: [4, 1.1, 0.65, DR, DR] },
      { spacingIn: 24, at16: [4, 1.1, 0.65, DR, DR], at24: [3.25, 0.5, DR, DR, DR] },
    ],
  },
  direct: {
    "0.113 nail": [
      { spacingIn: 6, at16: [2, 1.45, 1, 0.75, DR], at24: [2, 0.85, 0.55, DR, DR] },
      { spacingIn: 8, at16: [2, 1, 0.65, DR, DR], at24: [2, 0.55, DR, DR, DR] },
      { spacingIn: 12, at16: [2, 0.55, DR, DR, DR], at24: [1.8, DR, DR, DR, DR] },
    ],
    "0.120 nail": [
      { spacingIn: 6, at16: [3, 1.7, 1.15, 0.9, 0.55], at24: [3, 1.05, 0.65, 0.5, DR] },
      { spacingIn: 8, at16: [3, 1.2, 0.8, 0.6, DR], at24: [3, 0.7, DR, DR, DR] },
      { spacingIn: 12, at16: [3, 0.7, DR, DR, DR], at24: [2.15, DR, DR, DR, DR] },
    ],
    "0.131 nail": [
      { spacingIn: 6, at16: [4, 2.15, 1.5, 1.2, 0.75], at24: [4, 1.35, 0.9, 0.7, DR] },
      { spacingIn: 8, at16: [4, 1.55, 1.05, 0.8, DR], at24: [4, 0.9, 0.55, DR, DR] },
      { spacingIn: 12, at16: [4, 0.9, 0.55, DR, DR], at24: [2.7, 0.5, DR, DR, DR] },
    ],
    "0.162 nail": [
      { spacingIn: 6, at16: [4, 3.55, 2.5, 2.05, 1.4], at24: [4, 2.25, 1.55, 1.25, 0.8] },
      { spacingIn: 8, at16: [4, 2.55, 1.8, 1.45, 0.95], at24: [4, 1.6, 1.1, 0.85, 0.5] },
      { spacingIn: 12, at16: [4, 1.6, 1.1, 0.85, 0.5], at24: [4, 0.95, 0.6, DR, DR] },
    ],
  },
};
