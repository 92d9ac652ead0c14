import type { LengthStep } from "../../../src/core/cutting/lengths/search/search.ts";
import type { SheetStep } from "../../../src/core/cutting/sheets/search/search.ts";

/** The steps of the searches that can be left out, one at a time. */
export const LENGTH_STEPS: readonly LengthStep[] = [
  "dual-feasible functions",
  "exchange",
  "memory",
  "covering",
  "dive",
];
export const SHEET_STEPS: readonly SheetStep[] = [
  "dual-feasible functions",
  "joining",
  "goal search",
  "memory",
  "raster",
  "sets",
  "dive",
  "beam",
];
