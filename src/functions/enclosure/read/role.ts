import { NO_ROLE, type Role } from "../../../core/enclosure/layers/layer-role.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import { quantityIn } from "./figure.ts";

const MM2_IN: Readonly<Record<string, number>> = { in2: 25.4 ** 2, cm2: 100, mm2: 1 };
const MM2_IN_M2 = 1e6;
/** What the openings are taken over, in m or m2. */
const OVER: Readonly<Record<string, number>> = { ft: 0.3048, m: 1, ft2: 0.3048 ** 2, m2: 1 };

/**
 * Reads the role of a layer: `air barrier`, `ventilated cavity`, `ventilated cavity 0.5 in2/ft`, `ventilated cavity 800 mm2/m`;
 * over a roof its openings go by the area: `ventilated cavity 1/300`, `ventilated cavity 2 in2/ft2`.
 * @param where "row 4"
 * @throws BadInput for any other text
 */
export function readRole(text: string, where: string): Role {
  const tidy = text.trim().toLowerCase().replaceAll("²", "2").replace(/\s+/g, " ");
  if (tidy === "" || tidy === "none" || tidy === "-") return NO_ROLE;
  if (/^air[- ]?(barrier|control)( layer)?$/.test(tidy)) return { kind: "air barrier" };
  const cavity = /^(?:well[- ])?(?:ventilated|vented)(?: cavity| air space| rainscreen)?\s*(.*)$/.exec(tidy);
  if (cavity !== null) {
    const opening = cavity[1] ?? "";
    if (opening === "") return { kind: "ventilated cavity", openingMm2M: undefined };
    const openingMm2M = readOpening(opening);
    if (openingMm2M !== undefined) return { kind: "ventilated cavity", openingMm2M };
  }
  throw new BadInput(
    `The role "${text}" in ${where} is not known`,
    "a layer is an air barrier, a ventilated cavity, or has no role",
    'Write "air barrier", "ventilated cavity", "ventilated cavity 0.5 in2/ft" (a roof: 1/300), or leave it blank',
  );
}

/** Openings over a length of wall, or over an area of roof: `0.5 in2/ft`, `800 mm2/m`, `2 in2/ft2`, `1/150`. */
function readOpening(text: string): number | undefined {
  const share = /^1 ?\/ ?(\d+)$/.exec(text);
  if (share !== null) return Number(share[1]) > 0 ? MM2_IN_M2 / Number(share[1]) : undefined;
  const match = /^([\d.,]+) ?(in2|mm2|cm2) ?(?:\/|per) ?(ft2|m2|ft|m)\.?(?: of (?:wall|roof)| length)?$/.exec(text);
  const value = match?.[1] === undefined ? undefined : quantityIn(match[1], "");
  if (match === null || value === undefined) return undefined;
  return (value * (MM2_IN[match[2] ?? ""] ?? 1)) / (OVER[match[3] ?? ""] ?? 1);
}
