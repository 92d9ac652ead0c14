import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { stationClimate } from "../../../src/core/enclosure/climate/climate.ts";
import { stations } from "../../../src/core/enclosure/climate/stations.ts";
import { monthlyAir } from "../../../src/core/enclosure/moisture/indoor.ts";
import { tautString } from "../../../src/core/enclosure/moisture/taut-string.ts";
import { type MoistWall, nodeTemperaturesC, vaporPath } from "../../../src/core/enclosure/moisture/vapor-path.ts";
import { type DryOut, type MonthAir, wettingYear } from "../../../src/core/enclosure/moisture/wetting-year.ts";
import { MATERIALS } from "../../../src/core/enclosure/tables/materials.ts";
import { enclosureFunctions } from "../../../src/functions/enclosure/index.ts";
import { readStation } from "../../../src/functions/enclosure/read/station.ts";
import { invoke } from "../../../src/functions/run/invoke.ts";
import { halfLastDigit, rows } from "../../published/rows.ts";
import { CLASS_2_OF_2001 } from "./from-text.ts";
import { relax, relaxYear, type TestMonth, type TestWall } from "./obstacle.ts";

const moist = (w: TestWall): MoistWall => ({
  layers: w.r.map((rM2KW, i) => ({
    row: i + 1,
    name: `layer ${i + 1}`,
    rM2KW,
    sd: [[0.5, w.sd[i] ?? 0]],
  })),
  rsiM2KW: w.rsi,
  rseM2KW: w.rse,
});
const class2 = CLASS_2_OF_2001;

describe("the regression set, computed by another method", () => {
  const layers = rows("../core/enclosure/monthly-assemblies.csv");
  const lines = rows("../core/enclosure/monthly-regression.csv");
  const wallOf = (assembly: string): TestWall => {
    const own = layers.filter((l) => l.assembly === assembly);
    return { r: own.map((l) => Number(l.R)), sd: own.map((l) => Number(l.sd)), rsi: 0.13, rse: 0.04 };
  };
  const cases = [...new Set(lines.map((l) => `${l.city}|${l.assembly}|${l.variant}`))];
  test.each(cases)("%s", (name) => {
    const [city = "", assembly = "", variant] = name.split("|");
    const station = stations().find((s) => s.name === city);
    if (station === undefined) throw new Error(`no station ${city}`);
    const air = monthlyAir(stationClimate(station), class2);
    const year = wettingYear(moist(wallOf(assembly)), air, variant === "split" ? "split" : "zero");
    const wanted = lines.filter((l) => `${l.city}|${l.assembly}|${l.variant}` === name);
    if (variant === "none") {
      expect(year.peakKgM2).toBe(0);
      return;
    }
    expect(year.months.map((m) => m.month.name.toLowerCase())).toEqual(wanted.map((w) => w.month));
    year.months.forEach((m, i) => {
      const want = wanted[i];
      const printed = new Map(
        (want?.standing ?? "")
          .split(";")
          .filter(Boolean)
          .map((p) => p.split(":") as [string, string]),
      );
      expect(Math.abs(m.totalKgM2 - Number(want?.total))).toBeLessThanOrEqual(halfLastDigit(want?.total ?? "") * 1.001);
      for (const [node, amount] of printed) {
        expect(Math.abs((m.standing.get(Number(node)) ?? 0) - Number(amount))).toBeLessThanOrEqual(0.0000501);
      }
      // With the month split, the set states the rates after the last plane dried; ours are those with which the month began.
      if (variant === "split" && m.rates.length !== m.standing.size) return;
      for (const pair of (want?.rates ?? "").split(";").filter(Boolean)) {
        const [node, rate = ""] = pair.split(":");
        const got = m.rates.find((r) => r.node === Number(node))?.kgM2s ?? 0;
        expect(Math.abs(got - Number(rate))).toBeLessThanOrEqual(halfLastDigit(rate) * 1.001);
      }
    });
  });
});

const wallArbitrary = fc
  .array(
    fc.record({
      r: fc.double({ min: 0.005, max: 5, noNaN: true }),
      sd: fc.double({ min: 0.05, max: 50, noNaN: true }),
    }),
    {
      minLength: 2,
      maxLength: 7,
    },
  )
  .map((l): TestWall => ({ r: l.map((x) => x.r), sd: l.map((x) => x.sd), rsi: 0.13, rse: 0.04 }));
const stationArbitrary = fc.constantFrom(...stations());

const asTestMonth = (m: MonthAir): TestMonth => ({
  seconds: m.seconds,
  ti: m.insideC,
  pi: m.insidePa,
  te: m.outsideC,
  pe: m.outsidePa,
});

describe("against the obstacle problem by projected relaxation", () => {
  test("the steady profile of 200 random walls", () => {
    let worstPa = 0;
    fc.assert(
      fc.property(
        wallArbitrary,
        fc.integer({ min: -30, max: 15 }),
        fc.double({ min: 0.2, max: 0.95, noNaN: true }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (wall, te, rhi, rhe) => {
          const w = moist(wall);
          const temperatures = nodeTemperaturesC(w, 20, te);
          const path = vaporPath(w, temperatures, [], "ISO 13788");
          const month = {
            seconds: 1,
            ti: 20,
            te,
            pi: rhi * 2337,
            pe: rhe * (path.saturationPa[path.saturationPa.length - 1] ?? 0),
          };
          const { p } = relax(wall, month, new Set());
          const string = tautString(path, month.pi, month.pe, new Set());
          p.forEach((pa, i) => {
            worstPa = Math.max(worstPa, Math.abs(pa - (string.pressurePa[i] ?? 0)));
          });
          expect(worstPa).toBeLessThan(1e-4);
        },
      ),
      { numRuns: 200, seed: 1 },
    );
  });

  test("the year of 200 random walls, with the month split at dry-out and without", () => {
    fc.assert(
      fc.property(
        wallArbitrary,
        stationArbitrary,
        fc.constantFrom<DryOut>("zero", "split"),
        (wall, station, dryOut) => {
          const air = monthlyAir(stationClimate(station), class2);
          const year = wettingYear(moist(wall), air, dryOut);
          const start = air.findIndex((m) => m.name === year.months[0]?.month.name);
          const other = relaxYear(wall, air.map(asTestMonth), start, dryOut === "split");
          year.months.forEach((m, i) => {
            const total = [...(other[i]?.values() ?? [])].reduce((a, b) => a + b, 0);
            expect(Math.abs(m.totalKgM2 - total)).toBeLessThan(1e-6 + 1e-5 * total);
          });
        },
      ),
      { numRuns: 200, seed: 2 },
    );
  });
});

describe("the year", () => {
  test("closes its mass balance every month", () => {
    fc.assert(
      fc.property(
        wallArbitrary,
        stationArbitrary,
        fc.constantFrom<DryOut>("zero", "split"),
        (wall, station, dryOut) => {
          const year = wettingYear(moist(wall), monthlyAir(stationClimate(station), class2), dryOut);
          for (const m of year.months) {
            // Where a plane is set to zero the rest of the month's drying is none, and the balance leaves it out too.
            expect(Math.abs(m.balanceKgM2 - m.changeKgM2)).toBeLessThan(1e-9 + 1e-9 * m.totalKgM2);
            expect(m.totalKgM2).toBeGreaterThanOrEqual(0);
          }
        },
      ),
      { numRuns: 200, seed: 3 },
    );
  });

  test("settles for walls of the built-in materials, whose resistance depends on the humidity in them", () => {
    const solid = MATERIALS.filter((m) => m.vapor !== undefined).map((m) => m.name);
    const months = enclosureFunctions.find((f) => f.name === "DEW_MONTHS");
    const layer = fc.tuple(fc.constantFrom(...solid), fc.double({ min: 0.2, max: 8, noNaN: true }));
    fc.assert(
      fc.property(
        fc.array(layer, { minLength: 1, maxLength: 7 }),
        stationArbitrary,
        fc.constantFrom("class 2", "class 4", "EN 15026 high"),
        fc.constantFrom("zero", "split"),
        (layers, station, indoor, dryOut) => {
          if (months === undefined) throw new Error("not declared");
          expect(invoke(months, [layers, station.wmo, indoor, null, dryOut])).toMatchObject({ ok: true });
        },
      ),
      { numRuns: 150, seed: 7 },
    );
  });

  test("a layer cut in two changes nothing where no water forms inside it", () => {
    fc.assert(
      fc.property(wallArbitrary, stationArbitrary, fc.nat(6), (wall, station, at) => {
        const i = at % wall.r.length;
        const halve = (v: readonly number[]) => v.flatMap((x, j) => (j === i ? [x / 2, x / 2] : [x]));
        const cut = { ...wall, r: halve(wall.r), sd: halve(wall.sd) };
        const air = monthlyAir(stationClimate(station), class2);
        const whole = wettingYear(moist(wall), air, "zero");
        const parts = wettingYear(moist(cut), air, "zero");
        const inside = parts.months.some((m) => m.rates.some((r) => r.node === i + 1));
        if (!inside) expect(Math.abs(whole.peakKgM2 - parts.peakKgM2)).toBeLessThan(1e-9 + 1e-9 * whole.peakKgM2);
      }),
      { numRuns: 150, seed: 4 },
    );
  });
});

test("a station is found by city and state, and two Portlands are asked about", () => {
  expect(readStation("Burlington, VT").wmo).toBe("726170");
  expect(() => readStation("Portland")).toThrow(/2 stations.*Portland/);
  expect(() => readStation("Nowhere")).toThrow(/no station/);
});
