/** Least uniform live loads of houses, psf. IRC 2000 Table R301.4 (public interpretation) and HUD Residential Structural Design Guide (2000) Table 3.4. */
export const LIVE_LOADS_PSF: Readonly<Record<string, number>> = {
  "sleeping rooms": 30,
  bedrooms: 30,
  rooms: 40,
  "other rooms": 40,
  stairs: 40,
  decks: 40,
  balconies: 60,
  garages: 50,
  "attics with storage": 20,
  "attics without storage": 10,
  "fire escapes": 40,
  roof: 20,
};
export const LIVE_LOAD_CLAUSE = "IRC 2000 Table R301.4; HUD Residential Structural Design Guide (2000) Table 3.4";

/** Live load element factor KLL. ASCE/SEI 7 Table 4.7-1 (7-10: 4-2), read in the New York City Building Code, Table 1607.11.1. */
export const KLL: Readonly<Record<string, number>> = {
  "interior column": 4,
  "exterior column": 4,
  "edge column with cantilever slab": 3,
  "corner column with cantilever slab": 2,
  "edge beam": 2,
  "interior beam": 2,
  other: 1,
};
