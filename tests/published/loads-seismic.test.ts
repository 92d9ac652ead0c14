import { describe, expect, test } from "vitest";
import { Tape } from "../../src/core/kit/tape.ts";
import { seismicForces } from "../../src/core/loads/seismic.ts";
import { halfLastDigit, rows } from "./rows.ts";

const optionalNumber = (text: string | undefined) => (text === undefined || text === "" ? undefined : Number(text));

describe("response coefficients of houses", () => {
  test.each(rows("loads-seismic.csv").map((r) => [`house ${r.house}: ${r.quantity}`, r] as const))("%s", (_name, r) => {
    const tape = new Tape();
    const system = {
      name: "light-frame wood walls",
      sds: Number(r.sds),
      sd1: optionalNumber(r.sd1),
      s1: optionalNumber(r.s1),
      r: undefined,
    };
    const site = { category: "D", risk: "II", edition: "7-16" } as const;
    seismicForces([{ name: "roof", weightLb: 1000, heightFt: Number(r.height_ft) }], system, site, tape);
    const plain = tape.steps.filter((s) => s.symbol === "Cs");
    const step =
      r.quantity === "Cs plain"
        ? plain[0]
        : r.quantity === "Cs"
          ? plain.at(-1)
          : tape.steps.find((s) => s.symbol === r.quantity);
    expect(Math.abs(Number(step?.value) - Number(r.printed))).toBeLessThanOrEqual(halfLastDigit(r.printed ?? ""));
  });

  test("forces of two levels: 0.62 and 0.38 of 35.3 kips are 21.9 and 13.4, as a seismic load sheet prints them", () => {
    // The sheet's weights and heights are garbled in the text: they are chosen here so that w h stands as 0.62 to 0.38.
    const levels = [
      { name: "roof", weightLb: 6200, heightFt: 20 },
      { name: "floor", weightLb: 7600, heightFt: 10 },
    ];
    const system = { name: "own", sds: 1, sd1: undefined, s1: undefined, r: 8 };
    const [roof, floor] = seismicForces(levels, system, { category: "C", risk: "II", edition: "7-16" });
    const scale = 35.3 / ((roof?.forceLb ?? 0) + (floor?.forceLb ?? 0));
    expect((roof?.forceLb ?? 0) * scale).toBeCloseTo(21.9, 1);
    expect((floor?.forceLb ?? 0) * scale).toBeCloseTo(13.4, 1);
  });
});
