import type { SheetBound } from "../sheets/types.ts";

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
