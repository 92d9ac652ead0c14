import { type Known, recalled } from "../../kit/known.ts";
/** Weight of a part of the building: psf of the whole, or psf for each inch of thickness. */
export interface Weight {
  readonly name: string;
  readonly psf?: number;
  readonly psfPerIn?: number;
  readonly source: string;
  /** read unless told: of what is remembered the answer cautions */
  readonly known?: Known;
}

const HUD = "HUD Residential Structural Design Guide (2000) Table 3.2";
/** Read in a public excerpt of the table. */
const C3 = "ASCE 7-05 Table C3-1";
/** From memory; the metric print of the same table, which was read, agrees. */
const C3_METRIC = { source: "ASCE 7 Table C3-1, psf from memory, metric print agrees", known: "memory" } as const;
const C3_MEMORY = { source: recalled("ASCE 7 Table C3-1"), known: "memory" } as const;

/** Whole assemblies of light-frame houses. */
const ASSEMBLIES: readonly Weight[] = [
  { name: "roof with asphalt shingles", psf: 15, source: HUD },
  { name: "roof with clay tile", psf: 27, source: HUD },
  { name: "roof with lightweight tile", psf: 21, source: HUD },
  { name: "roof with metal roofing", psf: 14, source: HUD },
  { name: "roof with wood shakes", psf: 15, source: HUD },
  { name: "roof with tar and gravel", psf: 18, source: HUD },
  { name: "floor with carpet or vinyl", psf: 10, source: HUD },
  { name: "floor with wood flooring", psf: 12, source: HUD },
  { name: "floor with ceramic tile", psf: 15, source: HUD },
  { name: "floor with slate", psf: 19, source: HUD },
  { name: "2x4 wall", psf: 6, source: HUD },
  { name: "2x4 wall with vinyl or aluminum siding", psf: 7, source: HUD },
  { name: "2x4 wall with lap wood siding", psf: 8, source: HUD },
  { name: "2x4 wall with stucco", psf: 15, source: HUD },
  { name: "2x4 wall with thin-coat stucco on insulation", psf: 9, source: HUD },
  { name: "2x4 wall with brick veneer", psf: 45, source: HUD },
  { name: "partition", psf: 6, source: HUD },
];

/** Single layers. */
const LAYERS: readonly Weight[] = [
  { name: "acoustical fiberboard", psf: 1, source: C3 },
  { name: "gypsum board", psfPerIn: 4.4, source: `${C3}: 0.55 psf per 1/8 in` },
  { name: "mechanical ducts", psf: 4, source: C3 },
  { name: "wood deck 2 in", psf: 5, source: C3 },
  { name: "wood deck 3 in", psf: 8, source: C3 },
  { name: "fiberboard", psfPerIn: 1.5, source: `${C3}: 0.75 psf for 1/2 in` },
  { name: "gypsum sheathing", psfPerIn: 4, source: `${C3}: 2 psf for 1/2 in` },
  { name: "asphalt shingles", psf: 2, ...C3_METRIC },
  { name: "wood shingles", psf: 3, ...C3_METRIC },
  { name: "cement tile", psf: 16, ...C3_METRIC },
  { name: "slate 3/16 in", psf: 7, ...C3_METRIC },
  { name: "slate 1/4 in", psf: 10, ...C3_METRIC },
  { name: "copper or tin", psf: 1, ...C3_METRIC },
  { name: "metal deck 20 gage", psf: 2.5, ...C3_METRIC },
  { name: "metal deck 18 gage", psf: 3, ...C3_METRIC },
  { name: "rigid insulation", psfPerIn: 1.5, ...C3_METRIC, source: `${C3_METRIC.source}: 0.75 psf for 1/2 in` },
  { name: "single-ply membrane", psf: 0.7, ...C3_METRIC },
  { name: "liquid-applied membrane", psf: 1, ...C3_METRIC },
  { name: "smooth bituminous membrane", psf: 1.5, ...C3_METRIC },
  { name: "gravel-covered bituminous membrane", psf: 5.5, ...C3_METRIC },
  { name: "four-ply felt and gravel", psf: 5.5, ...C3_METRIC },
  { name: "hardwood flooring 7/8 in", psf: 4, ...C3_METRIC },
  { name: "linoleum or asphalt tile", psf: 1, ...C3_METRIC },
  { name: "wood furring suspension", psf: 2.5, ...C3_METRIC },
  { name: "plywood", psfPerIn: 3.2, ...C3_MEMORY, source: `${C3_MEMORY.source}: 0.4 psf per 1/8 in` },
  { name: "wood sheathing", psfPerIn: 3, ...C3_MEMORY },
  { name: "polystyrene foam", psfPerIn: 0.2, source: "ASCE 7 Table C3-1, confirmed by a public abstract of the table" },
  { name: "urethane foam", psfPerIn: 0.5, ...C3_MEMORY },
  { name: "fibrous glass", psfPerIn: 1.1, ...C3_MEMORY },
  { name: "windows", psf: 8, ...C3_MEMORY },
  { name: "subfloor 3/4 in", psf: 3, ...C3_MEMORY },
];

const GLASS = "glass at 2.5 kg/m2 for each mm (public page), 4 mm panes without frame";
const ROOFING = "public roofing pages, generic ranges";
const RANGE = recalled("common product ranges");
/** Heavy end of a remembered range. */
const range = (words: string) => ({ source: `${RANGE}, ${words}`, known: "memory" }) as const;

/** Parts of panelized shells. Where a range is known, its heavy end is held: for uplift give your own figure. */
const SHELL: readonly Weight[] = [
  { name: "veneer panel", psfPerIn: 3.5, ...range("36 to 42 pcf") },
  { name: "cross-laminated timber", psfPerIn: 2.9, ...range("35 pcf") },
  { name: "mineral wool board", psfPerIn: 0.92, ...range("4 to 11 pcf") },
  { name: "mineral wool batt", psfPerIn: 0.33, ...range("1.5 to 4 pcf") },
  { name: "wood fiber board", psfPerIn: 1.33, ...range("7 to 16 pcf") },
  { name: "standing seam steel 24 gage", psf: 1.5, source: `${ROOFING}, 0.85 to 1.5 psf with seams` },
  { name: "standing seam steel 22 gage", psf: 1.5, source: `${ROOFING}, 1.5 psf` },
  { name: "standing seam aluminum", psf: 0.9, source: `${ROOFING}, 0.5 to 0.9 psf` },
  { name: "double glazing", psf: 4.1, source: GLASS },
  { name: "triple glazing", psf: 6.14, source: GLASS },
  {
    name: "oriented strand board",
    psfPerIn: 3,
    source: "HUD Residential Structural Design Guide (2000) Table 3.3: 36 pcf",
  },
];

export const WEIGHTS: readonly Weight[] = [...ASSEMBLIES, ...LAYERS, ...SHELL];
