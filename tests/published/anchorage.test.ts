import { describe, expect, test } from "vitest";
import { openingsFactor } from "../../src/core/anchorage/openings-factor.ts";
import { overturning } from "../../src/core/anchorage/overturning.ts";
import { sillBolts } from "../../src/core/anchorage/sill-anchors.ts";
import { LEAST_BOND_PSI, PHI, SEISMIC_BOND, SILL_RULES } from "../../src/core/anchorage/tables/anchors.ts";
import { halfLastDigit, rows } from "./rows.ts";

function expectPrinted(got: number, printed: string | undefined, half: number, disagrees: string | undefined): void {
  const off = Math.abs(got - Number(printed));
  if (disagrees === "") expect(off).toBeLessThanOrEqual(half * (1 + 1e-9));
  else {
    expect(off).toBeGreaterThan(half);
    expect(off).toBeLessThanOrEqual(Number(disagrees));
  }
}

describe("walls with openings", () => {
  test.each(
    rows("anchorage-openings.csv").map((r) => [`${r.full_height_percent} %, ${r.opening_height_share} h`, r] as const),
  )("%s", (_n, r) => {
    const [lengthFt, heightFt] = [40, 9];
    const widthFt = lengthFt * (1 - Number(r.full_height_percent) / 100);
    const co = openingsFactor(
      {
        lengthFt,
        heightFt,
        openings:
          widthFt === 0
            ? []
            : [
                {
                  name: "all",
                  widthFt,
                  heightFt: heightFt * Number(r.opening_height_share),
                  count: 1,
                  leftFt: undefined,
                },
              ],
      },
      "2015",
    );
    expectPrinted(co, r.printed, halfLastDigit(r.printed ?? ""), r.disagrees);
  });
});

describe("hold-downs", () => {
  test.each(rows("anchorage-hold-down.csv").map((r) => [`${r.unit_plf} plf, ${r.height_ft} ft`, r] as const))(
    "%s",
    (_n, r) => {
      const lengthFt = Number(r.length_ft);
      const { tensionLb } = overturning(
        {
          shearLb: Number(r.unit_plf) * lengthFt,
          heightFt: Number(r.height_ft),
          armFt: lengthFt,
          deadPlf: Number(r.dead_plf),
          lengthFt,
          postLb: 0,
        },
        { method: "allowable", level: "allowable", duration: "wind" },
        undefined,
      );
      expectPrinted(tensionLb, r.printed_lb, halfLastDigit(r.printed_lb ?? ""), r.disagrees);
    },
  );
});

describe("bolts of a sill", () => {
  test.each(rows("anchorage-sill.csv").map((r) => [`${r.bolt_in} in, G ${r.gravity}: ${r.printed_lb} lb`, r] as const))(
    "%s",
    (_n, r) => {
      const { capacityLb } = sillBolts(
        {
          shearPlf: 100,
          boltIn: Number(r.bolt_in),
          sillIn: Number(r.sill_in),
          gravity: Number(r.gravity),
          concretePsi: 2500,
        },
        { duration: "live", service: "dry", method: "allowable", edition: "2018" },
        undefined,
      );
      expectPrinted(capacityLb, r.printed_lb, Number(r.to_lb) / 2, r.disagrees);
    },
  );
});

test("constants", () => {
  const held: Readonly<Record<string, number>> = {
    "bond cracked": LEAST_BOND_PSI.cracked,
    "bond uncracked": LEAST_BOND_PSI.uncracked,
    "seismic cracked": SEISMIC_BOND.cracked,
    "seismic uncracked": SEISMIC_BOND.uncracked,
    "sill spacing": SILL_RULES.mostIn,
    "sill end": SILL_RULES.endIn,
    "sill end diameters": SILL_RULES.endDiameters,
    "sill least": SILL_RULES.least,
    "phi steel": PHI.steel,
    "phi concrete": PHI.concrete,
  };
  const printed = rows("anchorage-constants.csv").map((r) => [r.quantity, Number(r.printed)]);
  expect(Object.fromEntries(printed)).toEqual(held);
});
