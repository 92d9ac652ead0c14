/**
 * Heat loss of slabs on grade by their edge, F in Btu/(h ft F) of edge. Washington Administrative Code 51-11C-61061 Table A106.1 (public law; the layout of the
 * national commercial standard): 6 in of concrete, bottom at grade, soil k 0.75.
 */
export const SLAB_SOURCE = "Washington Administrative Code 51-11C-61061 Table A106.1";

export interface SlabRow {
  readonly kind: "slab" | "heated slab";
  readonly insulation: string;
  readonly f: number;
}

const unheated = (insulation: string, f: number): SlabRow => ({ kind: "slab", insulation, f });

export const SLAB_F: readonly SlabRow[] = [
  unheated("none", 0.73),
  unheated("R-5 2 ft horizontal", 0.7),
  unheated("R-10 2 ft horizontal", 0.7),
  unheated("R-15 2 ft horizontal", 0.69),
  unheated("R-5 4 ft horizontal", 0.67),
  unheated("R-10 4 ft horizontal", 0.64),
  unheated("R-15 4 ft horizontal", 0.63),
  unheated("R-5 2 ft vertical", 0.58),
  unheated("R-10 2 ft vertical", 0.54),
  unheated("R-15 2 ft vertical", 0.52),
  unheated("R-5 4 ft vertical", 0.54),
  unheated("R-10 4 ft vertical", 0.48),
  unheated("R-15 4 ft vertical", 0.45),
  { kind: "heated slab", insulation: "none", f: 0.84 },
];

/** Basements by depth below grade: U of the wall below grade and F of the slab at its foot. Washington Administrative Code 51-11-0530 Table 5-1 (older residential). */
export const BASEMENT_SOURCE = "Washington Administrative Code 51-11-0530 Table 5-1";

export interface BasementRow {
  readonly insulation: string;
  readonly depthFt: number;
  readonly wallU: number;
  /** undefined: not printed */
  readonly slabF: number | undefined;
}

const basement = (insulation: string, depthFt: number, wallU: number, slabF: number | undefined): BasementRow => ({
  insulation,
  depthFt,
  wallU,
  slabF,
});

export const BASEMENTS: readonly BasementRow[] = [
  basement("R-19 interior", 2, 0.043, 0.69),
  basement("R-19 interior", 3.5, 0.041, 0.64),
  basement("R-19 interior", 7, 0.037, 0.57),
  basement("R-10 exterior", 2, 0.07, 0.6),
  basement("R-10 exterior", 3.5, 0.064, 0.57),
  basement("R-10 exterior", 7, 0.056, 0.42),
  basement("R-12 exterior", 2, 0.061, undefined),
  basement("R-12 exterior", 3.5, 0.057, undefined),
  basement("R-12 exterior", 7, 0.05, undefined),
];

/**
 * Floors over crawl spaces, U in Btu/(h ft2 F) of floor. Washington Administrative Code 51-11C-61051 (public law, text of 2022). Crawl space: one used as a heated
 * plenum, insulated at its perimeter from the rim joist down and 24 in inward on the ground cover. Open crawl space: a wood joist floor over outdoor air.
 */
export const CRAWL_SOURCE = "Washington Administrative Code 51-11C-61051 Table A105.1(2)";
export const OPEN_FLOOR_SOURCE = "Washington Administrative Code 51-11C-61051, exposed floors, wood joists";

export interface FloorRow {
  readonly kind: "crawl space" | "open crawl space";
  readonly insulation: string;
  readonly u: number;
}

const crawl = (insulation: string, u: number): FloorRow => ({ kind: "crawl space", insulation, u });
const open = (insulation: string, u: number): FloorRow => ({ kind: "open crawl space", insulation, u });

export const FLOORS: readonly FloorRow[] = [
  crawl("R-11 perimeter", 0.085),
  crawl("R-19 perimeter", 0.075),
  crawl("R-30 perimeter", 0.069),
  open("R-11 floor", 0.088),
  open("R-15 floor", 0.076),
  open("R-19 floor", 0.062),
  open("R-21 floor", 0.057),
  open("R-25 floor", 0.051),
  open("R-30 floor", 0.04),
  open("R-38 floor", 0.034),
];
