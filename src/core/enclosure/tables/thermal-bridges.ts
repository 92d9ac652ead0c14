/**
 * Linear thermal transmittance of junctions, W/(m K), with outside dimensions. UK SAP 2012 Table K1 (public government procedure), read via a trade page:
 * `approved` for details built as approved, `usual` where nothing is known of the detail.
 */
export interface JunctionPsi {
  readonly name: string;
  readonly also: readonly string[];
  readonly approvedWmK: number;
  readonly usualWmK: number;
}

export const JUNCTION_SOURCE = "UK SAP 2012 Table K1";

export const JUNCTIONS: readonly JunctionPsi[] = [
  { name: "lintel", also: ["header", "window head", "door head"], approvedWmK: 0.3, usualWmK: 1 },
  { name: "jamb", also: ["window jamb", "door jamb", "buck", "window buck"], approvedWmK: 0.05, usualWmK: 0.1 },
  {
    name: "ground floor",
    also: ["slab edge", "foundation", "sill", "wall to slab", "base of wall"],
    approvedWmK: 0.16,
    usualWmK: 0.32,
  },
  { name: "floor band", also: ["rim joist", "party floor", "intermediate floor"], approvedWmK: 0.07, usualWmK: 0.14 },
  { name: "inside corner", also: ["inverted corner", "corner inverted"], approvedWmK: -0.09, usualWmK: 0 },
];
