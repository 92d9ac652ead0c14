import { describe, expect, test } from "vitest";
import { adjusted } from "../../src/core/fasteners/adjust.ts";
import { bearingPsi, type Material, type Member } from "../../src/core/fasteners/bearing.ts";
import { bendingYieldPsi, dowelOf } from "../../src/core/fasteners/dowel.ts";
import { furringFasteners } from "../../src/core/fasteners/furring.ts";
import { type GroupMember, groupActionFactor } from "../../src/core/fasteners/group.ts";
import { lateralValue, yieldValue } from "../../src/core/fasteners/lateral.ts";
import { spacingIn } from "../../src/core/fasteners/spacing.ts";
import type { FastenerType } from "../../src/core/fasteners/tables/fasteners.ts";
import type { FurringFastener, FurringTable } from "../../src/core/fasteners/tables/furring.ts";
import { withdrawalPerIn, withdrawalValue } from "../../src/core/fasteners/withdrawal.ts";
import { halfLastDigit, type Row, rows } from "./rows.ts";

/** Within half of what the print is rounded to; a known disagreement lies beyond it, and no farther than its row says. */
function expectPrinted(got: number, printed: string | undefined, half: number, disagrees: string | undefined): void {
  const off = Math.abs(got - Number(printed));
  if (disagrees === "") expect(off).toBeLessThanOrEqual(half * (1 + 1e-9));
  else {
    expect(off).toBeGreaterThan(half);
    expect(off).toBeLessThanOrEqual(Number(disagrees));
  }
}

const named = (file: string, name: (r: Row) => string) => rows(file).map((r, i) => [`${i + 1} ${name(r)}`, r] as const);

describe("withdrawal", () => {
  test.each(named("fasteners-withdrawal.csv", (r) => `${r.type} ${r.diameter_in} G ${r.gravity}`))("%s", (_n, r) => {
    const perIn = withdrawalPerIn(r.type as FastenerType, Number(r.diameter_in), Number(r.gravity), "2018");
    expectPrinted(perIn * Number(r.length_in), r.printed_lb, halfLastDigit(r.printed_lb ?? ""), r.disagrees);
  });
});

function member(r: Row, which: "side" | "main"): Member {
  const kind = r[which];
  const material: Material =
    kind === "wood" ? { kind, gravity: Number(r[`${which}_gravity`]) } : { kind: kind as "steel" | "concrete" };
  return { name: which, thicknessIn: Number(r[`${which}_in`]), material, angleDeg: Number(r[`${which}_deg`]) };
}

describe("lateral", () => {
  test.each(
    named("fasteners-lateral.csv", (r) => `${r.type} ${r.diameter_in}, ${r.side} ${r.side_in}, ${r.main_gravity}`),
  )("%s", (_n, r) => {
    const got = yieldValue(
      {
        type: r.type as FastenerType,
        diameterIn: Number(r.diameter_in),
        side: member(r, "side"),
        main: member(r, "main"),
        second: undefined,
        gapIn: 0,
        grain: "side",
        rounded: true,
      },
      "2018",
    );
    expectPrinted(got.lb, r.printed_lb, Number(r.to_lb) / 2, r.disagrees);
    if (r.mode !== "") expect(got.mode).toBe(r.mode);
  });
});

describe("dowel bearing", () => {
  test.each(named("fasteners-bearing.csv", (r) => `G ${r.gravity}, ${r.diameter_in} in, ${r.angle_deg} deg`))(
    "%s",
    (_n, r) => {
      const type = Number(r.diameter_in) < 0.25 ? "nail" : "bolt";
      const wood: Member = {
        name: "wood",
        thicknessIn: 1.5,
        material: { kind: "wood", gravity: Number(r.gravity) },
        angleDeg: Number(r.angle_deg),
      };
      const dowel = dowelOf(type, Number(r.diameter_in));
      expectPrinted(bearingPsi(wood, dowel, true), r.printed_psi, 0, r.disagrees);
      expectPrinted(bearingPsi(wood, dowel, false), r.printed_psi, 25, r.disagrees);
    },
  );
});

describe("furring", () => {
  const all = rows("fasteners-furring.csv");
  test.each(
    named(
      "fasteners-furring.csv",
      (r) =>
        `${r.residential_code} ${r.table} ${r.fastener} ${r.spacing_in} in, ${r.furring_in} in, ${r.cladding_psf} psf`,
    ),
  )("%s", (_n, r) => {
    const ask = (insulationIn: number) =>
      furringFasteners({
        insulationIn,
        claddingPsf: Number(r.cladding_psf),
        fastener: r.fastener as FurringFastener,
        table: r.table as FurringTable,
        furringIn: Number(r.furring_in),
        edition: r.residential_code ?? "",
      }).spacingIn;
    const spacing = Number(r.spacing_in);
    if (r.printed_in === "DR") {
      // Design required: not even the thinnest foam of the table at this spacing.
      expect(ask(0.5) ?? 0).toBeLessThan(spacing);
    } else {
      expect(ask(Number(r.printed_in))).toBeGreaterThanOrEqual(spacing);
      if (Number(r.printed_in) < 4) expect(ask(Number(r.printed_in) + 0.01) ?? 0).toBeLessThan(spacing);
    }
  });

  test("every cell of both tables is there", () => {
    expect(all.filter((r) => r.residential_code === "2021")).toHaveLength(240);
    expect(all.filter((r) => r.residential_code === "2018")).toHaveLength(77);
  });
});

describe("spacing", () => {
  test.each(named("fasteners-spacing.csv", (r) => `${r.case} ${r.demand_plf} plf`))("%s", (_n, r) => {
    const got = spacingIn(Number(r.demand_plf), Number(r.capacity_lb), { rows: 1, leastIn: 1, mostIn: 36 });
    expect(got).toBe(Number(r.printed_in));
  });
});

describe("group action", () => {
  const of = (r: Row, which: "main" | "side"): GroupMember => ({
    name: which,
    steel: r[which] === "steel",
    stiffnessLb: Number(r[`${which}_ea_lb`]),
  });
  test.each(named("fasteners-group.csv", (r) => `${r.count} in a row, ${r.main_ea_lb} and ${r.side_ea_lb} lb`))(
    "%s",
    (_n, r) => {
      const got = groupActionFactor({
        count: Number(r.count),
        spacingIn: Number(r.spacing_in),
        diameterIn: Number(r.diameter_in),
        main: of(r, "main"),
        sides: [of(r, "side")],
      });
      expectPrinted(got, r.printed, halfLastDigit(r.printed ?? ""), r.disagrees);
    },
  );
});

describe("constants", () => {
  const live = { duration: "live", service: "dry", method: "allowable", edition: "2018" } as const;
  const lag = (grain: "side" | "end", thicknessIn = 4, angleDeg = 90) =>
    ({
      type: "lag screw",
      diameterIn: 0.5,
      side: { name: "side", thicknessIn: 1.5, material: { kind: "wood", gravity: 0.5 }, angleDeg: 0 },
      main: { name: "main", thicknessIn, material: { kind: "wood", gravity: 0.5 }, angleDeg },
      second: undefined,
      gapIn: 0,
      grain,
      rounded: true,
    }) as const;
  const plate = (thicknessIn: number): Member => ({
    name: "plate",
    thicknessIn,
    material: { kind: "steel" },
    angleDeg: 0,
  });
  const refused = (work: () => unknown): boolean => {
    try {
      work();
      return false;
    } catch {
      return true;
    }
  };
  const held: Readonly<Record<string, (diameterIn: number) => number>> = {
    "Fyb nail": (d) => bendingYieldPsi("nail", d),
    "Fyb lag screw": (d) => bendingYieldPsi("lag screw", d),
    "Fyb bolt": (d) => bendingYieldPsi("bolt", d),
    "root lag screw": (d) => dowelOf("lag screw", d).yieldIn,
    "root wood screw": (d) => dowelOf("wood screw", d).yieldIn,
    "strength design": () => adjusted("Z'", 1, "nail", "lateral", { ...live, method: "strength", duration: "wind" }),
    "end grain lateral": () => lateralValue(lag("end"), live) / lateralValue(lag("side"), live),
    "end grain withdrawal lag": () =>
      withdrawalValue("lag screw", 0.5, 0.5, 4, "end", live) / withdrawalValue("lag screw", 0.5, 0.5, 4, "side", live),
    "steel from 1/4 in": () => bearingPsi(plate(0.25), dowelOf("bolt", 0.5), true),
    "steel under 1/4 in": () => bearingPsi(plate(0.24), dowelOf("bolt", 0.5), true),
    concrete: () =>
      bearingPsi(
        { name: "concrete", thicknessIn: 6, material: { kind: "concrete" }, angleDeg: 0 },
        dowelOf("bolt", 0.5),
        true,
      ),
    // The largest CD and the least penetration that are not refused.
    "greatest CD": () =>
      [1.7, 1.61, 1.6, 1.5].find((cd) => !refused(() => lateralValue(lag("side"), { ...live, duration: cd }))) ?? 0,
    "penetration lag": () => [1.9, 1.99, 2, 2.1].find((p) => !refused(() => lateralValue(lag("side", p), live))) ?? 0,
  };
  test.each(named("fasteners-constants.csv", (r) => `${r.quantity} ${r.diameter_in}`))("%s", (_n, r) => {
    expect(held[r.quantity ?? ""]?.(Number(r.diameter_in))).toBeCloseTo(Number(r.printed), 9);
  });
});
