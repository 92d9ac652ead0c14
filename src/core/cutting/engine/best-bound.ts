import type { SheetBound } from "./types.ts";

/** Slack for sums of rounded quotients: only ever weakens a bound. */
const BOUND_SLACK = 1e-9;

/** Rounds a lower bound up to a total that the goal can take. */
export const upToStep = (bound: number, step: number): number =>
  Math.max(0, Math.ceil(bound / step - BOUND_SLACK) * step);

/** The highest lower bound so far, and how it was found. */
export class BestBound {
  value: number;
  method: SheetBound["method"] = "area";

  /** @param area the bound by area, or by length */
  constructor(area: number) {
    this.value = area;
  }

  raise(value: number, method: SheetBound["method"]): void {
    if (value <= this.value) return;
    this.value = value;
    this.method = method;
  }
}
