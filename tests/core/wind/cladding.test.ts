import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { EDITIONS } from "../../../src/core/kit/edition.ts";
import { BadInput, OutOfRange } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { type CladdingInput, claddingPressure } from "../../../src/core/wind/cladding/cladding.ts";
import { claddingFigure, SURFACES } from "../../../src/core/wind/cladding/cladding-figure.ts";
import { claddingSchedule } from "../../../src/core/wind/cladding/cladding-schedule.ts";
import type { WindZonesPicture } from "../../../src/core/wind/pictures.ts";
import { gcpAt } from "../../../src/core/wind/tables/area-curve.ts";
import type { CladdingFigure } from "../../../src/core/wind/tables/cladding-zone.ts";

const SLOPES = [0, 5, 8, 15, 20, 25, 30, 40];

/** Every figure held here. */
const FIGURES: (readonly [string, CladdingFigure])[] = EDITIONS.flatMap((edition) =>
  SURFACES.flatMap((surface) =>
    SLOPES.flatMap((slope) => {
      try {
        const figure = claddingFigure(surface, slope, edition);
        return figure.zones === undefined ? [] : [[`${edition} ${surface} ${slope}`, figure] as const];
      } catch {
        return [];
      }
    }),
  ),
);

const INPUT: CladdingInput = {
  qPsf: 30,
  kd: 0.85,
  surface: "wall",
  zone: "5",
  areaFt2: 10,
  slopeDeg: 20,
  enclosure: "enclosed",
  level: "strength",
  heightFt: 25,
  given: [],
  edition: "7-16",
};

const areas = fc.double({ min: 0.1, max: 3000, noNaN: true });

describe("coefficient curves", () => {
  test("a larger area never raises suction or pressure", () => {
    fc.assert(
      fc.property(fc.constantFrom(...FIGURES), areas, areas, ([name, figure], a, b) => {
        const [small, large] = [Math.min(a, b), Math.max(a, b)];
        for (const [zone, { toward, away }] of Object.entries(figure.zones)) {
          expect(gcpAt(away, small), `${name} zone ${zone}`).toBeLessThanOrEqual(gcpAt(away, large) + 1e-12);
          if (toward !== undefined) expect(gcpAt(toward, small)).toBeGreaterThanOrEqual(gcpAt(toward, large) - 1e-12);
        }
      }),
    );
  });

  test("are continuous at every node", () => {
    for (const [, figure] of FIGURES) {
      for (const { toward, away } of Object.values(figure.zones)) {
        for (const curve of [away, ...(toward === undefined ? [] : [toward])]) {
          for (const [area, gcp] of curve) {
            expect(gcpAt(curve, area)).toBeCloseTo(gcp, 12);
            expect(gcpAt(curve, area * (1 - 1e-9))).toBeCloseTo(gcp, 7);
            expect(gcpAt(curve, area * (1 + 1e-9))).toBeCloseTo(gcp, 7);
          }
        }
      }
    }
  });

  test("edges never have less suction than the field, overhang corners of flat roofs in 7-10 apart", () => {
    const order = [
      ["1'", "1", "2", "3"],
      ["1", "2", "2'", "3'"],
      ["1", "2", "3", "3'"],
      ["4", "5"],
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(
          ...FIGURES.filter(([name]) => !name.includes("flat overhang") && !/7-10 .*overhang [05]$/.test(name)),
        ),
        areas,
        ([name, figure], area) => {
          for (const zones of order) {
            const held = zones
              .filter((z) => Object.hasOwn(figure.zones, z))
              .map((z) => gcpAt(figure.zones[z]!.away, area));
            for (let i = 1; i < held.length; i++) expect(held[i], name).toBeLessThanOrEqual(held[i - 1]! + 1e-12);
          }
        },
      ),
    );
  });
});

describe("pressure", () => {
  test("grows with q, keeps the least 16 psf, and the allowable level is 0.6 of it", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 200, noNaN: true }),
        areas,
        fc.constantFrom("4", "5"),
        (qPsf, areaFt2, zone) => {
          const input = { ...INPUT, qPsf, areaFt2, zone };
          const net = claddingPressure(input);
          expect(net.towardPsf).toBeGreaterThanOrEqual(16);
          expect(net.awayPsf).toBeLessThanOrEqual(-16);
          const more = claddingPressure({ ...input, qPsf: qPsf * 1.1 });
          expect(more.towardPsf).toBeGreaterThanOrEqual(net.towardPsf);
          expect(more.awayPsf).toBeLessThanOrEqual(net.awayPsf);
          const allowable = claddingPressure({ ...input, level: "allowable" });
          expect(allowable.towardPsf).toBeCloseTo(0.6 * net.towardPsf, 9);
          expect(allowable.awayPsf).toBeCloseTo(0.6 * net.awayPsf, 9);
        },
      ),
    );
  });

  test("walls agree between editions, once Kd has moved", () => {
    const of = (edition: CladdingInput["edition"], qPsf: number) => claddingPressure({ ...INPUT, edition, qPsf });
    expect(of("7-10", 30)).toEqual(of("7-16", 30));
    expect(of("7-22", 30 / 0.85).awayPsf).toBeCloseTo(of("7-16", 30).awayPsf, 9);
  });

  test("a low roof slope takes a tenth off the wall coefficients", () => {
    const tape = new Tape();
    claddingPressure({ ...INPUT, slopeDeg: 10 }, tape);
    expect(tape.steps.find((s) => s.symbol === "GCp away")?.value).toBeCloseTo(-1.26, 9);
    expect(claddingPressure({ ...INPUT, slopeDeg: 10.1 })).toEqual(claddingPressure(INPUT));
  });

  test("a more open building has more", () => {
    const partial = claddingPressure({ ...INPUT, enclosure: "partially enclosed" });
    expect(partial.awayPsf).toBeLessThan(claddingPressure(INPUT).awayPsf);
    expect(claddingPressure({ ...INPUT, enclosure: "partially open" })).toEqual(claddingPressure(INPUT));
  });

  test("gentle hips take zone 2 in their corners in 7-10", () => {
    const hip: CladdingInput = { ...INPUT, surface: "hip", zone: "3", edition: "7-10" };
    expect(claddingPressure(hip)).toEqual(claddingPressure({ ...hip, zone: "2" }));
    expect(claddingPressure({ ...hip, slopeDeg: 26 }).awayPsf).toBeLessThan(claddingPressure(hip).awayPsf);
  });
});

describe("refusals", () => {
  const refused = (change: Partial<CladdingInput>) => () => claddingPressure({ ...INPUT, ...change });

  test("name the clause or figure that stops", () => {
    expect(refused({ heightFt: 61 })).toThrow(/60 ft/);
    expect(refused({ heightFt: 61 })).toThrow(OutOfRange);
    expect(refused({ enclosure: "open" })).toThrow(OutOfRange);
    expect(refused({ enclosure: "partially open", edition: "7-10" })).toThrow(/no such class/);
    expect(refused({ zone: "3" })).toThrow(/zones 4, 5/);
    expect(refused({ surface: "gable", zone: "2n" })).toThrow(/Fig\. 30\.3-2B/);
    expect(refused({ surface: "gable", zone: "2n", slopeDeg: 26 })).toThrow(/Fig\. 30\.3-2C/);
    expect(refused({ surface: "hip", zone: "1" })).toThrow(/30\.3-2E/);
    expect(refused({ surface: "monoslope", zone: "1", edition: "7-22" })).toThrow(/Fig\. 30\.3-5B/);
    expect(refused({ surface: "gable", zone: "1", slopeDeg: 50 })).toThrow(/45 degrees/);
    expect(refused({ surface: "monoslope", zone: "1", slopeDeg: 31 })).toThrow(/30 degrees/);
    expect(refused({ surface: "gable", zone: "1", slopeDeg: undefined })).toThrow(BadInput);
    expect(refused({ surface: "flat", zone: "1" })).toThrow(OutOfRange);
    expect(refused({ surface: "flat overhang", zone: "1", slopeDeg: 5 })).toThrow(/Fig\. 30\.3-2A/);
    expect(refused({ surface: "monoslope overhang", zone: "1" })).toThrow(/not held/);
  });

  const row = (zone: string, areaFt2: number, toward: number, away: number) => ({ zone, areaFt2, toward, away });

  test("given coefficients are held against what figures hold", () => {
    const gable = { surface: "gable", zone: "3r" } as const;
    expect(refused({ ...gable, zone: "banana", given: [row("banana", 10, 0.5, -3)] })).toThrow(/zones of a gable roof/);
    expect(refused({ ...gable, given: [row("3e", 10, 0.5, -3)] })).toThrow(/no zone "3r".*they hold 3e/);
    expect(refused({ zone: "5", given: [row("5", 10, 1, -9)] })).toThrow(
      /figures of a wall hold 0 to 1.5 toward and -2/,
    );
    expect(refused({ zone: "5", given: [row("5", 10, 1, 1.4)] })).toThrow(/suction below 0/);
    expect(refused({ ...gable, given: [row("3r", 10, 1.6, -3)] })).toThrow(BadInput);
    expect(refused({ ...gable, given: [row("3r", 10, -0.1, -3)] })).toThrow(BadInput);
    expect(refused({ ...gable, given: [row("3r", 10, 0.5, -5.1)] })).toThrow(BadInput);
    expect(refused({ ...gable, given: [row("3r", 20, 0.5, -3)] })).toThrow(/smaller area has more suction/);
    expect(refused({ ...gable, areaFt2: 20, given: [row("3r", 20, 0.5, -3)] })).not.toThrow();
    expect(refused({ ...gable, areaFt2: 4, given: [row("3r", 10, 0.5, -5)] })).not.toThrow();
    expect(refused({ zone: "5", given: [row("5", 10, 1.5, -2)] })).not.toThrow();
  });

  test("coefficients from the reader stand in for a figure not held here, straight in log10(area)", () => {
    const tape = new Tape();
    const given = [row("3r", 100, 0.3, -1), row(" Zone 3R ", 10, 0.5, -3), row("1", 10, 0.5, -1)];
    const at = (areaFt2: number) => claddingPressure({ ...INPUT, surface: "gable", zone: "3R", areaFt2, given }, tape);
    expect(at(10).awayPsf).toBeCloseTo(30 * (-3 - 0.18), 9);
    expect(at(10).towardPsf).toBeCloseTo(30 * (0.5 + 0.18), 9);
    expect(at(Math.sqrt(1000)).awayPsf).toBeCloseTo(30 * (-2 - 0.18), 9);
    expect(at(1000).awayPsf).toBeCloseTo(30 * (-1 - 0.18), 9);
    expect(tape.cautions.join(" ")).toMatch(/as given: it must come from ASCE\/SEI 7-16 Fig\. 30\.3-2B/);
  });

  test("7-22 keeps the coefficient at 100 ft2 beyond, and says so", () => {
    const tape = new Tape();
    const at = (areaFt2: number, t?: Tape) =>
      claddingPressure({ ...INPUT, surface: "gable", zone: "1", areaFt2, edition: "7-22" }, t).awayPsf;
    expect(at(101, tape)).toBe(at(100));
    expect(at(99)).toBeLessThan(at(100));
    expect(tape.assumptions.join(" ")).toMatch(/GCp at 100 ft2 is kept for the 101 ft2/);
    const none = new Tape();
    at(100, none);
    expect(none.assumptions.join(" ")).not.toMatch(/kept/);
    expect(none.cautions.join(" ")).not.toMatch(/memory/);
  });

  test("7-22 hips between 27 and 45 degrees take the worse of both figures, and say so", () => {
    const tape = new Tape();
    const at = (slopeDeg: number, zone: string, areaFt2: number, t?: Tape) =>
      claddingPressure({ ...INPUT, qPsf: 100, surface: "hip", slopeDeg, zone, areaFt2, edition: "7-22" }, t).awayPsf;
    for (const zone of ["1", "2", "3"]) {
      for (const areaFt2 of [10, 30, 100]) {
        expect(at(35, zone, areaFt2, tape)).toBe(Math.min(at(27, zone, areaFt2), at(45, zone, areaFt2)));
      }
    }
    expect(at(35, "2", 10)).toBe(at(27, "2", 10));
    expect(at(35, "3", 10)).toBe(at(45, "3", 10));
    expect(tape.cautions.join(" ")).toMatch(/between 27 and 45 degrees/);
  });

  test("gentle hips take zone 2 in the corners of their overhangs too in 7-10", () => {
    const hip: CladdingInput = { ...INPUT, surface: "hip overhang", zone: "3", edition: "7-10" };
    expect(claddingPressure(hip)).toEqual(claddingPressure({ ...hip, zone: "2" }));
    expect(claddingPressure({ ...hip, slopeDeg: 25 })).toEqual(claddingPressure({ ...hip, slopeDeg: 25, zone: "2" }));
    expect(claddingPressure({ ...hip, surface: "gable overhang" }).awayPsf).toBeLessThan(claddingPressure(hip).awayPsf);
    // At 7 degrees the flat-roof figure holds, whose corners are corners.
    expect(claddingPressure({ ...hip, slopeDeg: 7 })).not.toEqual(claddingPressure({ ...hip, slopeDeg: 7, zone: "2" }));
  });

  test("overhangs to 7-10 have no internal pressure: -2.2 x q above 7 degrees", () => {
    const net = claddingPressure({ ...INPUT, surface: "gable overhang", zone: "2", edition: "7-10" });
    expect(net.awayPsf).toBeCloseTo(30 * -2.2, 9);
    expect(net.towardPsf).toBe(16);
  });

  test("a soffit is a wall", () => {
    expect(claddingPressure({ ...INPUT, surface: "soffit" })).toEqual(claddingPressure(INPUT));
  });

  test("areas above 700 ft2 may take the main-frame pressures", () => {
    const cautions = (areaFt2: number) => {
      const tape = new Tape();
      claddingPressure({ ...INPUT, areaFt2 }, tape);
      return tape.cautions.join(" ");
    };
    expect(cautions(701)).toMatch(/700 ft2 may take/);
    expect(cautions(700)).not.toMatch(/700 ft2 may take/);
    expect(cautions(101)).toMatch(/zone 5 beyond 100 ft2, are from memory/);
  });

  test("what is known from memory only says so", () => {
    for (const change of [
      { surface: "flat", zone: "1", slopeDeg: 2 },
      { surface: "monoslope", zone: "1" },
      { surface: "gable", zone: "3", areaFt2: 20, edition: "7-10" },
    ] as const) {
      const tape = new Tape();
      claddingPressure({ ...INPUT, ...change }, tape);
      expect(tape.cautions.join(" ")).toMatch(/from memory/);
      expect(tape.steps.find((s) => s.symbol === "GCp away")?.clause).toMatch(/from memory/);
    }
  });
});

describe("schedule", () => {
  const schedule = {
    qPsf: 30,
    kd: 0.85,
    roof: "gable",
    slopeDeg: 20,
    areasFt2: [10, 100],
    widthFt: 30,
    lengthFt: 50,
    heightFt: 20,
    enclosure: "enclosed",
    level: "strength",
    given: [],
    edition: "7-10",
  } as const;

  test("holds every zone and area once, each as the single function gives it", () => {
    const rows = claddingSchedule(schedule);
    expect(rows).toHaveLength((2 + 3) * 2);
    for (const { surface, zone, areaFt2, towardPsf, awayPsf } of rows) {
      const one = claddingPressure({ ...INPUT, ...schedule, surface, zone, areaFt2, heightFt: 20 });
      expect([towardPsf, awayPsf]).toEqual([one.towardPsf, one.awayPsf]);
    }
  });

  test("the picture's zones cover the roof and the walls, corners over strips", () => {
    const tape = new Tape();
    const rows = claddingSchedule(schedule, tape);
    expect(tape.steps.at(-1)?.value).toEqual(rows.map((r) => Object.values(r)));
    const picture = tape.pictures[0] as WindZonesPicture;
    expect(picture.views.map((v) => v.name)).toEqual(["roof plan", "long wall", "end wall"]);
    for (const view of picture.views) {
      const area = view.zones
        .flatMap((z) => z.outlines)
        .reduce((sum, o) => sum + (o[2]![0] - o[0]![0]) * (o[2]![1] - o[0]![1]), 0);
      expect(area).toBeCloseTo(view.widthFt * view.heightFt, 9);
    }
  });

  test("a roof figure not held here asks for coefficients, and takes them", () => {
    expect(() => claddingSchedule({ ...schedule, edition: "7-16" })).toThrow(/coefficients/);
    const given = [{ zone: "3r", areaFt2: 10, toward: 0.5, away: -3 }];
    const rows = claddingSchedule({ ...schedule, edition: "7-16", given });
    expect(rows.map((r) => r.zone)).toEqual(["4", "4", "5", "5", "3r", "3r"]);
    expect(rows.at(-1)?.awayPsf).toBeCloseTo(30 * (-3 - 0.18), 9);
  });
});
