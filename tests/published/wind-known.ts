import { expect } from "vitest";
import { halfLastDigit, type Row } from "./rows.ts";

/**
 * Holds a value against a printed one: within half of the last printed digit, or, where the row says that the print departs from its own
 * formula, outside that and no further off than the row states.
 */
export function expectPrinted(value: number, row: Row, digit = halfLastDigit(row.printed ?? "")): void {
  const off = Math.abs(value - Number(row.printed));
  if ((row.disagrees ?? "") === "") {
    expect(off, `${value} against ${row.printed}`).toBeLessThanOrEqual(digit * (1 + 1e-9));
    return;
  }
  expect(off, "the row says that it disagrees, and it does not").toBeGreaterThan(digit);
  expect(off, `${value} against ${row.printed}`).toBeLessThanOrEqual(Number(row.off_at_most));
}
