import { plain } from "../../kit/refusal.ts";
import { cToF } from "../air/si.ts";
import type { Assembly } from "../layers/assembly.ts";
import type { Layer } from "../layers/layer.ts";
import { type Profile, stateOf } from "./profile.ts";

/** What a layer looks like in a section. */
export type MaterialLook = "wood" | "insulation" | "gypsum" | "masonry" | "metal" | "air" | "sheet" | "other";

export interface SectionLayer {
  readonly name: string;
  readonly thicknessIn: number;
  readonly rIp: number;
  readonly role: string;
  readonly look: MaterialLook;
  /** false for a ventilated cavity and what lies outside it */
  readonly counted: boolean;
}

/** A wall or roof to scale, inside at the left, with temperature and dew point through it. */
export interface WallSectionPicture {
  readonly kind: "wall-section";
  readonly alt: string;
  /** inside to outside; the last ones may not count, beyond a ventilated cavity */
  readonly layers: readonly SectionLayer[];
  /** from the inside surface to the outermost face that counts; position from the inside surface */
  readonly faces: readonly {
    readonly positionIn: number;
    readonly temperatureF: number;
    readonly dewPointF: number;
    readonly wet: "dry" | "water" | "ice";
  }[];
  readonly insideF: number;
  readonly outsideF: number;
}

/** A year of wetting and drying, month by month. */
export interface WettingYearPicture {
  readonly kind: "wetting-year";
  readonly alt: string;
  readonly months: readonly {
    readonly name: string;
    /** water that came (above 0) or went in the month, and what stands at its end, oz/ft2 */
    readonly changeOzFt2: number;
    readonly standingOzFt2: number;
  }[];
  readonly limitOzFt2: number;
}

/** The picture of a steady profile. */
export function wallSection(assembly: Assembly, profile: Profile): WallSectionPicture {
  let positionIn = 0;
  const faces = profile.faces.map((f, i) => {
    if (i > 0) positionIn += assembly.layers[i - 1]?.thicknessIn ?? 0;
    return { positionIn, temperatureF: cToF(f.tempC), dewPointF: cToF(f.dewPointC), wet: stateOf(f) };
  });
  const wetNames = profile.faces.filter((_, i) => faces[i]?.wet !== "dry").map((f) => f.wetAt);
  const insideF = cToF(profile.air.insideC);
  const outsideF = cToF(profile.air.outsideC);
  const where = wetNames.length === 0 ? "No face is below the dew point" : `Wet at: ${wetNames.join(", ")}`;
  return {
    kind: "wall-section",
    alt: `Section of ${[...assembly.layers, ...assembly.dropped].map((l) => l.name).join(", ")}, from ${plain(Math.round(insideF))} F inside to ${plain(Math.round(outsideF))} F outside. ${where}.`,
    layers: [
      ...assembly.layers.map((l) => sectionLayer(l, true)),
      ...assembly.dropped.map((l) => sectionLayer(l, false)),
    ],
    faces,
    insideF,
    outsideF,
  };
}

function sectionLayer(l: Layer, counted: boolean): SectionLayer {
  const role = l.role.kind === "none" ? "" : l.role.kind;
  return { name: l.name, thicknessIn: l.thicknessIn, rIp: l.rIp, role, look: lookOf(l), counted };
}

const LOOKS: Readonly<Record<string, MaterialLook>> = {
  "gypsum board": "gypsum",
  brick: "masonry",
  concrete: "masonry",
  "concrete block": "masonry",
  stucco: "masonry",
  "fiber-cement board": "masonry",
  "cement board": "masonry",
  "ceramic tile": "masonry",
  "steel sheet": "metal",
  "metal roofing": "metal",
  "metal siding": "metal",
  "air space": "air",
  "reflective air space": "air",
};
/** From this R an inch on a layer is drawn as insulation. */
const INSULATION_R_PER_IN = 2.2;

/** By its material; an office's own layer by its thickness and R. */
function lookOf(l: Layer): MaterialLook {
  if (l.wood !== undefined) return "wood";
  const known = LOOKS[l.material ?? ""];
  if (known !== undefined) return known;
  if (l.thicknessIn === 0) return "sheet";
  return l.rIp / l.thicknessIn >= INSULATION_R_PER_IN ? "insulation" : "other";
}
