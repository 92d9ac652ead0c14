import { describe, expect, test } from "vitest";
import type { CellFunction } from "../../../src/functions/declare/cell-function.ts";
import { positional } from "../../../src/functions/declare/formula.ts";
import type { RawArgument } from "../../../src/functions/declare/raw.ts";
import { registry } from "../../../src/functions/registry.ts";
import { influences, reach } from "../../../src/functions/run/influence.ts";
import { invoke } from "../../../src/functions/run/invoke.ts";

const fn = (name: string): CellFunction => registry.find((f) => f.name === name) as CellFunction;
const of = (name: string, ...args: readonly RawArgument[]) => influences(fn(name), args);

describe("what moves a number", () => {
  test("the pressure goes with the square of the speed, and that comes first", () => {
    const [speed, ...others] = of("WIND_PRESSURE", 110, 40, "C");
    expect(speed).toMatchObject({ name: "windSpeed", down: expect.closeTo(-0.19, 9), up: expect.closeTo(0.21, 9) });
    const height = others.find(({ name }) => name === "meanRoofHeight");
    // Kz goes with z to the power of 2/9.8
    expect(height?.up).toBeCloseTo(1.1 ** (2 / 9.8) - 1, 6);
    expect(height?.down).toBeCloseTo(0.9 ** (2 / 9.8) - 1, 6);
  });

  test("each by itself, as the cell would give it, sorted; of a basis too", () => {
    const basis = [
      ["Basis", "Value"],
      ["margin", "10%"],
    ];
    const list = of("COST_MARGIN", 1000, basis);
    expect(list).toMatchObject([
      { name: "cost", down: expect.closeTo(-0.1, 9), up: expect.closeTo(0.1, 9) },
      { name: "margin", down: expect.closeTo(0.9 / 0.91 - 1, 9), up: expect.closeTo(0.9 / 0.89 - 1, 9) },
    ]);
    for (const name of ["WIND_PRESSURE", "DEW_POINT", "CONCRETE", "LIFT_WIND"]) {
      const example = fn(name);
      const found = influences(example, positional(example, example.example.args));
      expect([...found].sort((a, b) => reach(b) - reach(a))).toEqual(found);
    }
  });

  test("where a tenth more is beyond the limits of an argument there is no answer, as in the cell", () => {
    const [humidity] = of("DEW_POINT", 70, 95).filter(({ name }) => name === "humidity");
    expect(invoke(fn("DEW_POINT"), [70, 95 * 1.1]).ok).toBe(false);
    expect(humidity?.up).toBeUndefined();
    expect(humidity?.down).toBeLessThan(0);
  });

  test("a table, a search and a call that cannot be read have none", () => {
    expect(of("WIND_CLADDING", "wall", 5, 32)).toEqual([]);
    const search = registry.find(({ heavy }) => heavy) as CellFunction;
    expect(influences(search, positional(search, search.example.args))).toEqual([]);
    expect(of("WIND_PRESSURE", "fast", 15, "C")).toEqual([]);
  });
});
