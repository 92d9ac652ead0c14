import { describe, expect, test } from "vitest";
import type { Edition } from "../../../src/core/kit/edition.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { claddingCoefficients } from "../../../src/core/wind/cladding/cladding-coefficients.ts";
import { claddingFigure, type Surface } from "../../../src/core/wind/cladding/cladding-figure.ts";
import { claddingSchedule, type ScheduleInput } from "../../../src/core/wind/cladding/cladding-schedule.ts";
import { givenCoefficients } from "../../../src/core/wind/cladding/given-coefficients.ts";
import { flatRoofZones } from "../../../src/core/wind/cladding/zone-outlines.ts";
import type { WindZonesPicture } from "../../../src/core/wind/pictures.ts";
import { curveText } from "../../../src/core/wind/tables/area-curve.ts";
import { elevationFactor } from "../../../src/core/wind/velocity-pressure.ts";

function worked(work: (tape: Tape) => unknown): Tape {
  const tape = new Tape();
  work(tape);
  return tape;
}

const read = (surface: Surface, zone: string, areaFt2: number, slopeDeg: number, edition: Edition, tape?: Tape) =>
  claddingCoefficients({ surface, zone, areaFt2, slopeDeg, given: [], edition }, tape);

/** An area half way between two others on the paper of the figures. */
const middle = (one: number, other: number) => Math.sqrt(one * other);

describe("coefficients half way between the nodes of their curves", () => {
  test("overhangs of low roofs to 7-10: -1.7 at 10 ft2, -1.6 at 100, -1.1 from 500", () => {
    const edge = (areaFt2: number) => read("flat overhang", "2", areaFt2, 2, "7-10").away;
    expect([edge(5), edge(10), edge(100), edge(500), edge(900)]).toEqual([-1.7, -1.7, -1.6, -1.1, -1.1]);
    expect(edge(middle(10, 100))).toBeCloseTo(-1.65, 12);
    expect(edge(middle(100, 500))).toBeCloseTo(-1.35, 12);
    expect(read("flat overhang", "3", middle(10, 100), 2, "7-10").away).toBeCloseTo(-1.8, 12);
  });

  test("overhangs of gables to 7-10", () => {
    expect([1, 10, 300].map((a) => read("gable overhang", "2", a, 20, "7-10").away)).toEqual([-2.2, -2.2, -2.2]);
    expect(read("gable overhang", "3", middle(10, 100), 20, "7-10").away).toBeCloseTo(-3.1, 12);
    expect(read("gable overhang", "3", middle(10, 100), 40, "7-10").away).toBeCloseTo(-1.9, 12);
  });

  test("a curve of one node is told as such", () => {
    expect(curveText([[10, -2.2]])).toBe("-2.2 for any area");
    expect(
      curveText([
        [10, -2],
        [100, -1],
      ]),
    ).toBe("-2 at 10 ft2, -1 at 100 ft2; straight in log10(area) between, level beyond");
  });
});

describe("figures by slope", () => {
  const figure = (surface: Surface, slopeDeg: number, edition: Edition) =>
    claddingFigure(surface, slopeDeg, edition).figure;

  test("change just above 3, 7, 20 and 27 degrees", () => {
    expect([figure("monoslope", 3, "7-10"), figure("monoslope", 3.5, "7-10")]).toEqual([
      "Fig. 30.4-2A",
      "Fig. 30.4-5A",
    ]);
    expect([figure("gable", 7, "7-22"), figure("gable", 7.5, "7-22")]).toEqual(["Fig. 30.3-2A", "Fig. 30.3-2B"]);
    expect([figure("gable", 20, "7-22"), figure("gable", 20.5, "7-22")]).toEqual(["Fig. 30.3-2B", "Fig. 30.3-2C"]);
    expect([figure("hip", 27, "7-22"), figure("hip", 28, "7-22")]).toEqual([
      "Fig. 30.3-2F",
      "Figs. 30.3-2F and 30.3-2G",
    ]);
    expect([figure("hip", 45, "7-22"), figure("hip", 44, "7-22")]).toEqual([
      "Fig. 30.3-2G",
      "Figs. 30.3-2F and 30.3-2G",
    ]);
  });

  test("corners of gentle hips to 7-10 are edges just above 7 to 25 degrees", () => {
    const corner = (slopeDeg: number) => read("hip", "3", 10, slopeDeg, "7-10").away;
    const edge = (slopeDeg: number) => read("hip", "2", 10, slopeDeg, "7-10").away;
    expect([corner(7.5), corner(25)]).toEqual([edge(7.5), edge(25)]);
    expect(corner(7)).toBeLessThan(edge(7));
    expect(corner(26)).toBeLessThan(edge(26));
  });
});

describe("what the working says of a coefficient", () => {
  const clauses = (...at: Parameters<typeof read>) =>
    worked((t) => read(at[0], at[1], at[2], at[3], at[4], t)).steps.map((s) => s.clause);
  const said = (...at: Parameters<typeof read>) =>
    worked((t) => read(at[0], at[1], at[2], at[3], at[4], t)).cautions.join(" ");

  test("the print that it was read in, where there is one", () => {
    expect(clauses("gable", "2", 20, 15, "7-22").at(-1)).toMatch(/^ASCE\/SEI 7-22 Fig. 30.3-2B \(recovered from/);
    expect(clauses("flat", "2", 20, 2, "7-10").at(-1)).toBe("ASCE/SEI 7-10 Fig. 30.4-2A");
  });

  test("from memory as a whole, for every area", () => {
    for (const areaFt2 of [1, 10, 100]) {
      for (const text of [
        said("monoslope", "2", areaFt2, 5, "7-10"),
        said("monoslope", "2", areaFt2, 20, "7-10"),
        said("gable overhang", "2", areaFt2, 20, "7-10"),
        said("gable overhang", "2", areaFt2, 40, "7-10"),
      ]) {
        expect(text).toMatch(/are from memory/);
        expect(text).not.toMatch(/beyond/);
      }
    }
  });

  test("the tenth off walls under a low roof, and nothing elsewhere", () => {
    const how = (slopeDeg: number) =>
      worked((t) => read("wall", "4", 10, slopeDeg, "7-16", t))
        .steps.map((s) => s.expression)
        .join();
    expect(how(10)).toMatch(/times 0.9, roof up to 10 degrees/);
    expect(how(11)).not.toMatch(/times/);
  });
});

test("coefficients given may be none away, and none toward", () => {
  const given = (away: number, toward: number) =>
    givenCoefficients("gable", [{ zone: "1", areaFt2: 10, toward, away }], "1", 10);
  expect(given(0, 0.3)).toEqual({ toward: 0.3, away: 0 });
  expect(given(-1, 0)).toEqual({ toward: 0, away: -1 });
  expect(() => given(0.1, 0.3)).toThrow(/0.1 away/);
  expect(() => given(-1, -0.1)).toThrow(/-0.1 toward/);
});

describe("the schedule", () => {
  const SITE: ScheduleInput = {
    qPsf: 30,
    kd: 0.85,
    edition: "7-10",
    roof: "flat",
    slopeDeg: 0,
    areasFt2: [100, 10],
    widthFt: 60,
    lengthFt: 90,
    heightFt: 20,
    enclosure: "enclosed",
    level: "strength",
    given: [],
  };
  const tapeOf = (change: Partial<ScheduleInput>) => worked((t) => claddingSchedule({ ...SITE, ...change }, t));
  const views = (change: Partial<ScheduleInput>) =>
    (tapeOf(change).pictures[0] as WindZonesPicture | undefined)?.views.map((v) => v.name);
  const WALLS = ["long wall", "end wall"];

  test("is drawn where width, length and height are all known", () => {
    expect(views({})).toEqual(["roof plan", ...WALLS]);
    for (const missing of ["widthFt", "lengthFt", "heightFt"]) expect(views({ [missing]: undefined })).toBeUndefined();
    expect(views({ widthFt: undefined, lengthFt: undefined })).toBeUndefined();
  });

  test("has a plan of low roofs, and to 7-10 of gables", () => {
    const PLAN = ["roof plan", ...WALLS];
    expect(views({ roof: "gable", slopeDeg: 7 })).toEqual(PLAN);
    expect(views({ roof: "gable", slopeDeg: 7.1 })).toEqual(PLAN);
    expect(views({ roof: "hip", slopeDeg: 7 })).toEqual(PLAN);
    expect(views({ roof: "hip", slopeDeg: 20 })).toEqual(WALLS);
    expect(views({ roof: "gable", slopeDeg: 20, edition: "7-22" })).toEqual(WALLS);
    expect(views({ roof: "monoslope", slopeDeg: 2 })).toEqual(WALLS);
    // Zones of the flat figure are four strips and four corners round one field, those of a gable two fields.
    const fields = (slopeDeg: number) =>
      (tapeOf({ roof: "gable", slopeDeg }).pictures[0] as WindZonesPicture).views[0]?.zones.find((z) => z.label === "1")
        ?.outlines.length;
    expect([fields(7), fields(7.1)]).toEqual([1, 2]);
  });

  test("words: the strongest suction at the area drawn; the working stands for the largest area", () => {
    const tape = tapeOf({});
    // Zones 2 and 3 at 100 ft2: -1.1 and 0.18 within, of 30 psf; zone 5 of the walls -1.05 x 0.9 at most.
    const { alt } = tape.pictures[0] as WindZonesPicture;
    const [, most] = /strongest suction is (-[0-9.]+) psf/.exec(alt) ?? [];
    const rows = claddingSchedule(SITE);
    expect(Number(most)).toBeCloseTo(Math.min(...rows.filter((r) => r.areaFt2 === 100).map((r) => r.awayPsf)), 1);
    expect(Number(most)).toBeGreaterThan(Math.min(...rows.map((r) => r.awayPsf)) + 1);
    expect(tape.steps.filter((s) => s.symbol === "GCp away").at(-1)?.value).toBe(-1.1);
    const gcp = tapeOf({ areasFt2: [10, 100] }).steps.filter((s) => s.symbol === "GCp away");
    expect(gcp.at(-1)?.value).toBe(-1.1);
  });
});

test("the strips of a flat roof lie beside each other, not over each other", () => {
  const area = (zones: ReturnType<typeof flatRoofZones>, zone: string) =>
    (zones?.[zone] ?? []).reduce((sum, outline) => {
      const [xs, ys] = [outline.map((p) => p[0]), outline.map((p) => p[1])];
      return sum + (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
    }, 0);
  const old = flatRoofZones(90, 60, 6, 20, "7-10");
  expect(area(old, "1")).toBeCloseTo(78 * 48, 9);
  expect(area(old, "2")).toBeCloseTo(90 * 60 - 78 * 48, 9);
  expect(area(old, "3")).toBeCloseTo(4 * 36, 9);
  // 0.6 h is 6 ft for 10 ft of height.
  const now = flatRoofZones(90, 60, 6, 10, "7-16");
  expect(area(now, "1")).toBeCloseTo(78 * 48 - 66 * 36, 9);
  expect(area(now, "2")).toBeCloseTo(90 * 60 - 78 * 48, 9);
  expect(area(now, "1'")).toBeCloseTo(66 * 36, 9);
  // Each corner is two legs of 0.6 h by 0.2 h, which share the square at the corner itself.
  expect(area(now, "3")).toBeCloseTo(4 * 2 * 6 * 2, 9);
});

test("the ground lies between -1500 and 15000 ft", () => {
  expect(elevationFactor(15_000, "7-16")).toBeCloseTo(Math.exp(-0.0000362 * 15_000), 12);
  expect(() => elevationFactor(15_001, "7-16")).toThrow(/15000/);
  expect(elevationFactor(-1500, "7-16")).toBeGreaterThan(1);
  expect(() => elevationFactor(-1501, "7-16")).toThrow(/-1500/);
});
