/**
 * Least uniform live loads of houses, psf, the same in the 2018, 2021 and 2024 residential codes, Table R301.5. Read in a city's print of the table,
 * which raises decks and balconies to 60; their 40 of the model code is from memory, said so by another public page.
 */
export const LIVE_LOADS_PSF: Readonly<Record<string, number>> = {
  "attics without storage": 10,
  "attics with storage": 20,
  "habitable attics": 30,
  balconies: 40,
  decks: 40,
  "fire escapes": 40,
  garages: 50,
  rooms: 40,
  "sleeping rooms": 30,
  stairs: 40,
};

/** Other words for the same uses. */
export const LIVE_USE_WORDS: Readonly<Record<string, string>> = {
  attics: "attics with storage",
  "habitable attic spaces": "habitable attics",
  "attic without storage": "attics without storage",
  "attic with storage": "attics with storage",
  "attics with limited storage": "attics with storage",
  "uninhabitable attics without storage": "attics without storage",
  "uninhabitable attics with limited storage": "attics with storage",
  "attics served with fixed stairs": "habitable attics",
  bedrooms: "sleeping rooms",
  "other rooms": "rooms",
  "living rooms": "rooms",
  kitchens: "rooms",
  balcony: "balconies",
  "passenger vehicle garages": "garages",
};

/** Point load of a guard or handrail, lb, in any direction at its top. Table R301.5, read as above. */
export const GUARD_LB = 200;

/** Roof live load of an ordinary roof, psf: what the reduction of ASCE/SEI 7 starts from. */
export const ROOF_LIVE_PSF = 20;

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
