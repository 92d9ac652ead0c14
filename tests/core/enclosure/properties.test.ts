import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dewPointF } from "../../../src/core/enclosure/air/humid-air.ts";
import {
  dewPointFromPressureC,
  SATURATION_FORMULAS,
  saturationPressurePa,
} from "../../../src/core/enclosure/air/saturation.ts";
import { stations } from "../../../src/core/enclosure/climate/stations.ts";
import { airLayerRM2KW } from "../../../src/core/enclosure/layers/air-layer.ts";
import { fixingsU } from "../../../src/core/enclosure/layers/fixings.ts";
import { sdAtM } from "../../../src/core/enclosure/layers/layer-vapor.ts";
import { stackR } from "../../../src/core/enclosure/layers/r-value.ts";
import { rLimits } from "../../../src/core/enclosure/layers/u-factor.ts";
import { temperaturesC } from "../../../src/core/enclosure/moisture/dew-profile.ts";
import { exteriorShareOf } from "../../../src/core/enclosure/moisture/exterior-share.ts";
import { steadyProfile } from "../../../src/core/enclosure/moisture/profile.ts";
import { HEAT_FLOWS } from "../../../src/core/enclosure/tables/films.ts";
import { MATERIALS } from "../../../src/core/enclosure/tables/materials.ts";
import { sentence } from "../../../src/core/kit/refusal.ts";
import { positional } from "../../../src/functions/declare/formula.ts";
import type { RawArgument } from "../../../src/functions/declare/param.ts";
import { enclosureFunctions } from "../../../src/functions/enclosure/index.ts";
import { findMaterial } from "../../../src/functions/enclosure/read/material.ts";
import { invoke } from "../../../src/functions/run/invoke.ts";
import { assemble, type LayerRow } from "./from-text.ts";

const r = fc.double({ min: 0.01, max: 60, noNaN: true });
const rows = (rs: readonly number[], role?: (i: number) => string | undefined): LayerRow[] =>
  rs.map((ip, i) => ({
    row: i + 1,
    material: `layer ${i + 1}`,
    thicknessIn: 1,
    resistance: String(ip),
    vapor: "sd 1",
    role: role?.(i),
  }));

describe("saturation", () => {
  test.each(SATURATION_FORMULAS)("%s rises, and its inverse leads back", (curve) => {
    const [low, high] = curve === "ASHRAE" ? [-100, 200] : [-60, 100];
    let before = 0;
    for (let t = low; t <= high; t += 0.05) {
      const p = saturationPressurePa(t, curve);
      expect(p).toBeGreaterThan(before);
      const dewC = dewPointFromPressureC(p, curve);
      expect(Math.abs(dewC - t)).toBeLessThan(1e-6);
      // Saturated at its dew point to the last digits that a number holds.
      expect(Math.abs(saturationPressurePa(Math.min(high, Math.max(low, dewC)), curve) / p - 1)).toBeLessThan(1e-12);
      before = p;
    }
  });

  test("the ice and water branches of the ASHRAE curve meet without a step", () => {
    const below = saturationPressurePa(0.01, "ASHRAE");
    const above = saturationPressurePa(0.010001, "ASHRAE");
    expect(above / below - 1).toBeLessThan(2e-6);
    expect(above).toBeGreaterThan(below);
  });

  test("a dew point never lies above the air, and rises with humidity", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 60, noNaN: true }),
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        (t, a, b) => {
          const [lo, hi] = [Math.min(a, b), Math.max(a, b)];
          const low = dewPointF(t, lo, "ASHRAE");
          expect(low).toBeLessThanOrEqual(dewPointF(t, hi, "ASHRAE") + 1e-9);
          expect(low).toBeLessThanOrEqual((t * 9) / 5 + 32 + 1e-9);
        },
      ),
    );
  });
});

describe("R and U", () => {
  test("R adds up and does not depend on the order", () => {
    fc.assert(
      fc.property(fc.array(r, { minLength: 2, maxLength: 12 }), (rs) => {
        const total = stackR(assemble(rows(rs), "none", "none"));
        expect(total).toBeCloseTo(
          rs.reduce((a, b) => a + b, 0),
          8,
        );
        expect(stackR(assemble(rows([...rs].reverse()), "none", "none"))).toBeCloseTo(total, 8);
      }),
    );
  });

  test("lower limit <= combined <= upper limit, alike without framing", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(r, r), { minLength: 1, maxLength: 8 }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (pairs, share) => {
          const l = rLimits([
            { name: "a", share: 1 - share, rIp: pairs.map(([a]) => a) },
            { name: "b", share, rIp: pairs.map(([, b]) => b) },
          ]);
          expect(l.lower).toBeLessThanOrEqual(l.combined * (1 + 1e-12));
          expect(l.combined).toBeLessThanOrEqual(l.upper * (1 + 1e-12));
          expect(l.error).toBeGreaterThanOrEqual(-1e-12);
          const same = rLimits([
            { name: "a", share: 1 - share, rIp: pairs.map(([a]) => a) },
            { name: "b", share, rIp: pairs.map(([a]) => a) },
          ]);
          expect(same.upper).toBeCloseTo(same.lower, 8);
        },
      ),
    );
  });

  test("fixings add nothing for none, more for more, and vanish with their depth", () => {
    const wall = assemble([{ row: 1, material: "mineral wool board", thicknessIn: 4 }], "wall", "winter");
    const total = stackR(wall);
    const u = (perFt2: number, depthIn: number | undefined) =>
      fixingsU(
        wall,
        [{ row: 1, name: "steel screw", conductivityWmK: 50, diameterIn: 0.25, perFt2, layerRow: 1, depthIn }],
        total,
      );
    expect(u(2, undefined)).toBeCloseTo(2 * u(1, undefined), 12);
    expect(u(1, 4)).toBeCloseTo(u(1, undefined), 12);
    expect(u(1, 2)).toBeLessThan(u(1, 4));
    expect(u(1, 1e-6)).toBeLessThan(1e-9);
    // By dimension: 0.8 x 50 W/mK x 3.167e-5 m2 x 10.764 /m2 / 0.1016 m x (R1/RT)^2 in W/m2K, / 5.678263.
    const ratio = 1 - 0.85 / total;
    expect(u(1, undefined)).toBeCloseTo(((0.8 * 50 * 3.16692e-5 * 10.76391) / 0.1016 / 5.678263) * ratio ** 2, 6);
  });

  test("an air layer resists more when its faces shine, and heat upward passes most easily", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.005, max: 0.3, noNaN: true }), fc.constantFrom(...HEAT_FLOWS), (d, flow) => {
        const dull = airLayerRM2KW(d, flow, [0.9, 0.9]);
        expect(airLayerRM2KW(d, flow, [0.9, 0.05])).toBeGreaterThan(dull);
        expect(airLayerRM2KW(d, "up", [0.9, 0.9])).toBeLessThanOrEqual(dull + 1e-12);
      }),
    );
  });
});

describe("profiles", () => {
  const air = (te: number, rhi: number, rhe: number) =>
    ({ insideC: 21, insideRh: rhi, outsideC: te, outsideRh: rhe, curve: "ISO 13788" }) as const;

  test("temperature and saturation fall from inside to outside in winter", () => {
    fc.assert(
      fc.property(fc.array(r, { minLength: 1, maxLength: 8 }), fc.integer({ min: -40, max: 15 }), (rs, te) => {
        const p = steadyProfile(assemble(rows(rs), "wall", "winter"), air(te, 0.4, 0.8));
        for (let i = 1; i < p.faces.length; i++) {
          expect(p.faces[i]?.tempC).toBeLessThan(p.faces[i - 1]?.tempC ?? 0);
          expect(p.faces[i]?.saturationPa).toBeLessThan(p.faces[i - 1]?.saturationPa ?? 0);
        }
      }),
    );
  });

  test("more insulation outboard never lowers the temperature at the air barrier in winter, nor its share", () => {
    fc.assert(
      fc.property(fc.array(r, { minLength: 2, maxLength: 6 }), r, fc.integer({ min: -40, max: 15 }), (rs, more, te) => {
        const marked = (values: readonly number[]) =>
          assemble(
            rows(values, (i) => (i === 0 ? "air barrier" : undefined)),
            "wall",
            "winter",
          );
        const thicker = [...rs.slice(0, -1), (rs[rs.length - 1] ?? 0) + more];
        const at = (values: readonly number[]) => temperaturesC(marked(values), { insideC: 21, outsideC: te })[0] ?? 0;
        expect(at(thicker)).toBeGreaterThanOrEqual(at(rs) - 1e-9);
        expect(exteriorShareOf(marked(thicker))).toBeGreaterThanOrEqual(exteriorShareOf(marked(rs)) - 1e-12);
      }),
    );
  });

  test("cutting a layer of whole pieces in two changes no face and no wetting", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.integer({ min: -30, max: 10 }),
        (pieces, sd, te) => {
          const layer = (rsi: number, sdM: number, row: number): LayerRow => ({
            row,
            material: "x",
            thicknessIn: undefined,
            resistance: `RSI ${rsi}`,
            vapor: `sd ${sdM}`,
          });
          const total = pieces * 0.5;
          const outer = layer(0.1, 3, 9);
          const whole = steadyProfile(assemble([layer(total, sd, 1), outer], "wall", "winter"), air(te, 0.6, 0.8));
          const halves = [layer(total / 2, sd / 2, 1), layer(total / 2, sd / 2, 2), outer];
          const cut = steadyProfile(assemble(halves, "wall", "winter"), air(te, 0.6, 0.8));
          const wetting = (p: typeof whole) => p.faces.reduce((sum, f) => sum + f.wettingKgM2s, 0);
          expect(wetting(cut)).toBeCloseTo(wetting(whole), 14);
          expect(cut.faces.at(-1)?.tempC).toBeCloseTo(whole.faces.at(-1)?.tempC ?? 0, 9);
          expect(cut.faces.at(-1)?.vaporPa).toBeCloseTo(whole.faces.at(-1)?.vaporPa ?? 0, 6);
        },
      ),
    );
  });

  test("walls of the built-in materials settle at every winter condition", () => {
    const solid = MATERIALS.filter((m) => m.vapor !== undefined).map((m) => m.name);
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...solid), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: -35, max: 25 }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (names, te, rhi, rhe) => {
          const wall = names.map((material, i): LayerRow => ({ row: i + 1, material, thicknessIn: 1 }));
          const p = steadyProfile(assemble(wall, "wall", "winter"), air(te, rhi, rhe));
          expect(p.layerRh.every((rh) => rh > 0 && rh <= 1)).toBe(true);
        },
      ),
      { numRuns: 500, seed: 6 },
    );
  });
});

describe("tables", () => {
  test("every material lies inside the bounds of its kind, and each name means one material", () => {
    const names = MATERIALS.flatMap((m) => [m.name, ...m.also]);
    expect(new Set(names).size).toBe(names.length);
    for (const m of MATERIALS) {
      expect(findMaterial(m.name)).toBe(m);
      if (m.heat.kind === "k") {
        const top = m.name === "steel sheet" ? 60 : 2.5;
        expect(m.heat.kWmK).toBeGreaterThan(0.015);
        expect(m.heat.kWmK).toBeLessThan(top);
      }
      if (m.heat.kind === "R") expect(m.heat.rM2KW).toBeLessThan(0.5);
      if (m.vapor?.kind === "mu") {
        for (const [, mu] of m.vapor.points) {
          expect(mu).toBeGreaterThanOrEqual(1);
          expect(mu).toBeLessThanOrEqual(20000);
        }
      }
    }
  });

  test("resistance to vapor never rises with humidity", () => {
    const curve = [
      [0.25, 3.5],
      [0.75, 0.6],
    ] as const;
    for (let rh = 0; rh < 1; rh += 0.01) expect(sdAtM(curve, rh + 0.01)).toBeLessThanOrEqual(sdAtM(curve, rh));
  });

  test("every station has a year that can be", () => {
    expect(stations().length).toBe(91);
    for (const s of stations()) {
      expect(s.tempC.length).toBe(12);
      expect(s.vaporPa.length).toBe(12);
      for (const t of s.tempC) expect(Math.abs(t)).toBeLessThan(45);
      for (const p of s.vaporPa) expect(p).toBeGreaterThan(20);
      expect(s.hdd65F).toBeGreaterThanOrEqual(0);
    }
  });
});

describe("any input gives a value or a sentence", () => {
  const cell = fc.oneof(
    fc.constantFrom<unknown>(
      null,
      0,
      "",
      true,
      false,
      { error: "#DIV/0!" },
      "abc",
      "none",
      "5A",
      "12'-6 1/2\"",
      "20 C",
    ),
    fc.constantFrom<unknown>("OSB", "panel", "air space", "ventilated cavity", "air barrier", "mu 5", "k 0.3", "R-5"),
    fc.double(),
    fc.integer({ min: -10, max: 200 }),
    fc.string({ maxLength: 12 }),
  );
  const argument = fc.oneof(
    cell,
    fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 4 }),
  );
  test.each(enclosureFunctions.map((fn) => [fn.name, fn] as const))("%s", (_name, fn) => {
    const example = positional(fn, fn.example.args);
    fc.assert(
      fc.property(
        fc.array(fc.option(argument, { freq: 2, nil: undefined }), {
          minLength: example.length,
          maxLength: example.length,
        }),
        (changes) => {
          const args = example.map((a, i) => (changes[i] === undefined ? a : changes[i]) as RawArgument);
          const outcome = invoke(fn, args);
          if (!outcome.ok) expect(sentence(outcome.said)).not.toContain("fault of the program");
        },
      ),
      { numRuns: 150 },
    );
  });
});
