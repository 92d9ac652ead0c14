import type { AreaCurve } from "./area-curve.ts";

export interface CladdingZone {
  /** GCp of pressure toward the surface; missing on overhangs whose figure holds the uplift of both faces only */
  readonly toward?: AreaCurve;
  /** GCp of pressure away from the surface */
  readonly away: AreaCurve;
  /** where it differs from the figure's */
  readonly printedToFt2?: number;
}

/** A figure of external pressure coefficients GCp for components and cladding. */
export interface CladdingFigure {
  /** number of the figure without its document: "Fig. 30.3-1" */
  readonly figure: string;
  /** largest effective wind area at which a print holds the curves; 0 where all of it is from memory */
  readonly printedToFt2: number;
  /** the print that the curves were read in, or that they give to the digit */
  readonly print?: string;
  /** beyond this area the coefficient at it is kept, on the safe side, since the print ends there */
  readonly keptFromFt2?: number;
  readonly zones: Readonly<Record<string, CladdingZone>>;
  /** a second figure with the same zones: the worse of both is taken */
  readonly orWorse?: { readonly zones: Readonly<Record<string, CladdingZone>>; readonly why: string };
}

/** A figure whose coefficients are not held here: the reader gives GCp from it. */
export interface UnreadFigure {
  readonly figure: string;
  readonly zones: undefined;
}
