import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { type CombineInput, combine, type LoadCase } from "../../../src/core/loads/combine.ts";
import { deadLoad } from "../../../src/core/loads/dead.ts";
import { floorLive, liveUse } from "../../../src/core/loads/live.ts";
import type { LoadCombinationsPicture, RoofSnowPicture } from "../../../src/core/loads/pictures.ts";
import { type DriftSite, driftHeight, type StepSite, stepDrift } from "../../../src/core/loads/snow-drift.ts";
import { type RoofSnowInput, snowOnRoof } from "../../../src/core/loads/snow-on-roof.ts";
import { balancedSnow, flatRoofSnow, leastSnow, type SnowSite } from "../../../src/core/loads/snow-roof.ts";
import { combinations } from "../../../src/core/loads/tables/combinations.ts";

/** Just on a limit, small numbers, and what the working and the picture say. */

const taped = (run: (tape: Tape) => unknown) => {
  const tape = new Tape();
  run(tape);
  return tape;
};
const expressions = (tape: Tape, symbol: string) =>
  tape.steps.filter((s) => s.symbol === symbol).map((s) => s.expression);

describe("dead load", () => {
  const part = (material: string) => ({ material, thicknessIn: 2, weight: undefined, row: 3 });

  test("an office's weight of the whole part does not go by its thickness; one for each inch does", () => {
    expect(deadLoad([part("panel")], [{ material: "panel", psf: 5, psfPerIn: 3 }], 0)).toBe(5);
    expect(deadLoad([part("panel")], [{ material: "panel", psf: undefined, psfPerIn: 3 }], 0)).toBe(6);
  });

  test("a slope of one degree is a slope", () => {
    const own = [{ material: "panel", psf: 10, psfPerIn: undefined }];
    expect(deadLoad([part("panel")], own, 1)).toBeCloseTo(10 / Math.cos(Math.PI / 180), 12);
  });

  test("what has no weight is told up to four names that share a word of four letters or more with it", () => {
    const told = (material: string) => {
      try {
        deadLoad([part(material)], [], 0);
      } catch (error) {
        return String(error);
      }
      return "";
    };
    const common = "such as gypsum board, plywood, polystyrene foam, asphalt shingles.";
    expect(told("linoleum")).toContain("such as linoleum or asphalt tile.");
    expect(told("deck of old")).toContain(
      "such as wood deck 2 in, wood deck 3 in, metal deck 20 gage, metal deck 18 gage.",
    );
    expect(told("old wall")).toContain(
      "such as 2x4 wall, 2x4 wall with vinyl or aluminum siding, 2x4 wall with lap wood siding, 2x4 wall with stucco.",
    );
    expect(told("tin")).toContain(common);
    expect(told("xyz")).toContain(common);
  });
});

describe("live load", () => {
  test("from nothing to 1000 psf; less than any code's 10 psf is asked about", () => {
    const asked = (text: string) => taped((tape) => liveUse(text, "2021", tape)).cautions.length;
    expect(["0", "0.5", "9.9", "10", "10.5", "1000"].map(asked)).toEqual([1, 1, 1, 0, 0, 0]);
    expect(liveUse("balconies", "2021").psf).toBe(40);
  });

  test("reduced from just above 400 ft2 of influence area on: 0.25 + 15 / sqrt(420)", () => {
    const at = (influence: number) =>
      floorLive({ psf: 40, rule: "floor" }, { kll: 1, areaFt2: influence, floors: 1 }, "7-16");
    expect(at(400)).toBe(40);
    expect(at(420)).toBeCloseTo(40 * (0.25 + 15 / Math.sqrt(420)), 9);
  });

  test("105 psf are heavy, and the working says why a load is not reduced", () => {
    const words = (psf: number, rule: "floor" | "garage") => {
      const tape = taped((t) =>
        expect(floorLive({ psf, rule }, { kll: 4, areaFt2: 5000, floors: 1 }, "7-16", t)).toBe(psf),
      );
      return expressions(tape, "L");
    };
    expect(words(105, "floor")).toEqual(["above 100 psf: not reduced for one floor"]);
    expect(words(50, "garage")).toEqual(["passenger vehicle garage: not reduced for one floor"]);
  });
});

describe("combinations", () => {
  const input = (
    loads: readonly (readonly [LoadCase["load"], number])[],
    change: Partial<CombineInput> = {},
  ): CombineInput => ({
    loads: loads.map(([load, value]) => ({ load, value })),
    method: "allowable",
    liveFactor: 0.5,
    windLevel: "strength",
    edition: "7-16",
    ...change,
  });

  test("of combinations alike the first of the standard is named", () => {
    const none = combine(input([["D", 0]], { method: "strength" }));
    expect([none.largest.text, none.smallest.text]).toEqual(["1.4 D", "1.4 D"]);
  });

  test("any wind at the allowable level is refused in strength combinations, no wind is not", () => {
    const wind = (w: number) => () =>
      combine(
        input(
          [
            ["D", 5],
            ["W", w],
          ],
          { method: "strength", windLevel: "allowable" },
        ),
      );
    expect(wind(0)).not.toThrow();
    expect(wind(1)).toThrow("allowable level");
  });

  test("of the 2022 allowable list the roof, live and roof, and wind and others were read; the strength list is from memory", () => {
    const read = (method: "strength" | "allowable", edition: "7-16" | "7-22") =>
      combinations(method, edition, 0.5, 0.6)
        .filter((c) => c.known === "read")
        .map((c) => c.number);
    expect(read("allowable", "7-22")).toEqual(["3a", "4a", "6a"]);
    expect(read("strength", "7-22")).toEqual([]);
    expect(read("strength", "7-16")).toEqual(["1", "2", "3", "4", "6", "5", "7"]);
    const clauses = taped((tape) =>
      combine(
        input(
          [
            ["D", 1],
            ["S", 2],
          ],
          { edition: "7-22" },
        ),
        tape,
      ),
    ).steps.map((s) => [s.symbol, s.clause.includes("memory")]);
    expect(clauses).toContainEqual(["combination 1a", true]);
    expect(clauses).toContainEqual(["combination 3a", false]);
  });

  test("the picture marks the bars of the largest and the smallest, no others", () => {
    const tape = taped((t) =>
      combine(
        input([
          ["D", 10],
          ["L", 20],
          ["W", -30],
        ]),
        t,
      ),
    );
    const { bars } = tape.pictures[0] as LoadCombinationsPicture;
    // 10 + 20, and 0.6 x 10 - 0.6 x 30
    expect(bars.filter((b) => b.governs).map((b) => [b.name, b.value])).toEqual([
      ["D + L", 30],
      ["0.6 D + 0.6 W", expect.closeTo(-12, 9)],
    ]);
    expect(bars.length).toBeGreaterThan(2);
  });
});

describe("drifts", () => {
  const site: DriftSite = { groundPsf: 30, category: "II", winterWind: undefined, edition: "7-16" };

  test("one pound of ground snow drifts, none does not: 0.43 x 20^(1/3) x 11^(1/4) - 1.5", () => {
    expect(driftHeight({ ...site, groundPsf: 1 }, 20)).toBeCloseTo(0.43 * 20 ** (1 / 3) * 11 ** 0.25 - 1.5, 9);
    expect(driftHeight({ ...site, groundPsf: 0 }, 20)).toBe(0);
  });

  test("the winter wind parameter runs from 0.05 to 1", () => {
    const at = (winterWind: number) => () => driftHeight({ ...site, winterWind, edition: "7-22" }, 40);
    for (const w of [0.05, 0.0501, 1]) expect(at(w)).not.toThrow();
    for (const w of [0.049, 1.01]) expect(at(w)).toThrow("winter wind parameter");
  });

  const step = (change: Partial<StepSite>, tape?: Tape) =>
    stepDrift({ ...site, balancedPsf: 0, stepFt: 10, upperFt: 200, lowerFt: 2.5, ...change }, tape);

  test("from 7-16 on the leeward drift is at most 0.6 of the lower roof's length, before that it is not", () => {
    // 0.43 x 200^(1/3) x 40^(1/4) - 1.5 = 4.82 ft; 0.6 x 2.5 = 1.5 ft; windward 0.75 x 1.44
    expect(step({}).heightFt).toBeCloseTo(1.5, 9);
    expect(step({ edition: "7-10" }).heightFt).toBeCloseTo(0.43 * 200 ** (1 / 3) * 40 ** 0.25 - 1.5, 9);
    const said = (edition: "7-10" | "7-16") =>
      expressions(
        taped((tape) => step({ edition }, tape)),
        "hd leeward",
      );
    expect(said("7-16")).toEqual(["fetch: upper roof, at most 0.6 of the lower roof's length"]);
    expect(said("7-10")).toEqual(["fetch: upper roof"]);
  });

  test("snow half a foot deep asks for a fifth of its depth too", () => {
    // 15 psf of 30 pcf: 0.05 ft of room over 0.5 ft are a tenth, 0.15 ft three tenths.
    const thin = { groundPsf: 200, balancedPsf: 15 };
    expect(step({ ...thin, stepFt: 0.55 }).from).toBe("none");
    expect(step({ ...thin, stepFt: 0.65 }).heightFt).toBeCloseTo(0.15, 9);
  });

  test("half a foot of step on a bare roof holds a drift; 1 ft over 5 ft of snow is just room enough, and 8 ft wide", () => {
    expect(step({ stepFt: 0.5 }).heightFt).toBe(0.5);
    // Density 30 pcf from 124 psf on: 150 psf lie 5 ft deep, a step of 6 ft leaves 1 ft.
    const full = { groundPsf: 200, balancedPsf: 150, stepFt: 6, edition: "7-10" } as const;
    const cautions = (lowerFt: number) =>
      taped((tape) => expect(step({ ...full, lowerFt }, tape)).toMatchObject({ heightFt: 1, widthFt: 8 })).cautions;
    expect(cautions(8)).toEqual([]);
    expect(cautions(7.9).join()).toContain("wider than the lower roof");
  });
});

describe("snow on a roof", () => {
  const SITE: SnowSite = { groundPsf: 20, ce: 1, ct: 1, category: "II", edition: "7-16" };

  test("rain on snow below a slope of W / 50, not on it", () => {
    const rain = (widthFt: number) => balancedSnow(SITE, 1, "other", widthFt).rainPsf;
    expect([50, 52].map(rain)).toEqual([0, 5]);
    const asked = (slope: number) =>
      taped((tape) => balancedSnow(SITE, slope, "other", undefined, tape)).cautions.filter((c) => c.includes("Rain"));
    expect([14.9, 15].map((s) => asked(s).length)).toEqual([1, 0]);
  });

  test("at 70 degrees no snow lies at all", () => {
    expect(balancedSnow(SITE, 70, "other", undefined)).toMatchObject({ flatPsf: 0, slopedPsf: 0, designPsf: 0 });
    expect(balancedSnow(SITE, 69.9, "other", undefined).flatPsf).toBe(14);
  });

  test("the working goes by the edition: importance to 7-16, the map's level and pm,max in 7-22", () => {
    const of = (edition: "7-16" | "7-22") =>
      taped((tape) => {
        flatRoofSnow({ ...SITE, edition }, tape);
        leastSnow({ ...SITE, edition }, 5, tape);
      });
    const [then, now] = [of("7-16"), of("7-22")];
    expect(then.steps.map((s) => s.symbol)).toEqual(["Is", "pf", "pm"]);
    expect(now.steps.map((s) => s.symbol)).toEqual(["pg", "pf", "pm"]);
    expect(then.steps.at(-1)).toMatchObject({ expression: "Is, smaller of pg and 20", clause: "ASCE/SEI 7-16 7.3.4" });
    expect(now.steps.at(-1)).toMatchObject({
      expression: "smaller of pg and 30 (from memory)",
      clause: "ASCE/SEI 7-22 7.3.3",
    });
    expect(then.cautions.join()).toContain("snow importance factor");
    expect(then.cautions.join()).not.toContain("greatest minimum snow load");
    expect(now.cautions.join()).not.toContain("snow importance factor");
    expect(now.cautions.join()).toContain("greatest minimum snow load");
  });

  const GABLE: RoofSnowInput = {
    ...SITE,
    groundPsf: 30,
    slopeDeg: (Math.atan(0.5) * 180) / Math.PI,
    roof: "gable",
    surface: "other",
    eaveToRidgeFt: 20,
    simpleRafters: false,
    winterWind: undefined,
  };
  const picture = (change: Partial<RoofSnowInput>) =>
    taped((tape) => snowOnRoof({ ...GABLE, ...change }, tape)).pictures[0] as RoofSnowPicture;

  test("the picture holds the loads: 0.3 ps windward, ps leeward, the drift's surcharge at the ridge", () => {
    // ps = 0.7 x 30 = 21 psf; hd = 0.43 x 20^(1/3) x 40^(1/4) - 1.5, density 17.9 pcf, S = 2
    const hd = 0.43 * 20 ** (1 / 3) * 40 ** 0.25 - 1.5;
    const { unbalanced, alt, balancedPsf } = picture({});
    expect(balancedPsf).toBeCloseTo(21, 9);
    expect(unbalanced).toEqual({
      windwardPsf: expect.closeTo(6.3, 9),
      leewardPsf: expect.closeTo(21, 9),
      surchargePsf: expect.closeTo((hd * 17.9) / Math.SQRT2, 6),
      surchargeFt: expect.closeTo((8 * hd * Math.SQRT2) / 3, 6),
    });
    // 21 + 18.2 at the ridge
    expect(alt).toContain("unbalanced 6 psf windward and 39 psf at the ridge leeward");
  });

  test("with simple rafters all the ground snow lies leeward, with no surcharge; a monoslope has nothing unbalanced", () => {
    expect(picture({ simpleRafters: true }).unbalanced).toEqual({
      windwardPsf: 0,
      leewardPsf: 30,
      surchargePsf: 0,
      surchargeFt: 0,
    });
    const mono = picture({ roof: "monoslope" });
    expect(mono.unbalanced).toBeUndefined();
    expect(mono.alt).toContain("no unbalanced load");
  });
});
