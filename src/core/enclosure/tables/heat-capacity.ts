import type { Material } from "./materials.ts";

/** Specific heat, Btu/(lb F). California joint appendix JA4 Table 4.5.2 (public law): softwood, plywood, gypsum board, concrete and stucco; the others from memory. */
const SPECIFIC_HEAT = {
  lumber: 0.33,
  panel: 0.29,
  gypsum: 0.26,
  masonry: 0.2,
  insulation: 0.2,
  steel: 0.12,
} as const;

const BY_NAME: Readonly<Record<string, keyof typeof SPECIFIC_HEAT>> = {
  "gypsum board": "gypsum",
  brick: "masonry",
  concrete: "masonry",
  "concrete block": "masonry",
  stucco: "masonry",
  "fiber-cement board": "masonry",
  "cement board": "masonry",
  "steel sheet": "steel",
};

const WOOD = { solid: "lumber", panel: "panel", none: "insulation" } as const;

export function specificHeat(material: Pick<Material, "name" | "wood">): number {
  return SPECIFIC_HEAT[BY_NAME[material.name] ?? WOOD[material.wood ?? "none"]];
}

/** Above-grade walls that R402.2.5 calls mass walls by what they are made of, whatever their heat capacity; brick veneer is none. From memory. */
export const MASS_BY_NAME = ["concrete", "concrete block", "cross-laminated timber", "glulam"] as const;
/** Heat capacity from which any wall is a mass wall, Btu/(ft2 F). IECC R402.2.5, from memory. */
export const MASS_HEAT_CAPACITY = 6;
export const MASS_CLAUSE = "IECC R402.2.5";
