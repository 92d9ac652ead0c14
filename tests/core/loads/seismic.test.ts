import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type SeismicLevel, type SeismicSystem, seismicForces } from "../../../src/core/loads/seismic.ts";
import { cautions, says, value, working } from "../enclosure/called.ts";

const WOOD: SeismicSystem = { name: "light-frame wood walls", sds: 1, sd1: undefined, s1: undefined, r: undefined };
const SITE = { category: "C", risk: "II", edition: "7-16" } as const;
const level = fc.record({
  name: fc.constant("x"),
  weightLb: fc.double({ min: 100, max: 1e5, noNaN: true }),
  heightFt: fc.double({ min: 5, max: 60, noNaN: true }),
});
const some = fc.array(level, { minLength: 1, maxLength: 4 });
const base = (levels: readonly SeismicLevel[], system = WOOD) =>
  seismicForces(levels, system, SITE).at(-1)?.shearLb ?? 0;

describe("LOAD_SEISMIC", () => {
  test("the forces sum to the base shear, SDS / R of the weight, and the shear grows downward", () => {
    fc.assert(
      fc.property(some, (levels) => {
        const rows = seismicForces(levels, WOOD, SITE);
        const weight = levels.reduce((s, l) => s + l.weightLb, 0);
        expect(base(levels)).toBeCloseTo(weight / 6.5, 4);
        expect(rows.reduce((s, r) => s + r.forceLb, 0)).toBeCloseTo(weight / 6.5, 4);
        const shears = rows.map((r) => r.shearLb);
        expect(shears).toEqual([...shears].sort((a, b) => a - b));
        expect(base(levels.map((l) => ({ ...l, weightLb: 2 * l.weightLb })))).toBeCloseTo((2 * weight) / 6.5, 4);
      }),
    );
  });

  test("of two levels as heavy the higher takes the larger part, by its height", () => {
    const rows = seismicForces(
      [
        { name: "floor", weightLb: 1000, heightFt: 10 },
        { name: "roof", weightLb: 1000, heightFt: 30 },
      ],
      WOOD,
      SITE,
    );
    expect(rows.map((r) => r.name)).toEqual(["roof", "floor"]);
    expect(rows[0]?.forceLb).toBeCloseTo(0.75 * (2000 / 6.5), 9);
    expect(rows[1]?.shearLb).toBeCloseTo(2000 / 6.5, 9);
  });

  test("the cap by the period, the least and the strong ground each govern in their turn", () => {
    const roof = [{ name: "roof", weightLb: 1000, heightFt: 40 }];
    const period = 0.02 * 40 ** 0.75;
    expect(base(roof, { ...WOOD, sd1: 0.2 })).toBeCloseTo((1000 * 0.2) / (period * 6.5), 6);
    expect(base(roof, { ...WOOD, sd1: 0.9 })).toBeCloseTo(1000 / 6.5, 6);
    // 0.044 x 1 is more than 0.02 / (0.318 x 6.5).
    expect(base(roof, { ...WOOD, sd1: 0.02 })).toBeCloseTo(44, 6);
    expect(base(roof, { ...WOOD, sds: 0.05 })).toBeCloseTo(10, 6);
    // S1 counts from 0.6 on: 0.5 x 0.6 / 6.5 = 0.0462.
    expect(base(roof, { ...WOOD, sd1: 0.02, s1: 0.6 })).toBeCloseTo((1000 * 0.3) / 6.5, 6);
    expect(base(roof, { ...WOOD, sd1: 0.02, s1: 0.59 })).toBeCloseTo(44, 6);
    expect(base(roof, { ...WOOD, r: 3 })).toBeCloseTo(1000 / 3, 6);
  });

  test("importance lifts the cap, both least ones, and the period goes by the highest level", () => {
    const at = (system: Partial<SeismicSystem>) =>
      seismicForces([{ name: "r", weightLb: 1000, heightFt: 40 }], { ...WOOD, ...system }, { ...SITE, risk: "IV" }).at(
        -1,
      )?.shearLb;
    const period = 0.02 * 40 ** 0.75;
    expect(at({ sd1: 0.2 })).toBeCloseTo((1000 * 0.2 * 1.5) / (period * 6.5), 6);
    expect(at({ sd1: 0.02 })).toBeCloseTo(44 * 1.5, 6);
    expect(at({ sd1: 0.02, s1: 0.9 })).toBeCloseTo((1000 * 0.45 * 1.5) / 6.5, 6);
    const two = [
      { name: "r", weightLb: 1000, heightFt: 40 },
      { name: "f", weightLb: 1000, heightFt: 10 },
    ];
    expect(base(two, { ...WOOD, sd1: 0.2 })).toBeCloseTo((2000 * 0.2) / (period * 6.5), 6);
  });

  test("importance lifts the forces, and says that it is from memory above 1", () => {
    const at = (risk: "I" | "II" | "III" | "IV") =>
      seismicForces([{ name: "r", weightLb: 1000, heightFt: 20 }], WOOD, { ...SITE, risk })[0]?.forceLb;
    expect([at("I"), at("II"), at("III"), at("IV")]).toEqual(
      [1, 1, 1.25, 1.5].map((ie) => expect.closeTo((1000 / 6.5) * ie, 9)),
    );
    const call = (risk: string) =>
      cautions("LOAD_SEISMIC", [["roof", 1000, 20]], [["light-frame wood walls", 1]], "C", [
        ["Basis", ""],
        ["risk category", risk],
      ]);
    expect(call("IV")).toMatch(/importance factor 1.5 is from memory/);
    expect(call("II")).not.toMatch(/from memory/);
  });

  test("what it refuses, asks and cautions against", () => {
    const roof = [["roof", 20_000, 18]];
    const wood = [["Light-frame wood walls", 1]];
    expect(says("LOAD_SEISMIC", roof)).toMatch(/The system is missing/);
    expect(says("LOAD_SEISMIC", roof, [["CLT panels", 1]])).toMatch(/R of "CLT panels" is not held.*evaluation report/);
    expect(value("LOAD_SEISMIC", roof, [["CLT panels", 1, null, null, 3]])).toEqual([
      ["roof", 20_000, expect.closeTo(20_000 / 3, 6), expect.closeTo(20_000 / 3, 6)],
    ]);
    expect(says("LOAD_SEISMIC", roof, wood, "A")).toMatch(/category A has a rule of its own/);
    expect(says("LOAD_SEISMIC", [["roof", 20_000, 66]], wood)).toMatch(/height/);
    expect(says("LOAD_SEISMIC", roof, [["stud walls", 105]])).toMatch(/shares of g/);
    expect(cautions("LOAD_SEISMIC", roof, [["stud walls", 3]])).toMatch(/in percent\?/);
    expect(cautions("LOAD_SEISMIC", roof, wood, "D")).toMatch(/redundancy factor of 1.3/);
    expect(cautions("LOAD_SEISMIC", roof, wood)).toMatch(/redundancy factor of 1.3/);
    expect(cautions("LOAD_SEISMIC", roof, wood, "C")).not.toMatch(/redundancy factor of 1.3/);
    expect(working("LOAD_SEISMIC", roof, wood).assumptions.join()).toMatch(/SD1 is not given/);
    expect(working("LOAD_SEISMIC", roof, [["stud walls", 1, 0.5]]).assumptions.join()).not.toMatch(/SD1 is not given/);
  });
});
