import type { Tape } from "../kit/tape.ts";
import { INCHES_IN } from "../units/length.ts";
import { packsWithWaste } from "./packs.ts";

/** A US gallon is 231 in3 and 128 fl oz (NIST Handbook 44, Appendix C). */
const CUBIC_INCHES_IN_FLUID_OUNCE = 231 / 128;
const GALLON = "NIST Handbook 44, Appendix C: 1 US gallon = 231 in3 = 128 fl oz";

/** A joint filled to a depth, or a round bead laid on a face. */
export type BeadSection =
  | { readonly kind: "joint"; readonly widthIn: number; readonly depthIn: number }
  | { readonly kind: "round"; readonly diameterIn: number };

/** Cross-section of a bead, in2. */
export function beadSectionIn2(section: BeadSection): number {
  return section.kind === "joint"
    ? section.widthIn * section.depthIn
    : (Math.PI * section.diameterIn * section.diameterIn) / 4;
}

/**
 * Feet of bead that one container fills, by volume: volume / (12 x section). Tooling, skips and what stays in the container come on top as waste.
 * @param volumeFlOz fill of the container, US fl oz, above 0
 */
export function beadCoverageFt(volumeFlOz: number, section: BeadSection, tape?: Tape): number {
  const volumeIn3 = volumeFlOz * CUBIC_INCHES_IN_FLUID_OUNCE;
  const areaIn2 = beadSectionIn2(section);
  const coverageFt = volumeIn3 / (INCHES_IN.ft * areaIn2);
  tape?.step("V", `${volumeFlOz} fl oz x 231 / 128`, volumeIn3, "in3", GALLON);
  const area =
    section.kind === "joint" ? `${section.widthIn} x ${section.depthIn}` : `pi x ${section.diameterIn}^2 / 4`;
  tape?.step("A", area, areaIn2, "in2", "geometry");
  tape?.step("c", "V / (12 A)", coverageFt, "ft", "volume of the bead");
  return coverageFt;
}

/**
 * Containers of sealant for a run of bead.
 * @param runFt total length of bead, 0 or more
 * @param waste share of the run, 0 or more
 * @returns whole containers
 */
export function beadContainers(
  runFt: number,
  section: BeadSection,
  volumeFlOz: number,
  waste: number,
  tape?: Tape,
): number {
  const coverageFt = beadCoverageFt(volumeFlOz, section, tape);
  return packsWithWaste(runFt, waste, coverageFt, "ft", "containers", tape);
}
