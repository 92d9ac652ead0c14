import { plain } from "../kit/refusal.ts";
import type { Assembly } from "./assembly.ts";
import { type Profile, stateOf } from "./profile.ts";
import { cToF } from "./si.ts";

/** A wall or roof to scale, inside at the left, with temperature and dew point through it. */
export interface WallSectionPicture {
  readonly kind: "wall-section";
  readonly alt: string;
  readonly layers: readonly {
    readonly name: string;
    readonly thicknessIn: number;
    readonly rIp: number;
    readonly role: string;
  }[];
  /** from the inside surface to the outside surface; position from the inside surface */
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
  const wetNames = profile.faces.filter((_, i) => faces[i]?.wet !== "dry").map((f) => f.name);
  const insideF = cToF(profile.air.insideC);
  const outsideF = cToF(profile.air.outsideC);
  const where = wetNames.length === 0 ? "No face is below the dew point" : `Wet at: ${wetNames.join(", ")}`;
  return {
    kind: "wall-section",
    alt: `Section of ${assembly.layers.map((l) => l.name).join(", ")}, from ${plain(Math.round(insideF))} F inside to ${plain(Math.round(outsideF))} F outside. ${where}.`,
    layers: assembly.layers.map((l) => ({
      name: l.name,
      thicknessIn: l.thicknessIn,
      rIp: l.rIp,
      role: l.role.kind === "none" ? "" : l.role.kind,
    })),
    faces,
    insideF,
    outsideF,
  };
}
