import { expect, test } from "vitest";
import { torsionCases } from "../../src/core/wind/frame/torsion.ts";
import { rows } from "./rows.ts";

const shear = (wind: string) =>
  ({ wind, pressureLb: 1, leastLb: 0, designLb: 1, designPlf: 1, level: "strength" }) as const;

test.each(rows("wind-torsion.csv").map((r) => [`case ${r.case}: ${r.quantity}`, r] as const))("%s", (_name, r) => {
  const own = torsionCases([shear("across ridge"), shear("along ridge")], [], "7-10").filter((c) =>
    c.name.startsWith(`${r.case},`),
  );
  expect(own.length).toBeGreaterThan(0);
  for (const c of own) {
    const share = Math.max(c.acrossLb, c.alongLb);
    const axes = (c.acrossLb > 0 ? 1 : 0) + (c.alongLb > 0 ? 1 : 0);
    const found = r.quantity === "share" ? share : c.momentFtLb / share / axes;
    expect(found).toBeCloseTo(Number(r.printed), 12);
  }
});
