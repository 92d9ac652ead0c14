import { createRequire } from "node:module";
import { describe, expect, test } from "vitest";
import { dewPointF } from "../../src/core/enclosure/air/humid-air.ts";
import { type SaturationFormula, saturationPressurePa } from "../../src/core/enclosure/air/saturation.ts";
import { cToF, fToC } from "../../src/core/enclosure/air/si.ts";
import { convert } from "../../src/core/units/quantity.ts";
import { halfLastDigit, offAsKnown, rows } from "./rows.ts";

/** The test peer is one shared object with a global unit system and no types. */
interface Peer {
  SI: number;
  SetUnitSystem(system: number): void;
  GetSatVapPres(tempC: number): number;
  GetTDewPointFromRelHum(tempC: number, rh: number): number;
}
const peer = createRequire(import.meta.url)("psychrolib") as Peer;
peer.SetUnitSystem(peer.SI);

describe("saturation pressure", () => {
  test.each(
    rows("enclosure-saturation.csv").map((r) => [`${r.formula} at ${r.T} ${r.T_unit}: ${r.source}`, r] as const),
  )("%s", (_name, row) => {
    const { formula, T = "", T_unit, printed = "", unit = "", claim = "", disagrees } = row;
    const curve: SaturationFormula = formula === "HW" ? "ASHRAE" : "ISO 13788";
    const at = (t: number) => convert(saturationPressurePa(T_unit === "F" ? fToC(t) : t, curve), "Pa", unit);
    const got = at(Number(T));
    let within = halfLastDigit(printed);
    if (claim === "T") {
      // The printed value may belong to any temperature that prints as T.
      within += Math.max(...[-1, 1].map((side) => Math.abs(at(Number(T) + side * halfLastDigit(T)) - got)));
    } else if (claim !== "") within = Math.max(within, Number(claim) * Number(printed));
    if (disagrees === "") expect(Math.abs(got - Number(printed))).toBeLessThanOrEqual(within * (1 + 1e-9));
    else expect(offAsKnown(got, row, within)).toBe(true);
  });

  test.each(
    rows("enclosure-psychrolib-saturation.csv").map(({ T_C, printed = "" }) => [Number(T_C), printed] as const),
  )("at %s C is %s Pa in psychrolib", (tempC, printed) => {
    const got = saturationPressurePa(tempC, "ASHRAE");
    expect(Math.abs(got - Number(printed))).toBeLessThanOrEqual(halfLastDigit(printed) * (1 + 1e-9));
    expect(Math.abs(got / peer.GetSatVapPres(tempC) - 1)).toBeLessThan(1e-12);
  });
});

describe("dew point", () => {
  test.each(rows("enclosure-dew-point.csv").map((r) => [`${r.T} ${r.T_unit} ${r.RH} %: ${r.source}`, r] as const))(
    "%s",
    (_name, row) => {
      const { T = "", T_unit, RH, printed = "", formula, disagrees } = row;
      const tempC = T_unit === "F" ? fToC(Number(T)) : Number(T);
      const gotF = dewPointF(tempC, Number(RH) / 100, formula as SaturationFormula);
      const got = T_unit === "F" ? gotF : fToC(gotF);
      const off = Math.abs(got - Number(printed));
      if (disagrees === "") expect(off).toBeLessThanOrEqual(halfLastDigit(printed) * (1 + 1e-9));
      else expect(offAsKnown(got, row, halfLastDigit(printed) * (1 + 1e-9))).toBe(true);
    },
  );

  test.each(
    rows("enclosure-psychrolib-dew-point.csv").map((r) => [Number(r.T_C), Number(r.RH), r.printed ?? ""] as const),
  )("at %s C and RH %s is %s C in psychrolib", (tempC, rh, printed) => {
    // Its iteration stops at 0.001 C: that is what it claims, beside the rounding of the print.
    const got = fToC(dewPointF(tempC, rh, "ASHRAE"));
    expect(Math.abs(got - Number(printed))).toBeLessThanOrEqual(0.001 + halfLastDigit(printed));
    expect(Math.abs(got - peer.GetTDewPointFromRelHum(tempC, rh))).toBeLessThanOrEqual(0.002);
  });

  test("freezing is 0 C and 32 F", () => {
    expect(cToF(0)).toBe(32);
    expect(fToC(212)).toBe(100);
  });
});
