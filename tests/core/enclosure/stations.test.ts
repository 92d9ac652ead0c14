import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { leastDegreeDays } from "../../../src/core/enclosure/climate/degree-days.ts";
import { byDistance, milesBetween, nearestStation, pointOf } from "../../../src/core/enclosure/climate/nearest.ts";
import { stations } from "../../../src/core/enclosure/climate/stations.ts";
import { readPoint } from "../../../src/functions/enclosure/read/coordinates.ts";
import { readPlace, readStation } from "../../../src/functions/enclosure/read/station.ts";
import { cautions, says, value, working } from "./called.ts";

const point = fc.record({
  latDeg: fc.double({ min: -90, max: 90, noNaN: true }),
  lonDeg: fc.double({ min: -180, max: 180, noNaN: true }),
});

describe("distances", () => {
  test("the same both ways, never over a third point shorter, none to itself", () => {
    fc.assert(
      fc.property(point, point, point, (a, b, c) => {
        expect(milesBetween(a, b)).toBeCloseTo(milesBetween(b, a), 6);
        expect(milesBetween(a, a)).toBeCloseTo(0, 6);
        expect(milesBetween(a, c)).toBeLessThanOrEqual(milesBetween(a, b) + milesBetween(b, c) + 1e-6);
      }),
    );
  });

  test("a station is the nearest to itself, and the list rises", () => {
    for (const s of stations()) expect(nearestStation(s)).toEqual({ station: s, miles: 0 });
    const miles = byDistance({ latDeg: 40, lonDeg: -100 }).map((n) => n.miles);
    expect(miles).toEqual([...miles].sort((a, b) => a - b));
    expect(miles).toHaveLength(91);
  });

  test("200 miles are the limit, and the refusal names the nearest", () => {
    // Due south of the southernmost station, Honolulu apart: Miami at 25.82 N 80.30 W.
    const [miami] = stations().filter((s) => s.name.startsWith("Miami"));
    const south = (miles: number) => ({ latDeg: (miami?.latDeg ?? 0) - miles / 69.0936, lonDeg: miami?.lonDeg ?? 0 });
    expect(nearestStation(south(199)).station.name).toBe("Miami Intl Ap");
    expect(() => nearestStation(south(201))).toThrow(/No station stands within 200 miles.*Miami Intl Ap FL, 201 miles/);
  });
});

describe("a latitude and a longitude", () => {
  test.each([
    ["44.48 N 73.2 W", 44.48, -73.2],
    ["44.48, -73.2", 44.48, -73.2],
    ["44.48°N, 73.2°W", 44.48, -73.2],
    ["44.48 -73.2", 44.48, -73.2],
    ["44.48 deg N; 73.2 deg W", 44.48, -73.2],
    ["44.48/-73.2", 44.48, -73.2],
    ["33 s 70 w", -33, -70],
  ])("%s", (text, latDeg, lonDeg) => expect(readPoint(text)).toEqual({ latDeg, lonDeg }));

  test("other texts are none", () => {
    for (const text of ["Burlington VT", "726170", "44.48", "44.48 N", "", "12 ft 6"])
      expect(readPoint(text)).toBeUndefined();
  });

  test("a lacking minus is asked for, latitude and longitude swapped are refused", () => {
    expect(() => pointOf(44.5, 73.2)).toThrow(/Write 73.2 W, or -73.2/);
    // Honolulu stands alone: the next station is 2,396 miles off.
    expect(() => pointOf(21.32, 157.93)).toThrow(/Write 157.93 W/);
    expect(() => pointOf(-95, 40)).toThrow(/latitude/);
    expect(() => pointOf(40, -181)).toThrow(/longitude/);
    expect(pointOf(48.2, 16.4)).toEqual({ latDeg: 48.2, lonDeg: 16.4 });
  });
});

describe("CLIMATE_STATIONS", () => {
  const rows = (find?: string) => value("CLIMATE_STATIONS", ...(find === undefined ? [] : [find])) as unknown[][];
  const names = (find: string) => rows(find).map((r) => r[0]);

  test("finds by city, state in letters or name, and number", () => {
    expect(rows()).toHaveLength(91 + 46);
    expect(names("VT")).toEqual(["Burlington International Ap"]);
    expect(names("Vermont")).toEqual(names("VT"));
    expect(names("726170")).toEqual(names("VT"));
    expect(names("portland")).toHaveLength(2);
    expect(says("CLIMATE_STATIONS", "atlantis")).toMatch(/No station is called/);
    // 99 % of the hours are warmer than -18.3 C.
    expect(rows("VT")[0]?.slice(0, 7)).toEqual([
      "Burlington International Ap",
      "VT",
      expect.closeTo(101 / 0.3048, 6),
      7299,
      expect.closeTo(-0.94, 2),
      "5A",
      "a year of hours",
    ]);
    expect(rows("VT")[0]?.slice(9)).toEqual([44.47, -73.15, "", ""]);
  });

  test("two letters of a state are that state alone, not letters in a name", () => {
    for (const state of ["AL", "DE", "IN", "ME", "OR", "LA"]) {
      expect(new Set(rows(state).map((r) => r[1]))).toEqual(new Set([state]));
    }
    expect(says("CLIMATE_STATIONS", "ville")).toMatch(/No station is called/);
    expect(says("CLIMATE_STATIONS", "Burlington IN")).toMatch(/No station is called/);
  });

  test("a state without a station has its mean temperatures, least degree-days, zone and the nearest station", () => {
    const [birmingham] = rows("Birmingham AL");
    expect(birmingham?.slice(0, 8)).toEqual([
      "Birmingham Ap",
      "AL",
      "",
      "",
      "",
      "3A",
      "mean temperatures only",
      expect.closeTo(63.2, 1),
    ]);
    expect(birmingham?.[11]).toBe("Atlanta Hartsfield Intl Ap GA");
    expect(birmingham?.[12]).toBeCloseTo(133.6, 1);
  });

  test("coordinates bring the five nearest with their distances", () => {
    const near = rows("44.48 N 73.2 W");
    expect(near).toHaveLength(5);
    expect(near[0]?.[0]).toBe("Burlington International Ap");
    expect(near[0]?.[12]).toBeCloseTo(2.56, 2);
  });
});

test("MATERIALS finds by the beginning of a word, not by letters inside one", () => {
  const names = (find: string) => (value("MATERIALS", find) as unknown[][]).map((r) => r[0]);
  expect(names("ply")).toEqual(expect.arrayContaining(["plywood", "single-ply roof membrane"]));
  expect(names("wool")).toEqual(expect.arrayContaining(["mineral wool board", "mineral wool batt"]));
  for (const letters of ["ass", "oo"]) expect(says("MATERIALS", letters)).toMatch(/No material is called/);
});

describe("the climate station of other functions", () => {
  const LAYERS = [
    ["gypsum board", 0.5],
    ["plywood", 3.75],
  ];
  const basis = (station: string) => [
    ["Basis", ""],
    ["climate station", station],
  ];

  test("coordinates take the nearest station, say which, and ask beyond 60 miles", () => {
    const near = working("DEW_MONTHS", LAYERS, "44.48 N 73.2 W", "45%");
    expect(near.outcome).toEqual(working("DEW_MONTHS", LAYERS, "Burlington VT", "45%").outcome);
    expect(near.assumptions.join()).toMatch(/nearest to 44.48 N 73.2 W is Burlington International Ap VT, 3 miles off/);
    expect(near.cautions.join()).not.toMatch(/stand for the place/);
    expect(cautions("DEW_MONTHS", LAYERS, "45.6 N 73.2 W", "45%")).toMatch(
      /nearest station to 45.6 N 73.2 W is Burlington International Ap VT, 78 miles off, at 101 m: does its climate/,
    );
    expect(readStation("45.33 N 73.15 W").name).toBe("Burlington International Ap");
    expect(cautions("DEW_MONTHS", LAYERS, "45.33 N 73.15 W", "45%")).not.toMatch(/stand for the place/);
  });

  test("DEW_MONTHS refuses a state without a year and names the nearest station", () => {
    expect(says("DEW_MONTHS", LAYERS, "Birmingham AL", "45%")).toMatch(
      /only mean temperatures.*nearest station that has one, Atlanta Hartsfield Intl Ap GA, 134 miles/,
    );
    expect(says("DEW_MONTHS", LAYERS, "Alabama", "45%")).toMatch(/fits 4 stations.*Birmingham Ap AL/);
    expect(says("DEW_MONTHS", LAYERS, "Springfield AL", "45%")).toMatch(
      /fits no station.*Use one of: Birmingham Ap AL/,
    );
    expect(says("DEW_MONTHS", LAYERS, "Anchorage AK", "45%")).toMatch(/Bellingham Intl Ap WA/);
  });

  test("Washington DC is the airport across the river", () => {
    expect(readStation("Washington DC").name).toBe("Washington Dc Reagan Ap");
    expect(readPlace("Dulles DC").kind).toBe("normals");
    expect(() => readStation("Casper CO")).toThrow(/fits no station/);
  });

  test("HEATLOSS_YEAR and ROOF_UNVENTED take the temperatures of such a state, and say what they are", () => {
    const year = working("HEATLOSS_YEAR", [["wall", 1000, 0.05]], null, null, basis("Birmingham AL"));
    // 21.2 x 31 + 17.3 x 28 + 9.8 x 31 + 2.5 x 30 + .9 x 31 + 10.6 x 30 + 18.9 x 31 F day below 65, of the printed means
    const least = 21.2 * 31 + 17.3 * 28 + 9.8 * 31 + 2.5 * 30 + 0.9 * 31 + 10.6 * 30 + 18.9 * 31;
    expect(year.outcome).toMatchObject({ ok: true, value: expect.closeTo((24 * least * 50) / 1e6, 6) });
    expect(year.cautions.join()).toMatch(/2452 F day.*0 to 265 F day more/);
    const roof = working("ROOF_UNVENTED", "3A", null, basis("Birmingham AL"));
    const outdoorF = (43.8 + 46.1 + 47.7) / 3;
    expect(roof.steps.find((s) => s.symbol === "T_o")?.value).toBeCloseTo(outdoorF, 6);
  });

  test("least degree-days: none where no month is below 65 F, and colder months add 1.8 F a degree and day", () => {
    expect(leastDegreeDays(Array(12).fill(20))).toBe(0);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -40, max: 17, noNaN: true }), { minLength: 12, maxLength: 12 }),
        (tempC) => {
          expect(leastDegreeDays(tempC.map((t) => t - 1)) - leastDegreeDays(tempC)).toBeCloseTo(365 * 1.8, 4);
        },
      ),
    );
  });
});
