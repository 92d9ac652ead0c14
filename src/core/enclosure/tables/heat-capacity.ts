import type { Material } from "./materials.ts";

/** Specific heat, Btu/(lb F). ASHRAE Handbook Fundamentals ch. 26, from memory. */
export const SPECIFIC_HEAT = {
  wood: 0.39,
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

export function specificHeat(material: Pick<Material, "name" | "wood">): number {
  return SPECIFIC_HEAT[BY_NAME[material.name] ?? (material.wood === undefined ? "insulation" : "wood")];
}

/** Above-grade walls that R402.2.5 calls mass walls by what they are made of, whatever their heat capacity; brick veneer is none. From memory. */
export const MASS_BY_NAME = ["concrete", "concrete block", "cross-laminated timber", "glulam"] as const;
/** Heat capacity from which any wall is a mass wall, Btu/(ft2 F). IECC R402.2.5, from memory. */
export const MASS_HEAT_CAPACITY = 6;
export const MASS_CLAUSE = "IECC R402.2.5";
