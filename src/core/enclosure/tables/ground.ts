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
