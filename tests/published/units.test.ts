import { expect, test } from "vitest";
import { convert } from "../../src/core/units/quantity.ts";
import { halfLastDigit, rows } from "./rows.ts";

test.each(rows("units.csv").map((row) => [`${row.value} ${row.from} in ${row.to}: ${row.source}`, row] as const))(
  "%s",
  (_name, row) => {
    const { value = "", from = "", to = "", printed = "" } = row;
    const got = convert(Number(value), from, to);
    expect(Math.abs(got - Number(printed))).toBeLessThanOrEqual(halfLastDigit(printed) * (1 + 1e-9));
    expect(convert(got, to, from)).toBeCloseTo(Number(value), 9);
  },
);
