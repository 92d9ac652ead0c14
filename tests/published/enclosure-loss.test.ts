import { describe, expect, test } from "vitest";
import { naturalCfm } from "../../src/core/enclosure/loss/air-leakage.ts";
import { type GroundKind, groundLoss } from "../../src/core/enclosure/loss/ground.ts";
import { BASEMENTS } from "../../src/core/enclosure/tables/ground.ts";
import { JUNCTIONS } from "../../src/core/enclosure/tables/thermal-bridges.ts";
import { rows } from "./rows.ts";

describe("slabs, basements and crawl spaces", () => {
  const cases = rows("enclosure-ground.csv");
  test.each(cases.map((r) => [`${r.kind} ${r.insulation} ${r.depth} ${r.unit}`, r] as const))("%s", (_name, r) => {
    const { kind = "", insulation = "", depth, printed, unit } = r;
    const areaFt2 = kind === "basement" ? 100 * Number(depth) : kind.includes("crawl") ? 500 : undefined;
    const loss = () => groundLoss({ kind: kind as GroundKind, perimeterFt: 100, areaFt2, insulation }, 1, 0);
    if (unit === "floor U") {
      expect(loss()).toEqual({ btuH: Number(printed) * 500, fFactor: "" });
      return;
    }
    if (unit === "F") {
      expect(loss().fFactor).toBe(Number(printed));
      return;
    }
    // Where only the wall is printed the sum is refused, and says so.
    const slab = cases.find((c) => c.insulation === insulation && c.depth === depth && c.unit === "F");
    const row = BASEMENTS.find((b) => b.insulation === insulation && b.depthFt === Number(depth));
    expect(row?.wallU).toBe(Number(printed));
    if (slab === undefined) expect(loss).toThrow(/slab factor is not printed/);
    else expect(loss().btuH).toBeCloseTo(Number(printed) * (areaFt2 ?? 0) + Number(slab.printed) * 100, 9);
  });
});

test.each(rows("enclosure-thermal-bridges.csv").map((r) => [`${r.junction} ${r.detail}`, r] as const))(
  "psi of a junction: %s",
  (_name, r) => {
    const found = JUNCTIONS.find((j) => j.name === r.junction);
    expect(r.detail === "usual" ? found?.usualWmK : found?.approvedWmK).toBe(Number(r.printed));
  },
);

test("natural air change of the printed house: 2.75 an hour at 50 Pa over 18.5 is 0.149", () => {
  const zone = { number: 5, regime: "A" } as const;
  const cfm = naturalCfm(2.75, 60_000, "factor", { stories: 1, shielding: "normal", zone });
  expect(Math.abs(cfm / 1000 - 0.149)).toBeLessThanOrEqual(0.0005);
});
