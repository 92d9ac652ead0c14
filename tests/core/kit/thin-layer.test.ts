import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { askThin } from "../../../src/core/kit/thin-layer.ts";

/** What is asked about a layer of a thickness. */
function asked(thicknessIn: number): readonly string[] {
  const tape = new Tape();
  askThin("plywood in row 2", thicknessIn, tape);
  return tape.cautions;
}

describe("a layer that is thinner than any that is made (0.1 in: common practice, no source)", () => {
  test("is asked about: half an inch written in feet", () => {
    expect(asked(0.5 / 12)).toEqual(["The plywood in row 2 is 0.0416667 in thick: is it in inches?"]);
    expect(asked(0.0999)).toHaveLength(1);
    expect(asked(1e-6)).toHaveLength(1);
  });

  test("is not, where it is made so, has no thickness, or nobody listens", () => {
    for (const inches of [0.1, 0.105, 0.5, 0, -1]) expect(asked(inches), `${inches}`).toEqual([]);
    expect(() => askThin("plywood", 0.01, undefined)).not.toThrow();
  });
});
