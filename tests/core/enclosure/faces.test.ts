import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dewLayer, dewProfile } from "../../../src/core/enclosure/moisture/dew-profile.ts";
import { stateOf, steadyProfile } from "../../../src/core/enclosure/moisture/profile.ts";
import { tautString } from "../../../src/core/enclosure/moisture/taut-string.ts";
import {
  nodeTemperaturesC,
  pieceRM2KW,
  subdivide,
  vaporPath,
} from "../../../src/core/enclosure/moisture/vapor-path.ts";
import { cautions, says, value, working } from "./called.ts";
import { assemble, type LayerRow } from "./from-text.ts";
import { relax } from "./obstacle.ts";

interface Plain {
  readonly rsi: number;
  readonly sd: number;
}
const rowsOf = (layers: readonly Plain[]): LayerRow[] =>
  layers.map(({ rsi, sd }, i) => ({
    row: i + 1,
    material: `layer ${i + 1}`,
    thicknessIn: undefined,
    resistance: `RSI ${rsi}`,
    vapor: `sd ${sd}`,
  }));
const wall = (layers: readonly Plain[]) => assemble(rowsOf(layers), "ISO wall", "ISO");
const walls = fc.array(
  fc.record({ rsi: fc.double({ min: 0.01, max: 4, noNaN: true }), sd: fc.double({ min: 0.05, max: 30, noNaN: true }) }),
  { minLength: 2, maxLength: 6 },
);
const winter = fc.record({
  outsideC: fc.integer({ min: -30, max: 12 }),
  insideRh: fc.double({ min: 0.2, max: 0.9, noNaN: true }),
  outsideRh: fc.double({ min: 0.3, max: 1, noNaN: true }),
});
const airOf = (w: { outsideC: number; insideRh: number; outsideRh: number }) =>
  ({ insideC: 20, ...w, curve: "ISO 13788" }) as const;

describe("a face is wet exactly where water gathers", () => {
  test("in 600 random walls, against another solver of the same problem", () => {
    fc.assert(
      fc.property(walls, winter, (layers, w) => {
        const assembly = wall(layers);
        const air = airOf(w);
        const profile = steadyProfile(assembly, air);
        const split = { ...profile.wall, layers: subdivide(profile.wall.layers, pieceRM2KW(profile.wall)) };
        const temperatures = nodeTemperaturesC(split, air.insideC, air.outsideC);
        const path = vaporPath(split, temperatures, [], "ISO 13788");
        const [pi, pe] = [profile.faces[0]?.initialPa ?? 0, profile.faces.at(-1)?.initialPa ?? 0];
        const other = relax(
          {
            r: split.layers.map((l) => l.rM2KW),
            sd: split.layers.map((l) => l.sd[0]?.[1] ?? 0),
            rsi: split.rsiM2KW,
            rse: split.rseM2KW,
          },
          { seconds: 1, ti: air.insideC, te: air.outsideC, pi, pe },
          new Set(),
        );
        const gathered = tautString(path, pi, pe, new Set()).planes.reduce((s, p) => s + p.kgM2s, 0);
        const wetting = profile.faces.reduce((s, f) => s + f.wettingKgM2s, 0);
        expect(wetting).toBeCloseTo(gathered, 15);
        for (const f of profile.faces) {
          expect(f.vaporPa).toBeLessThanOrEqual(f.saturationPa * (1 + 1e-9));
          expect(stateOf(f) === "dry").toBe(!(f.wettingKgM2s > 0));
        }
        // What flows in at the inside less what flows out at the outside is what gathers, by the other solver too.
        const total = [...other.gain.values()].reduce((a, b) => a + b, 0);
        expect(Math.abs(total - gathered)).toBeLessThan(1e-12 + 1e-4 * gathered);
      }),
      { numRuns: 600, seed: 18 },
    );
  });

  test("a cut at which no water gathers moves no answer", () => {
    fc.assert(
      fc.property(walls, winter, fc.nat(5), fc.double({ min: 0.1, max: 0.9, noNaN: true }), (layers, w, at, share) => {
        const i = at % layers.length;
        const { rsi, sd } = layers[i] as Plain;
        const parts = [
          { rsi: rsi * share, sd: sd * share },
          { rsi: rsi * (1 - share), sd: sd * (1 - share) },
        ];
        const cut = [...layers.slice(0, i), ...parts, ...layers.slice(i + 1)];
        const air = airOf(w);
        const whole = steadyProfile(wall(layers), air);
        const halves = steadyProfile(wall(cut), air);
        if (stateOf(halves.faces[i + 1] as (typeof halves.faces)[number]) !== "dry") return;
        const states = (p: typeof whole) => p.faces.map((f) => stateOf(f) !== "dry");
        const without = states(halves).filter((_, n) => n !== i + 1);
        // A face that hardly wets may turn by the other places of the pieces; one that wets does not.
        whole.faces.forEach((f, n) => {
          if (f.wettingKgM2s > 1e-10) expect(without[n]).toBe(true);
        });
      }),
      { numRuns: 300, seed: 19 },
    );
  });

  test("a face that a straight line would call wet is dry where the water forms elsewhere", () => {
    // 70 % of 2337 Pa inside. Behind the first layer, at 9.6 C and 1195 Pa, the straight line still holds 1479 Pa; but the water that
    // forms in the cold outer layers draws the pressure there down to about 400 Pa.
    const layers = [
      { rsi: 1, sd: 5 },
      { rsi: 2, sd: 0.5 },
      { rsi: 0.1, sd: 40 },
    ];
    const air = { insideC: 20, insideRh: 0.7, outsideC: -10, outsideRh: 0.8, curve: "ISO 13788" } as const;
    const profile = steadyProfile(wall(layers), air);
    const line = profile.faces.map((f) => f.initialPa > f.saturationPa);
    const wet = profile.faces.map((f) => stateOf(f) !== "dry");
    expect(line).toEqual([false, true, true, false]);
    expect(wet).toEqual([false, false, true, false]);
    expect(dewLayer(wall(layers), air, "diffusion")).toBe("row 2, layer 2 | layer 3: ice");
  });
});

describe("DEW_LAYER and DEW_PROFILE", () => {
  const outboard: LayerRow[] = [
    { row: 1, material: "panel", thicknessIn: 1.5 },
    { row: 2, material: "membrane of ours", thicknessIn: undefined, vapor: "0.05", role: "air barrier" },
    { row: 3, material: "mineral wool board", thicknessIn: 6 },
    { row: 4, material: "wood siding", thicknessIn: 0.75 },
  ];

  test("names the first wet face of its own profile", () => {
    fc.assert(
      fc.property(walls, winter, (layers, w) => {
        const air = airOf(w);
        const faces = dewProfile(wall(layers), air);
        const first = faces.find((f) => f.state !== "dry");
        const said = dewLayer(wall(layers), air, "diffusion");
        if (first === undefined) expect(said).toBe("none");
        else expect(said).toContain(`${first.name}: ${first.state}`);
        for (const f of faces) expect(f.marginF).toBeGreaterThanOrEqual(-1e-6);
      }),
      { numRuns: 200, seed: 20 },
    );
  });

  test("looks from the outside in where it is hot and damp outdoors, up to the air barrier", () => {
    const summer = { insideC: 20, insideRh: 0.5, outsideC: 35, outsideRh: 0.8, curve: "ISO 13788" } as const;
    const open = outboard.map((r) => (r.row === 2 ? { ...r, role: undefined } : r));
    expect(dewLayer(assemble(open, "wall", "winter"), summer, "air")).toMatch(/: water$/);
    // The dew point is about 31 C: the outer face of the barrier, at the room's side, lies below it.
    expect(dewLayer(assemble(outboard, "wall", "winter"), summer, "air")).toBe(
      "row 3, membrane of ours | mineral wool board: water".replace("row 3", "row 2"),
    );
    expect(dewLayer(assemble(outboard, "wall", "winter"), { ...summer, outsideRh: 0.3 }, "air")).toBe("none");
    expect(() => dewLayer(assemble(outboard, "wall", "winter"), { ...summer, outsideC: 20 }, "air")).toThrow(
      /equally warm/,
    );
  });

  test("warns of inward drive, and asks for the humidity of a warm day", () => {
    const layers = [
      ["panel", 1.5],
      ["mineral wool board", 4],
    ];
    expect(says("DEW_LAYER", layers, 70, 50, 95)).toMatch(
      /Outdoor humidity is missing: 80 % stands in for it in winter only/,
    );
    expect(cautions("DEW_LAYER", layers, 70, 50, 95, 60)).toMatch(/driven inward/);
    expect(working("DEW_LAYER", layers, 70, 50, 20).assumptions.join()).toMatch(/80 % where it is below 50 F/);
    expect(says("DEW_LAYER", layers, 70, 50, 49)).toBe("");
    expect(says("DEW_LAYER", layers, 70, 50, 50)).toMatch(/Outdoor humidity is missing/);
  });

  test("a layer of very much R is refused, and a wall of much of it is cut into so many pieces and no more", () => {
    expect(says("DEW_LAYER", [["x", null, "1e6", "sd 1"]], 70, 50, 20)).toMatch(
      /^#N\/A The R of the x in row 1 is 1000000/,
    );
    expect(says("R_STACK", [["x", null, "2147483647"]])).toMatch(/holds from 0 to 200/);
    expect(says("R_STACK", [["x", null, -1]])).toMatch(/cannot be read/);
    const heavy = Array.from({ length: 60 }, () => ({ rsi: 30, sd: 1 }));
    const moist = steadyProfile(wall(heavy), airOf({ outsideC: -10, insideRh: 0.5, outsideRh: 0.8 })).wall;
    expect(subdivide(moist.layers, pieceRM2KW(moist)).length).toBeLessThanOrEqual(460);
    expect(pieceRM2KW({ layers: [], rsiM2KW: 0.1, rseM2KW: 0.1 })).toBe(0.25);
    expect(subdivide(moist.layers.slice(0, 1), 0.25).length).toBe(120);
  });
});

describe("films", () => {
  test("take an R with a unit, a part of the house, or none, and no R that no film has", () => {
    const r = (film: string | number) => value("R_STACK", [["x", null, 10]], film, "none");
    expect(r("wall")).toBeCloseTo(10.68, 12);
    expect(r("roof")).toBeCloseTo(10.61, 12);
    expect(r("floor")).toBeCloseTo(10.92, 12);
    expect(r("RSI 0.12")).toBeCloseTo(10 + 0.12 * 5.678263, 5);
    expect(r("0.12 m2K/W")).toBeCloseTo(10 + 0.12 * 5.678263, 5);
    expect(r("none")).toBe(10);
    expect(r(0.5)).toBe(10.5);
    expect(value("R_STACK", [["x", null, 10]], "none", "roof")).toBeCloseTo(10.17, 12);
    expect(value("R_STACK", [["x", null, 10]], "none", "summer")).toBeCloseTo(10.25, 12);
    expect(value("R_STACK", [["x", null, 10]], "floor", "still air")).toBeCloseTo(11.84, 12);
    expect(says("R_STACK", [["x", null, 10]], "-1")).toMatch(/inside film "-1" is not known/);
    expect(says("R_STACK", [["x", null, 10]], 13)).toMatch(/R of the inside film is 13/);
    expect(says("R_STACK", [["x", null, 10]], "none", "windy")).toMatch(/outside film "windy"/);
  });
});

describe("humidity of the air", () => {
  test("a share and a percent are read by one rule, as a number and as a text, and dry air is asked about", () => {
    for (const half of [50, 0.5, "50", "0.5", "50%"]) expect(value("DEW_POINT", 70, half)).toBeCloseTo(50.53, 2);
    expect(cautions("DEW_POINT", 70, 3)).toMatch(/below the usual 5/);
    expect(cautions("DEW_POINT", 21, 50)).toMatch(/is it in F\?/);
    expect(says("DEW_POINT", 70, -1)).toMatch(/must be above 0 % and at most 100 %/);
    expect(says("DEW_HUMIDITY", 70, 71)).toMatch(/dew point 71 F is above/);
  });
});
