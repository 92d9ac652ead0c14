import { describe, expect, test } from "vitest";
import { sentence } from "../../../src/core/kit/refusal.ts";
import type { Table } from "../../../src/core/kit/tape.ts";
import type { RawArgument } from "../../../src/functions/declare/param.ts";
import { functionNamed } from "../../../src/functions/registry.ts";
import { explain, invoke } from "../../../src/functions/run/invoke.ts";
import { parseGrade } from "../../../src/functions/wood/material-param.ts";
import { readSection } from "../../../src/functions/wood/section-param.ts";

function of(name: string) {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(name);
  return fn;
}
/** The answer of a call, or its refusal as one text. */
function cell(name: string, ...args: RawArgument[]) {
  const outcome = invoke(of(name), args);
  return outcome.ok ? outcome.value : sentence(outcome.said);
}
const rowsOf = (value: unknown) => (value as Table).slice(1);
const row = (value: unknown, name: string) => rowsOf(value).find((r) => r[0] === name) ?? [];
const working = (name: string, ...args: RawArgument[]) => explain(of(name), args);
const basis = (...rows: (string | number)[][]): RawArgument => [["Basis", "Value"], ...rows] as RawArgument;

describe("a section", () => {
  const read = (text: string) => {
    const s = readSection(text);
    return s === undefined ? undefined : [s.plies, s.plyIn, s.depthIn, s.nominal !== undefined];
  };
  test.each([
    ["2x10", [1, 1.5, 9.25, true]],
    [" 2 X 10 ", [1, 1.5, 9.25, true]],
    ["2 × 10", [1, 1.5, 9.25, true]],
    ["2 by 10", [1, 1.5, 9.25, true]],
    ["3-2x6", [3, 1.5, 5.5, true]],
    ["(3) 2x6", [3, 1.5, 5.5, true]],
    ["3 ply 2x6", [3, 1.5, 5.5, true]],
    ["3 2x6", [3, 1.5, 5.5, true]],
    ["5.25 x 11.875", [1, 5.25, 11.875, false]],
    ["2.0 x 10", [1, 2, 10, false]],
    ["3-1/2 x 9-1/4", [1, 3.5, 9.25, false]],
    ["3 1/2 x 9 1/4", [1, 3.5, 9.25, false]],
    ["2-1.75x11.875", [2, 1.75, 11.875, false]],
    ["2-1-3/4 x 9-1/2", [2, 1.75, 9.5, false]],
    ['1.5" x 5.5"', [1, 1.5, 5.5, false]],
    ["1.5 in x 5.5 in", [1, 1.5, 5.5, false]],
    ["3/4 x 3.5", [1, 0.75, 3.5, false]],
    ["45x240 mm", [1, 45 / 25.4, 240 / 25.4, false]],
    ["6x6", [1, 5.5, 5.5, true]],
  ])("%s", (text, want) => expect(read(text)).toEqual(want));
  test.each(["", "10", "2x10x12", "two by ten", "x10", "2-x10"])("%s is none", (text) =>
    expect(read(text)).toBeUndefined(),
  );
  test("what cannot be", () => {
    expect(cell("WOOD_SECTION", "2x7")).toContain("A nominal size of 7 in is not sold");
    expect(cell("WOOD_SECTION", "9-2x6")).toContain("9 plies");
    expect(cell("WOOD_SECTION", "45.0 x 240.0")).toContain("write mm behind it");
    expect(cell("WOOD_SECTION", "2x10 notched")).toContain("rules of their own");
    expect(cell("WOOD_SECTION", "tall")).toContain("it is not read as a section");
    expect(cell("WOOD_SECTION", "0.2 x 5.5")).toContain("sizes from 0.25 to 60 in");
  });
  test("properties, one of them, and the weight at 35 pcf", () => {
    expect(cell("WOOD_SECTION", "2x6", "A")).toBe(8.25);
    expect(cell("WOOD_SECTION", "2x6", "weight")).toBeCloseTo((8.25 * 35) / 144, 12);
    expect(rowsOf(cell("WOOD_SECTION", "3-2x6")).map((r) => r[0])).toEqual(["A", "I", "S", "Iy", "Sy", "J", "weight"]);
    expect(row(cell("WOOD_SECTION", "3-2x6"), "Iy").slice(1)).toEqual([(5.5 * 4.5 ** 3) / 12, "in4"]);
    expect((cell("WOOD_SECTION", "2x6") as Table)[0]).toEqual(["property", "value", "unit"]);
  });
});

describe("a material", () => {
  test.each([
    ["Douglas fir-larch No. 2", "Douglas fir-larch", "No. 2"],
    ["DF-L #2", "Douglas fir-larch", "No. 2"],
    ["df no.2", "Douglas fir-larch", "No. 2"],
    ["Doug fir SS", "Douglas fir-larch", "select structural"],
    ["HF stud", "hem-fir", "stud"],
    ["SPF number 1", "spruce-pine-fir", "No. 1"],
    ["spruce-pine-fir, No. 1/No. 2", "spruce-pine-fir", "No. 2"],
    ["SP  No 3", "southern pine", "No. 3"],
    ["southern pine No. 2, 6 in wide", "southern pine", "No. 2"],
  ])("%s", (name, species, grade) => expect(parseGrade(name)).toEqual({ species, grade }));
  test.each(["", "No. 2", "hem-fir", "hem-fir No. 4", "hem-fir __proto__", "oak No. 1", "hem-firs No. 1"])(
    "%s is no generic grade",
    (name) => expect(parseGrade(name)).toBeUndefined(),
  );

  const adjusted = (material: RawArgument, ...rest: RawArgument[]) =>
    cell("WOOD_ADJUSTED", "2x8", material, null, null, "live", null, ...rest);
  test("generic, by the office's name, or one row", () => {
    const values = [
      ["material", "kind", "Fb"],
      ["our joist", "LVL", 2600],
    ] as RawArgument;
    expect(row(adjusted("hem-fir No. 2"), "Fb")).toEqual(["Fb", 850, "CD 1 CF 1.2", 1020]);
    expect(row(adjusted("Our  Joist", values), "Fb")).toEqual(["Fb", 2600, "CD 1", 2600]);
    expect(row(adjusted([["x", "sawn", 1000, null, null, null, null, null, null, null]]), "Fb")).toEqual([
      "Fb",
      1000,
      "CD 1",
      1000,
    ]);
    expect(
      adjusted([
        ["material", "Fb"],
        ["x", "11 MPa"],
      ]),
    ).toEqual([
      ["value", "reference, psi", "factors", "adjusted, psi"],
      ["Fb", expect.closeTo(1595.42, 1), "CD 1", expect.closeTo(1595.42, 1)],
    ]);
  });
  test("slips", () => {
    expect(adjusted("oak No. 1")).toContain("is not known");
    expect(adjusted("2.0E LVL")).toContain("evaluation report of the product");
    expect(adjusted("hem-fir No. 2 treated")).toContain("incised and treated lumber");
    expect(adjusted("hem-fir No. 2 pressure-treated")).toContain("not held here");
    expect(adjusted("hem-fir No. 2 hot")).toContain("temperature factor Ct");
    expect(adjusted("hem-fir No. 2 notched")).toContain("notched, drilled");
    expect(
      adjusted([
        ["material", "Fb", "E"],
        ["x", 1000, 1.6],
      ]),
    ).toContain("must be above 50000 psi");
    expect(
      adjusted([
        ["material", "Fb"],
        ["x", 7],
      ]),
    ).toContain("must be above 20 psi");
    expect(
      adjusted([
        ["material", "E", "Emin"],
        ["x", 580_000, 1_600_000],
      ]),
    ).toContain("changed places");
    expect(
      adjusted([
        ["material", "kind"],
        ["x", "sawn"],
      ]),
    ).toContain("holds no value");
    expect(
      adjusted("a", [
        ["material", "Fb"],
        ["a", 1000],
        ["A", 1100],
      ]),
    ).toContain("stands 2 times");
    expect(
      adjusted("b", [
        ["material", "Fb"],
        ["a", 1000],
      ]),
    ).toContain("such as a");
    expect(cell("WOOD_ADJUSTED", "1.75 x 7.25", "hem-fir No. 2", null, null, "live")).toContain(
      "Write the nominal size",
    );
    expect(cell("WOOD_ADJUSTED", "2x8", "hem-fir No. 2")).toContain("Load duration is missing");
  });
  test("a row that is named like a generic grade is questioned; memory is said", () => {
    const { cautions } = working(
      "WOOD_ADJUSTED",
      "2x8",
      [
        ["material", "Fb"],
        ["hem-fir No. 2", 850],
      ],
      null,
      null,
      "live",
    );
    expect(cautions.join(" ")).toContain("hold the size factor");
    expect(working("WOOD_ADJUSTED", "2x8", "hem-fir No. 2", null, null, "live").cautions.join(" ")).toContain(
      "from memory",
    );
  });
  test("WOOD_VALUES: own rows first, words in any order, no row refused; a row feeds the material", () => {
    const values = [
      ["material", "Fb"],
      ["hem-fir of the mill", 900],
    ] as RawArgument;
    expect(rowsOf(cell("WOOD_VALUES", "hem-fir", values)).map((r) => r[0])).toEqual([
      "hem-fir of the mill",
      "hem-fir select structural",
      "hem-fir No. 1",
      "hem-fir No. 2",
      "hem-fir No. 3",
      "hem-fir stud",
    ]);
    expect(rowsOf(cell("WOOD_VALUES")).length).toBe(37);
    expect(rowsOf(cell("WOOD_VALUES", "pine No. 2 southern 10"))[0]?.[0]).toBe("southern pine No. 2, 10 in wide");
    expect(rowsOf(cell("WOOD_VALUES", "SPF #2")).map((r) => r[0])).toEqual(["spruce-pine-fir No. 2"]);
    expect(rowsOf(cell("WOOD_VALUES", "DF-L SS")).map((r) => r[0])).toEqual(["Douglas fir-larch select structural"]);
    expect(rowsOf(cell("WOOD_VALUES", "SYP")).length).toBe(22);
    expect(rowsOf(cell("WOOD_VALUES", "southern pine No. 1")).length).toBe(5);
    expect(cell("WOOD_VALUES", "oak")).toContain('No material\'s name holds "oak"');
    const [fed] = rowsOf(cell("WOOD_VALUES", "southern pine No. 2, 8"));
    expect(row(adjusted([fed] as RawArgument), "Fb")[1]).toBe(925);
    expect(row(adjusted("southern pine No. 2"), "Fb")[1]).toBe(925);
  });
});

describe("WOOD_ADJUSTED", () => {
  test("lateral stability, repetition, flat use", () => {
    const loose = row(cell("WOOD_ADJUSTED", "2x8", "hem-fir No. 2", 8, "yes", "live"), "Fb");
    expect(loose[2]).toMatch(/^CD 1 CF 1.2 Cr 1.15 CL 0\.\d+$/);
    expect(row(cell("WOOD_ADJUSTED", "8x2", "hem-fir No. 2", null, null, "live"), "Fb")[2]).toBe(
      "CD 1 CF 1.2 Cfu 1.15",
    );
    expect(working("WOOD_ADJUSTED", "8x2", "hem-fir No. 2", null, null, "live").cautions.join(" ")).toContain(
      "wide face",
    );
    expect(working("WOOD_ADJUSTED", "2x8", "hem-fir No. 2", null, null, "live").cautions.join(" ")).not.toContain(
      "wide face",
    );
  });
  test("strength design from a basis, service from a basis", () => {
    const strength = basis(["design method", "strength"], ["load duration", "snow"]);
    expect(row(cell("WOOD_ADJUSTED", "2x8", "hem-fir No. 2", strength), "Fb")[2]).toBe(
      "KF 2.54 phi 0.85 lambda 0.8 CF 1.2",
    );
    const wet = basis(["wood service", "wet"], ["load duration", 1.25]);
    expect(row(cell("WOOD_ADJUSTED", "2x8", "hem-fir No. 2", wet), "Fv")[2]).toBe("CD 1.25 CM 0.97");
  });
});

describe("WOOD_SPAN", () => {
  const span = (...args: RawArgument[]) => cell("WOOD_SPAN", "2x10", "DF-L No. 2", ...args);
  test("a printed ceiling joist: 18 ft 5 in at 19.2 in (IRC 2018 Table R802.5.1(2))", () => {
    const rows = rowsOf(span(19.2, 20, 10, null, "live", "L/240"));
    expect(rows[0]?.[0]).toBe("bending");
    expect(Math.abs(Number(rows[0]?.[1]) - (18 + 5 / 12))).toBeLessThanOrEqual(0.5 / 12);
  });
  test("no repetitive factor over 24 in", () => {
    const at = (spacing: number) => Number(row(span(spacing, 20, 10, null, "live", "L/240"), "bending")[1]);
    expect(at(24) / at(24.001)).toBeCloseTo(Math.sqrt(1.15), 3);
  });
  test("asks for what is not said; refuses feet for inches and no load", () => {
    expect(span(16, 40, 10, null, "live")).toContain("Deflection limit is missing");
    expect(span(16, 40, 10, null, null, "floor")).toContain("Load duration is missing");
    expect(span(1.33, 40, 10, null, "live", "floor")).toContain("must be from 3 to 240 in");
    expect(span(16, 0, 0, null, "live", "floor")).toContain("Live and dead load are both 0");
    expect(span(16, 40, 10, null, "wind", "floor")).toContain("load level is missing");
  });
  test("strength design factors the loads: 1.2 D + 1.6 L, 1.4 D, wind by its level", () => {
    const step = (duration: string, live: number, extra: (string | number)[][] = []) => {
      const args: RawArgument[] = ["2x10", "DF-L No. 2", 12, live, 10, null, duration, "floor"];
      const { steps } = working("WOOD_SPAN", ...args, basis(["design method", "strength"], ...extra));
      return steps.find((s) => s.symbol === "w")?.value;
    };
    expect(step("live", 40)).toBeCloseTo(12 + 64, 9);
    expect(step("permanent", 0)).toBeCloseTo(14, 9);
    expect(step("wind", 30, [["load level", "strength"]])).toBeCloseTo(12 + 30, 9);
    expect(step("wind", 30, [["load level", "allowable"]])).toBeCloseTo(12 + 50, 9);
  });
  test("wind as the live load at allowable level", () => {
    const { steps } = working(
      "WOOD_SPAN",
      "2x6",
      "SPF No. 2",
      16,
      50,
      0,
      null,
      "wind",
      "L/180",
      basis(["load level", "strength"]),
    );
    expect(steps.find((s) => s.symbol === "w")?.value).toBeCloseTo(30, 9);
    expect(steps.find((s) => s.symbol === "L deflection")?.expression).toContain("w 3.33333 lb/in");
  });
});

describe("WOOD_CHECK", () => {
  const HEM = [
    ["material", "Fb", "Fv", "Fcp", "E"],
    ["hem", 1000, 150, 405, 1_300_000],
  ] as RawArgument;
  const check = (loads: RawArgument, ...rest: RawArgument[]) => cell("WOOD_CHECK", "2-2x10", HEM, 12, loads, ...rest);
  const demand = (loads: RawArgument, name: string, duration = "live", ...rest: RawArgument[]) =>
    Number(row(check(loads, null, null, duration, "L/360", ...rest), name)[1]);
  const S = (3 * 9.25 ** 2) / 6;
  test("plf, or rows of loads that say where they stand", () => {
    const moment = (loads: RawArgument) => demand(loads, "bending") * S;
    expect(moment(100)).toBeCloseTo((100 * 144 * 144) / 96, 6);
    expect(moment("100 plf")).toBeCloseTo(moment(100), 6);
    expect(moment([["w", 100, null, null]])).toBeCloseTo(moment(100), 6);
    expect(moment([["w", 100, 0, 0]])).toBeCloseTo(moment(100), 6);
    expect(moment([["w", "100 plf", 0, 12]])).toBeCloseTo(moment(100), 6);
    expect(moment([["P", 600, 6, null]])).toBeCloseTo((600 * 144) / 4, 6);
    expect(moment([["P", "0.6 kip", 6, 0]])).toBeCloseTo((600 * 144) / 4, 6);
    expect(
      moment([
        ["load", "amount", "from", "to"],
        ["half", 100, 0, 6],
      ]),
    ).toBeCloseTo((9 / 128) * (100 / 12) * 144 ** 2, 3);
  });
  test("loads that cannot be", () => {
    expect(check(0, null, null, "live", "floor")).toContain("there is nothing to check");
    expect(check([["a", 0, null]], null, null, "live", "floor")).toContain("there is nothing to check");
    expect(check([["P", "600 plf", 6, null]], null, null, "live", "floor")).toContain("it is read as a point");
    expect(check([["w", "600 lb", 2, 6]], null, null, "live", "floor")).toContain("it is read as spread");
    expect(check([["P", 600, 13, null]], null, null, "live", "floor")).toContain("the beam goes from 0 to 144 in");
    expect(check([["P", "600 psf", 6, null]], null, null, "live", "floor")).toContain("neither plf nor lb");
    expect(cell("WOOD_CHECK", "2x10", HEM, 144, 100, null, null, "live", "floor")).toContain("60 ft");
    expect(check(100)).toContain("is missing");
  });
  test("a start at 0 without an end is questioned", () => {
    const { cautions } = working(
      "WOOD_CHECK",
      "2-2x10",
      HEM,
      12,
      [["P", 600, 0, null]] as RawArgument,
      null,
      null,
      "live",
      "floor",
    );
    expect(cautions.join(" ")).toContain("from 0 without an end");
  });
  test("two spans reach twice as far; deflection is that of the live rows", () => {
    const loads = [
      ["load", "amount", "from", "to", "kind"],
      ["D", 50, null, null, "dead"],
      ["L", 100, null, null, "L"],
    ] as RawArgument;
    expect(demand(loads, "deflection")).toBeCloseTo(demand(100, "deflection"), 9);
    expect(demand(loads, "bending")).toBeCloseTo(demand(150, "bending"), 6);
    const two = row(check(100, 2, null, "live", "L/360"), "bending");
    expect(Number(two[1]) * S).toBeCloseTo((100 / 12) * 144 ** 2 * 0.125, 6);
    const alike = (loaded: RawArgument, spans: number) =>
      working("WOOD_CHECK", "2-2x10", HEM, 12, loaded, spans, null, "live", "floor")
        .cautions.join(" ")
        .includes("loaded alike");
    expect([alike(100, 2), alike(100, 1), alike(loads, 2)]).toEqual([true, false, false]);
    const named = working("WOOD_CHECK", "2-2x10", HEM, 12, loads, null, null, "live", "floor");
    expect(named.assumptions.join(" ")).toContain("live loads alone");
  });
  test("wind at strength level is turned, gravity rows are not", () => {
    const strength = basis(["load level", "strength"]);
    expect(demand(100, "bending", "wind", strength)).toBeCloseTo(demand(60, "bending"), 6);
    const loads = [
      ["load", "amount", "from", "to", "kind"],
      ["D", 50, null, null, "dead"],
      ["W", 100, null, null, "wind"],
    ] as RawArgument;
    expect(demand(loads, "bending", "wind", strength)).toBeCloseTo(demand(110, "bending"), 6);
    expect(check(100, null, null, "wind", "floor")).toContain("load level is missing");
  });
  test("bearing only where its length is given", () => {
    expect(rowsOf(check(100, null, null, "live", "floor")).map((r) => r[0])).not.toContain("bearing");
    expect(row(check(100, null, 3, "live", "floor"), "bearing")[1]).toBeCloseTo(600 / 9, 9);
    expect((check(100, null, 3, "live", "floor") as Table)[0]).toEqual([
      "check",
      "demand",
      "capacity",
      "unit",
      "ratio",
      "clause",
    ]);
  });
});

describe("WOOD_COLUMN and WOOD_BEAMCOLUMN", () => {
  const column = (weak: RawArgument, fastening: RawArgument = null, section = "3-2x6") =>
    cell("WOOD_COLUMN", section, "SPF No. 2", 9, weak, "snow", null, fastening);
  test("weak: none is held, left out is the length, longer is questioned", () => {
    expect(Number(column("none"))).toBeGreaterThan(Number(column(4)));
    expect(column(null, "nailed")).toBe(column(9, "nailed"));
    expect(column(0, "nailed")).toBe(column(9, "nailed"));
    expect(column(null)).toContain("slenderness");
    const { cautions } = working("WOOD_COLUMN", "4x4", "SPF No. 2", 9, 12, "snow");
    expect(cautions.join(" ")).toContain("longer than the column");
  });
  test("bolted carries more than nailed", () => {
    expect(Number(column(9, "bolted"))).toBeGreaterThan(Number(column(9, "nailed")));
  });
  test("the level of forces does not change the capacity, and is said", () => {
    const { cautions, outcome } = working(
      "WOOD_COLUMN",
      "4x4",
      "SPF No. 2",
      9,
      "none",
      "wind",
      basis(["load level", "strength"]),
    );
    expect(outcome).toEqual(invoke(of("WOOD_COLUMN"), ["4x4", "SPF No. 2", 9, "none", "wind"]));
    expect(cautions.join(" ")).toContain("bring combined axial loads to allowable level");
    const same = working("WOOD_COLUMN", "4x4", "SPF No. 2", 9, "none", "wind", basis(["load level", "allowable"]));
    expect(same.cautions.join(" ")).not.toContain("LOAD_COMBINE");
  });
  test("inches for feet are refused", () =>
    expect(cell("WOOD_COLUMN", "4x4", "SPF No. 2", 108, null, "snow")).toContain("60 ft"));
  const wind = (lateral: number, level: string) =>
    cell("WOOD_BEAMCOLUMN", "2x6", "SPF No. 2", 9, 500, lateral, "none", "wind", "L/180", basis(["load level", level]));
  test("wind either way, brought to its level; asked where nobody says it", () => {
    expect(wind(-30, "strength")).toEqual(wind(18, "allowable"));
    expect(wind(30, "strength")).toEqual(wind(18, "allowable"));
    expect(cell("WOOD_BEAMCOLUMN", "2x6", "SPF No. 2", 9, 500, 20, "none", "wind", "L/180")).toContain(
      "load level is missing",
    );
    const { cautions } = working(
      "WOOD_BEAMCOLUMN",
      "2x6",
      "SPF No. 2",
      9,
      5,
      20,
      "none",
      "wind",
      "L/180",
      basis(["load level", "strength"]),
    );
    expect(cautions.join(" ")).toContain("The axial load is at allowable level");
    expect(cautions.join(" ")).toContain("is it the axial load in lb?");
  });
});

describe("panels", () => {
  const PANEL = [
    ["value", "along", "across", "unit"],
    ["E", 1_600_000, 400_000, "psi"],
    ["G", 60_000, 10_000, "psi"],
    ["Fb", 1800, 600, "psi"],
    ["Fs", 50, 40, "psi"],
    ["I", 3.375, 1, "in4/ft"],
    ["S", 4.5, 2, "in3/ft"],
    ["Q", 12, 6, "in2/ft"],
    ["thickness", 1.5, "", "in"],
  ];
  const withRow = (...row: (string | number)[]) => [...PANEL.filter((r) => r[0] !== row[0]), row] as RawArgument;
  const check = (panel: RawArgument, span: RawArgument, psf: RawArgument, ...rest: RawArgument[]) =>
    cell("PANEL_CHECK", panel, span, psf, null, null, "L/180", "live", ...rest);
  const panel = PANEL as RawArgument;
  const grain = (way: string) => cell("PANEL_CHECK", panel, 48, 20, null, way, "L/180", "live");
  test("along and across the grain take their own columns; one thickness is enough", () => {
    expect(row(grain("along"), "bending").slice(1, 3)).toEqual([
      expect.closeTo((20 / 12) * (48 ** 2 / 8 / 4.5), 9),
      1800,
    ]);
    expect(row(grain("across"), "bending").slice(1, 3)).toEqual([
      expect.closeTo((20 / 12) * (48 ** 2 / 8 / 2), 9),
      600,
    ]);
    expect((grain("along") as Table)[0]).toEqual(["check", "demand", "capacity", "unit", "ratio"]);
  });
  test("units of values", () => {
    const same = check(panel, 48, 20);
    expect(check(withRow("E", 1.6, 0.4, "10^6 psi"), 48, 20)).toEqual(same);
    expect(check(withRow("Fb", 1.8, 0.6, "ksi"), 48, 20)).toEqual(same);
    expect(check(withRow("thickness", 0.125, "", "ft"), 48, 20)).toEqual(same);
    expect(check(withRow("I", 3.375, 1, "in4"), 48, 20)).toContain("it is counted in in4/ft");
    expect(check(withRow("E", 1.6, 0.4, "psi"), 48, 20)).toContain("Write psi as 1600000");
    expect(check(withRow("Fs", 5000, 40, "psi"), 48, 20)).toContain("panels have from 5 to 2000 psi");
    expect(check([...PANEL, ["E", 1_500_000, "", "psi"]] as RawArgument, 48, 20)).toContain("E stands twice");
  });
  test("a blank is missing and is named, none leaves shear deflection out", () => {
    expect(check(withRow("G", "", "", "psi"), 48, 20)).toContain("The panel's G along the grain is missing");
    expect(check(withRow("G", 0, 0, "psi"), 48, 20)).toContain("The panel's G along the grain is missing");
    expect(Number(row(check(withRow("G", "none", "none", ""), 48, 20), "deflection")[1])).toBeLessThan(
      Number(row(check(panel, 48, 20), "deflection")[1]),
    );
    expect(check(withRow("I", "", 1, ""), 48, 20)).toContain("for a solid section of 1.5 in it would be 3.375");
  });
  test("feet for inches are refused, inches with a unit are not", () => {
    expect(check(panel, 8, 30)).toContain("this looks like feet");
    expect(check(panel, "8 in", 30)).not.toContain("feet");
    expect(check(panel, 11.9, 99)).toContain("looks like feet");
    expect(Array.isArray(check(panel, 12, 30))).toBe(true);
    expect(Array.isArray(check(panel, 8, 100))).toBe(true);
    expect(check(panel, "8 ft", 30)).toEqual(check(panel, 96, 30));
  });
  test("pressure either way, none refused, wind by its level", () => {
    expect(check(panel, 48, -20)).toEqual(check(panel, 48, 20));
    expect(check(panel, 48, 0)).toContain("there is nothing to check");
    const wind = (psf: number, level: string) =>
      cell("PANEL_CHECK", panel, 96, psf, null, null, "L/180", "wind", basis(["load level", level]));
    expect(wind(50, "strength")).toEqual(wind(30, "allowable"));
    expect(cell("PANEL_CHECK", panel, 96, 30, null, null, "L/180", "wind")).toContain("load level is missing");
    expect(check(panel, 48, 20, "wet")).toContain("wet use");
  });
  test("spans: the least first, in inches or in feet and inches", () => {
    const rows = rowsOf(cell("PANEL_SPAN", panel, 30, null, null, "L/180", "live"));
    expect(rows.map((r) => r[1])).toEqual([...rows.map((r) => r[1])].sort((a, b) => Number(a) - Number(b)));
    const least = Number(rows[0]?.[1]);
    const ratio = Number(rowsOf(check(panel, least, 30))[0]?.[4]);
    expect(ratio).toBeCloseTo(1, 6);
    const feet = cell("PANEL_SPAN", panel, 30, null, null, "L/180", "live", basis(["lengths", "feet and inches"]));
    expect(String(rowsOf(feet)[0]?.[1])).toMatch(/^\d+'-\d+/);
  });
});
