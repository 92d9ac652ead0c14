import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import {
  DRESSED_SMALL,
  DRESSED_SOURCE,
  NOMINAL_SIZES,
  OFF_MIDDLE,
  OFF_TIMBER,
  OFF_WIDE,
  TIMBER_FROM,
  WIDE_FROM,
} from "./tables/dressed.ts";

/** Nominal sizes of one ply as written: first, then the one in the direction of the load. */
export interface Nominal {
  readonly first: number;
  readonly second: number;
}

/** A rectangular section, loaded along its depth. */
export interface Section {
  /** as written: "3-2x6" */
  readonly name: string;
  /** equal pieces side by side, each as deep as the section */
  readonly plies: number;
  /** thickness of one ply, in */
  readonly plyIn: number;
  /** depth, in the direction of the load, in */
  readonly depthIn: number;
  /** undefined where actual inches were given */
  readonly nominal: Nominal | undefined;
}

/** Properties of a section; x is the axis across the depth, y the other. */
export interface SectionProperties {
  readonly areaIn2: number;
  readonly inertiaIn4: number;
  readonly modulusIn3: number;
  readonly weakInertiaIn4: number;
  readonly weakModulusIn3: number;
  readonly torsionIn4: number;
}

/**
 * Actual size of a nominal one, in.
 * @param size the nominal size asked for
 * @param other the other nominal size of the piece
 * @throws BadInput for a size that lumber is not sold in
 * Source: NDS Supplement Table 1A.
 */
export function dressed(size: number, other: number): number {
  if (!NOMINAL_SIZES.includes(size)) {
    throw new BadInput(
      `A nominal size of ${plain(size)} in is not sold`,
      `lumber comes in ${NOMINAL_SIZES.join(", ")} in`,
      `Write actual inches with a decimal, such as ${plain(size)}.0, where that is what is meant`,
    );
  }
  if (Math.min(size, other) >= TIMBER_FROM) return size - OFF_TIMBER;
  const small = DRESSED_SMALL[size];
  if (small !== undefined) return small;
  return size - (size >= WIDE_FROM ? OFF_WIDE : OFF_MIDDLE);
}

/** A section of nominal size, dressed. */
export function nominalSection(name: string, plies: number, first: number, second: number): Section {
  return {
    name,
    plies,
    plyIn: dressed(first, second),
    depthIn: dressed(second, first),
    nominal: { first, second },
  };
}

/** The nominal size of a ply: as written, or the one that dresses to the actual inches given; undefined where none does. */
export function nominalOf(section: Section): Nominal | undefined {
  if (section.nominal !== undefined) return section.nominal;
  for (const first of NOMINAL_SIZES) {
    const second = NOMINAL_SIZES.find(
      (n) => dressed(n, first) === section.depthIn && dressed(first, n) === section.plyIn,
    );
    if (second !== undefined) return { first, second };
  }
  return undefined;
}

/** Width over all plies, in. */
export function widthIn(section: Section): number {
  return section.plies * section.plyIn;
}

/** Whether the load comes on the wide face of the plies (a plank). */
export function isFlat(section: Section): boolean {
  return section.depthIn < section.plyIn;
}

/**
 * Properties of the whole rectangle; the plies act as one about both axes, and each turns by itself.
 * Source: geometry; torsion of a rectangle by Roark's Formulas for Stress and Strain, from memory.
 */
export function sectionProperties(section: Section): SectionProperties {
  const b = widthIn(section);
  const d = section.depthIn;
  return {
    areaIn2: b * d,
    inertiaIn4: (b * d ** 3) / 12,
    modulusIn3: (b * d ** 2) / 6,
    weakInertiaIn4: (d * b ** 3) / 12,
    weakModulusIn3: (d * b ** 2) / 6,
    torsionIn4: section.plies * torsion(section.plyIn, d),
  };
}

function torsion(one: number, other: number): number {
  const [short, long] = one < other ? [one, other] : [other, one];
  return long * short ** 3 * (1 / 3 - 0.21 * (short / long) * (1 - short ** 4 / (12 * long ** 4)));
}

/** Says the actual size of a section, for the working. */
export function showSection(section: Section, tape?: Tape): void {
  const width = plain(widthIn(section));
  const plies = section.plies === 1 ? "" : ` (${section.plies} plies of ${plain(section.plyIn)} in)`;
  tape?.step(
    "b x d",
    `${section.name}: actual ${width} x ${plain(section.depthIn)} in${plies}`,
    `${width} x ${plain(section.depthIn)}`,
    "in",
    section.nominal === undefined ? "as given" : DRESSED_SOURCE,
  );
  if (isFlat(section)) {
    tape?.caution(
      `${section.name} is loaded on its wide face, since the depth stands last: turn the two sizes where it stands on edge.`,
    );
  }
}
