import { BadInput, Refusal } from "../kit/refusal.ts";
import { parseQuantity } from "../units/quantity.ts";

/** What a layer does beside its R. */
export type Role =
  | { readonly kind: "none" }
  | { readonly kind: "air barrier" }
  /** openings to the outside, in mm2 per m of wall length; undefined: well ventilated */
  | { readonly kind: "ventilated cavity"; readonly openingMm2M: number | undefined };

export const NO_ROLE: Role = { kind: "none" };

const MM2_IN_IN2 = 25.4 ** 2;
const M_IN_FT = 0.3048;

/**
 * Reads the role of a layer: `air barrier`, `ventilated cavity`, `ventilated cavity 0.5 in2/ft`, `ventilated cavity 800 mm2/m`.
 * @param where "row 4"
 * @throws BadInput for any other text
 */
export function parseRole(text: string, where: string): Role {
  const tidy = text.trim().toLowerCase().replaceAll("²", "2").replace(/\s+/g, " ");
  if (tidy === "" || tidy === "none" || tidy === "-") return NO_ROLE;
  if (/^air[- ]?(barrier|control)( layer)?$/.test(tidy)) return { kind: "air barrier" };
  const cavity = /^(?:well[- ])?(?:ventilated|vented)(?: cavity| air space| rainscreen)?\s*(.*)$/.exec(tidy);
  if (cavity !== null) {
    const opening = cavity[1] ?? "";
    if (opening === "") return { kind: "ventilated cavity", openingMm2M: undefined };
    const openingMm2M = parseOpening(opening);
    if (openingMm2M !== undefined) return { kind: "ventilated cavity", openingMm2M };
  }
  throw new BadInput(
    `The role "${text}" in ${where} is not known`,
    "a layer is an air barrier, a ventilated cavity, or has no role",
    'Write "air barrier", "ventilated cavity", "ventilated cavity 0.5 in2/ft", or leave it blank',
  );
}

function parseOpening(text: string): number | undefined {
  const match = /^([\d.,]+) ?(in2|mm2|cm2) ?(?:\/|per) ?(ft|m)\.?(?: of wall| length)?$/.exec(text);
  if (match?.[1] === undefined) return undefined;
  try {
    const value = parseQuantity(match[1], "");
    const areaMm2 = value * { in2: MM2_IN_IN2, cm2: 100, mm2: 1 }[match[2] as "in2" | "cm2" | "mm2"];
    return match[3] === "ft" ? areaMm2 / M_IN_FT : areaMm2;
  } catch (refusal) {
    if (refusal instanceof Refusal) return undefined;
    throw refusal;
  }
}
