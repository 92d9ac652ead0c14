import type { LengthStep } from "../../../src/core/cutting/lengths/search/search.ts";
import type { SheetStep } from "../../../src/core/cutting/sheets/search/search.ts";

/** The steps of the searches that can be left out, one at a time. As keys, so that a new step that is not tried does not compile. */
const LENGTHS: Readonly<Record<LengthStep, true>> = {
  "dual-feasible functions": true,
  exchange: true,
  memory: true,
  covering: true,
  dive: true,
};
const SHEETS: Readonly<Record<SheetStep, true>> = {
  "dual-feasible functions": true,
  joining: true,
  "goal search": true,
  memory: true,
  raster: true,
  sets: true,
  dive: true,
  beam: true,
};
export const LENGTH_STEPS = Object.keys(LENGTHS) as readonly LengthStep[];
export const SHEET_STEPS = Object.keys(SHEETS) as readonly SheetStep[];
