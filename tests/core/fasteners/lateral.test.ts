import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bearingPsi, type Material, type Member } from "../../../src/core/fasteners/bearing.ts";
import { bendingYieldPsi, dowelOf } from "../../../src/core/fasteners/dowel.ts";
import { type Connection, lateralValue, yieldValue } from "../../../src/core/fasteners/lateral.ts";
import type { YieldModePicture } from "../../../src/core/fasteners/pictures.ts";
import { bothPlanes, MODES, planeYield, reductionTerm } from "../../../src/core/fasteners/yield.ts";
import { BadInput, OutOfRange } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { closedForms } from "./nds-closed-forms.ts";

const wood = (gravity: number): Material => ({ kind: "wood", gravity });
const member = (name: string, thicknessIn: number, material: Material = wood(0.5), angleDeg = 0): Member => ({
  name,
  thicknessIn,
  material,
  angleDeg,
});

const nailed: Connection = {
  type: "nail",
  diameterIn: 0.162,
  side: member("side", 1.5),
  main: member("main", 2),
  second: undefined,
  gapIn: 0,
  grain: "side",
  rounded: true,
};
const lagged: Connection = { ...nailed, type: "lag screw", diameterIn: 0.375, main: member("main", 3) };
const bolted: Connection = { ...nailed, type: "bolt", diameterIn: 0.5, main: member("main", 3.5) };

const z = (c: Partial<Connection>, from: Connection = nailed) => yieldValue({ ...from, ...c }, "2018");
const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("dowels", () => {
  test("threaded ones take the root diameter, others their own", () => {
    expect(dowelOf("lag screw", 0.5)).toMatchObject({ nominalIn: 0.5, yieldIn: 0.371, bendingYieldPsi: 45_000 });
    expect(dowelOf("wood screw", 0.19)).toMatchObject({ yieldIn: 0.152, bendingYieldPsi: 80_000 });
    expect(dowelOf("nail", 0.131)).toMatchObject({ yieldIn: 0.131, bendingYieldPsi: 100_000 });
    expect(dowelOf("bolt", 0.6)).toMatchObject({ yieldIn: 0.6, bendingYieldPsi: 45_000 });
    // 5/16 in as four places or three.
    expect(dowelOf("lag screw", 0.3125).yieldIn).toBe(dowelOf("lag screw", 0.3126).yieldIn);
    expect(dowelOf("wood screw", 0.189).yieldIn).toBe(0.152);
  });

  test("bending yield strength by the classes of Appendix I (from memory)", () => {
    const classes = [0.099, 0.142, 0.143, 0.177, 0.178, 0.236, 0.237, 0.273, 0.274, 0.344, 0.345, 1].map((d) =>
      bendingYieldPsi("lag screw", d),
    );
    expect(classes).toEqual([100, 100, 90, 90, 80, 80, 70, 70, 60, 60, 45, 45].map((k) => k * 1000));
    expect(bendingYieldPsi("bolt", 0.25)).toBe(45_000);
  });

  test("sizes that no table holds are refused with what there is", () => {
    expect(() => dowelOf("lag screw", 0.4)).toThrow(/lag screw of 0.4 in is no size.*0.25, 0.3125/);
    expect(() => dowelOf("lag screw", 0.315)).toThrow(OutOfRange);
    expect(() => dowelOf("wood screw", 0.25)).toThrow(
      "0.138 (No. 6), 0.151 (No. 7), 0.164 (No. 8), 0.177 (No. 9), 0.19 (No. 10), 0.216 (No. 12), 0.242 (No. 14), 0.268 (No. 16), 0.294 (No. 18), 0.32 (No. 20), 0.372 (No. 24) in",
    );
    for (const [type, d] of [
      ["nail", 0.098],
      ["nail", 0.274],
      ["bolt", 0.249],
      ["bolt", 1.01],
    ] as const)
      expect(() => dowelOf(type, d)).toThrow(OutOfRange);
    for (const [type, d] of [
      ["nail", 0.099],
      ["nail", 0.273],
      ["bolt", 0.25],
      ["bolt", 1],
    ] as const)
      expect(dowelOf(type, d).yieldIn).toBe(d);
  });

  test("every size of the tables has a root thinner than itself and sizes rise", () => {
    const lags = [0.25, 0.3125, 0.375, 0.4375, 0.5, 0.625, 0.75, 0.875, 1].map((d) => dowelOf("lag screw", d).yieldIn);
    expect(lags).toEqual([0.173, 0.227, 0.265, 0.328, 0.371, 0.471, 0.579, 0.683, 0.78]);
    const screws = [0.138, 0.151, 0.164, 0.177, 0.19, 0.216, 0.242, 0.268, 0.294, 0.32, 0.372];
    expect(screws.map((d) => dowelOf("wood screw", d).yieldIn)).toEqual([
      0.113, 0.122, 0.131, 0.142, 0.152, 0.171, 0.196, 0.209, 0.232, 0.255, 0.298,
    ]);
  });
});

describe("dowel bearing", () => {
  const nail = dowelOf("nail", 0.131);
  const lag = dowelOf("lag screw", 0.25);

  test("small fasteners do not feel the grain, larger ones follow Hankinson", () => {
    expect(bearingPsi(member("m", 2, wood(0.5), 90), nail, true)).toBe(4650);
    expect(bearingPsi(member("m", 2, wood(0.5), 0), lag, true)).toBe(5600);
    expect(bearingPsi(member("m", 2, wood(0.5), 90), lag, true)).toBe(4450);
    const at45 = bearingPsi(member("m", 2, wood(0.5), 45), lag, true);
    expect(at45).toBeCloseTo((2 * 5600 * 4450) / (5600 + 4450), 6);
    const at30 = bearingPsi(member("m", 2, wood(0.5), 30), lag, true);
    expect(at30).toBeCloseTo((5600 * 4450) / (5600 * 0.25 + 4450 * 0.75), 6);
  });

  test("unrounded follows the equations", () => {
    expect(bearingPsi(member("m", 2, wood(0.5)), nail, false)).toBeCloseTo(16600 * 0.5 ** 1.84, 6);
    expect(bearingPsi(member("m", 2, wood(0.42), 90), lag, false)).toBeCloseTo((6100 * 0.42 ** 1.45) / 0.5, 6);
  });

  test("steel by its thickness, concrete, and panels for small fasteners", () => {
    expect(bearingPsi(member("p", 0.239, { kind: "steel" }), lag, true)).toBe(61_850);
    expect(bearingPsi(member("p", 0.25, { kind: "steel" }), lag, true)).toBe(87_000);
    expect(bearingPsi(member("c", 6, { kind: "concrete" }), lag, true)).toBe(7500);
    const panel = (name: string) => member("s", 0.5, { kind: "panel", name });
    expect(bearingPsi(panel("OSB"), nail, true)).toBe(4650);
    expect(bearingPsi(panel("plywood"), nail, true)).toBe(3350);
    expect(bearingPsi(panel("Structural I plywood"), nail, true)).toBe(4650);
    expect(() => bearingPsi(panel("OSB"), lag, true)).toThrow(/Give the specific gravity of the panel/);
    expect(() => bearingPsi(panel("cork"), nail, true)).toThrow(BadInput);
  });

  test("a specific gravity outside the tables is refused", () => {
    for (const g of [0.3, 0.74, 50]) expect(() => bearingPsi(member("m", 2, wood(g)), nail, true)).toThrow(OutOfRange);
    for (const g of [0.31, 0.73]) expect(bearingPsi(member("m", 2, wood(g)), nail, true)).toBeGreaterThan(0);
  });
});

describe("yield modes", () => {
  const cases = fc.record({
    d: finite(0.1, 1),
    fyb: finite(45_000, 100_000),
    lm: finite(0.5, 10),
    fem: finite(2000, 8000),
    ls: finite(0.05, 6),
    fes: finite(2000, 87_000),
  });

  test("without a gap they are the six printed equations", () => {
    fc.assert(
      fc.property(cases, ({ d, fyb, lm, fem, ls, fes }) => {
        const dowel = { type: "bolt", nominalIn: d, yieldIn: d, bendingYieldPsi: fyb } as const;
        const want = closedForms(d, fyb, lm, fem, ls, fes);
        for (const l of planeYield(dowel, { lengthIn: lm, psi: fem }, { lengthIn: ls, psi: fes }, 0))
          expect(Math.abs(l.lb / want[l.mode] - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test("a gap never helps, and mode IV with a wide one tends to two plastic moments over the gap", () => {
    fc.assert(
      fc.property(cases, finite(0, 6), finite(0.01, 4), ({ d, fyb, lm, fem, ls, fes }, gap, more) => {
        const dowel = { type: "bolt", nominalIn: d, yieldIn: d, bendingYieldPsi: fyb } as const;
        const at = (g: number) => planeYield(dowel, { lengthIn: lm, psi: fem }, { lengthIn: ls, psi: fes }, g);
        const [near, far] = [at(gap), at(gap + more)];
        near.forEach((l, i) => {
          expect(far[i]?.lb).toBeLessThanOrEqual(l.lb * (1 + 1e-12));
        });
        const moment = (fyb * d ** 3) / 6;
        expect((at(1e5)[5]?.lb ?? 0) / ((2 * moment) / 1e5)).toBeCloseTo(1, 3);
      }),
    );
  });

  test("two planes double all but the crushing of the main member, and leave the turning modes out", () => {
    const loads = MODES.map((mode, i) => ({ mode, lb: i + 1, how: "x" }));
    expect(bothPlanes(loads).map((l) => [l.mode, l.lb, l.how])).toEqual([
      ["Im", 1, "x"],
      ["Is", 4, "2 x"],
      ["IIIs", 10, "2 x"],
      ["IV", 12, "2 x"],
    ]);
  });

  test("reduction terms", () => {
    const bolt = dowelOf("bolt", 0.25);
    expect(MODES.map((m) => reductionTerm(m, bolt, 0))).toEqual([4, 4, 3.6, 3.2, 3.2, 3.2]);
    expect(MODES.map((m) => reductionTerm(m, bolt, 90))).toEqual([5, 5, 4.5, 4, 4, 4]);
    expect(reductionTerm("Im", bolt, 45)).toBeCloseTo(4.5, 12);
    expect(reductionTerm("IV", dowelOf("nail", 0.17), 90)).toBe(2.2);
    expect(reductionTerm("IV", dowelOf("nail", 0.2), 90)).toBeCloseTo(2.5, 12);
    // A 1/4 in lag screw is thinner than 1/4 in at its root, and takes both.
    expect(reductionTerm("IV", dowelOf("lag screw", 0.25), 90)).toBeCloseTo((10 * 0.173 + 0.5) * 1.25, 12);
    expect(reductionTerm("IV", dowelOf("lag screw", 0.375), 90)).toBeCloseTo(4, 12);
  });
});

describe("the value of a connection", () => {
  const any = fc.record({
    from: fc.constantFrom(nailed, lagged, bolted),
    ls: finite(0.5, 4),
    lm: finite(2.2, 8),
    gs: finite(0.31, 0.73),
    gm: finite(0.31, 0.73),
    as: finite(0, 90),
    am: finite(0, 90),
    gap: finite(0, 4),
  });
  const of = ({ from, ls, lm, gs, gm, as, am, gap }: typeof any extends fc.Arbitrary<infer T> ? T : never) => ({
    ...from,
    side: member("side", ls, wood(gs), as),
    main: member("main", lm, wood(gm), am),
    gapIn: gap,
    rounded: false,
  });

  test("is the least of its modes, and the last step", () => {
    fc.assert(
      fc.property(any, (a) => {
        const tape = new Tape();
        const got = yieldValue(of(a), "2018", tape);
        const modes = tape.steps.filter((s) => s.symbol.startsWith("Z(")).map((s) => s.value as number);
        expect(modes).toHaveLength(6);
        expect(got.lb).toBe(Math.min(...modes));
        expect(tape.steps.at(-1)).toMatchObject({ symbol: "Z", value: got.lb, unit: "lb" });
        expect(tape.steps.at(-1)?.expression).toContain(got.words);
      }),
    );
  });

  test("grows with both members' thickness, without a gap", () => {
    fc.assert(
      fc.property(any, finite(0, 3), (a, more) => {
        const c = { ...of(a), gapIn: 0 };
        const value = yieldValue(c, "2018").lb;
        const thickSide = { ...c, side: { ...c.side, thicknessIn: c.side.thicknessIn + more } };
        const thickMain = { ...c, main: { ...c.main, thicknessIn: c.main.thicknessIn + more } };
        expect(yieldValue(thickMain, "2018").lb).toBeGreaterThanOrEqual(value * (1 - 1e-9));
        expect(yieldValue(thickSide, "2018").lb).toBeGreaterThanOrEqual(value * (1 - 1e-9));
      }),
    );
  });

  test("double shear with equal sides is at most twice the modes that both have; the order of unequal sides does not matter", () => {
    fc.assert(
      fc.property(any, finite(1.5, 4), finite(0.31, 0.73), (a, ls, gravity) => {
        const c = { ...of(a), side: member("side", a.ls + 1, wood(a.gs), a.as) };
        const second = member("second", ls, wood(gravity));
        const double = yieldValue({ ...c, second }, "2018").lb;
        expect(yieldValue({ ...c, side: second, second: c.side }, "2018").lb).toBeCloseTo(double, 6);
        // The turning modes fall away, so equal sides may carry more than twice; never less than what governs both.
        const alike = { ...c, second: c.side };
        const mode = yieldValue(c, "2018").mode;
        if (["Is", "IIIs", "IV"].includes(mode))
          expect(yieldValue(alike, "2018").lb).toBeLessThanOrEqual(2 * yieldValue(c, "2018").lb * (1 + 1e-9));
      }),
    );
  });

  test("in double shear all is twice the printed double shear equations", () => {
    const c = { ...bolted, second: member("second", 1.5), rounded: false };
    const fe = 11200 * 0.5;
    const forms = closedForms(0.5, 45_000, 3.5, fe, 1.5, fe);
    expect(yieldValue(c, "2018").lb).toBeCloseTo(
      Math.min(forms.Im / 4, (2 * forms.Is) / 4, (2 * forms.IIIs) / 3.2, (2 * forms.IV) / 3.2),
      6,
    );
    const thinSecond = yieldValue({ ...c, second: member("second", 0.5) }, "2018").lb;
    const thin = closedForms(0.5, 45_000, 3.5, fe, 0.5, fe);
    expect(thinSecond).toBeCloseTo(Math.min((2 * thin.Is) / 4, (2 * thin.IIIs) / 3.2), 6);
  });

  test("the largest angle of any member reduces, wherever it stands", () => {
    const across = member("side", 1.5, wood(0.5), 90);
    expect(z({ side: across }, bolted).lb).toBeLessThan(z({}, bolted).lb);
    const second = member("second", 1.5);
    const steel = member("side", 0.25, { kind: "steel" });
    expect(z({ side: steel, second: { ...steel, angleDeg: 90 } }, bolted).lb).toBeCloseTo(
      z({ side: steel, second: steel }, bolted).lb / 1.25,
      6,
    );
    expect(z({ second }, bolted).mode).toBe("IIIs");
  });

  test("end grain takes bearing across the grain and its factor", () => {
    const dry = { duration: "live", service: "dry", method: "allowable", edition: "2018" } as const;
    const end = { ...lagged, grain: "end" as const };
    expect(yieldValue(end, "2018").lb).toBe(z({ main: member("main", 3, wood(0.5), 90) }, lagged).lb);
    expect(lateralValue(end, dry)).toBeCloseTo(0.67 * yieldValue(end, "2018").lb, 9);
    expect(lateralValue(lagged, dry)).toBe(yieldValue(lagged, "2018").lb);
    expect(() => z({ grain: "end", second: member("second", 3) }, lagged)).toThrow(/End grain/);
    expect(() => z({ grain: "end", main: member("main", 3, { kind: "steel" }) }, lagged)).toThrow(BadInput);
  });

  test("adjustment: duration, wet service, strength design", () => {
    const base = { duration: "wind", service: "dry", method: "allowable", edition: "2018" } as const;
    const lb = yieldValue(nailed, "2018").lb;
    expect(lateralValue(nailed, base)).toBeCloseTo(1.6 * lb, 9);
    expect(lateralValue(nailed, { ...base, duration: 1.15 })).toBeCloseTo(1.15 * lb, 9);
    expect(lateralValue(nailed, { ...base, service: "wet" })).toBeCloseTo(1.6 * 0.7 * lb, 9);
    expect(lateralValue(nailed, { ...base, method: "strength" })).toBeCloseTo(3.32 * 0.65 * lb, 9);
    expect(lateralValue(nailed, { ...base, method: "strength", duration: "permanent", service: "wet" })).toBeCloseTo(
      3.32 * 0.65 * 0.6 * 0.7 * lb,
      9,
    );
    for (const duration of ["impact", 1.61] as const)
      expect(() => lateralValue(nailed, { ...base, duration })).toThrow(/no impact factor/);
    expect(lateralValue(nailed, { ...base, duration: 1.6 })).toBeGreaterThan(0);
  });
});

describe("refusals", () => {
  test("too little penetration names inches", () => {
    expect(() => z({ main: member("stud", 1.49) }, lagged)).toThrow(
      /penetration into stud is 1.49 in.*1.5 in.*in inches/s,
    );
    expect(z({ main: member("stud", 1.5) }, lagged).lb).toBeGreaterThan(0);
    // In double shear the point ends in the second side.
    expect(() => z({ main: member("m", 0.5), second: member("far", 0.6) })).toThrow(/into far/);
    expect(z({ main: member("m", 0.5), second: member("far", 0.7) }).lb).toBeGreaterThan(0);
    expect(z({ main: member("m", 0.5) }, bolted).lb).toBeGreaterThan(0);
    expect(z({ main: member("m", 0.5, { kind: "steel" }) }, lagged).lb).toBeGreaterThan(0);
  });

  test("gap and angles", () => {
    for (const gapIn of [-0.1, 12.1]) expect(() => z({ gapIn })).toThrow(/gap/);
    expect(z({ gapIn: 12 }).lb).toBeGreaterThan(0);
    for (const angleDeg of [-1, 91]) {
      expect(() => z({ side: member("side", 1.5, wood(0.5), angleDeg) })).toThrow(/angle of side/);
      expect(() => z({ main: member("main", 1.5, wood(0.5), angleDeg) })).toThrow(/angle of main/);
      expect(() => z({ second: member("second", 1.5, wood(0.5), angleDeg) })).toThrow(/angle of second/);
    }
  });
});

describe("the picture", () => {
  const shown = (c: Connection) => {
    const tape = new Tape();
    yieldValue(c, "2018", tape);
    return tape.pictures[0] as YieldModePicture;
  };

  test("says the mode, where the fastener bends and what crushes", () => {
    const four = shown(nailed);
    expect(four).toMatchObject({ kind: "yield-mode", mode: "IV", gapIn: 0, diameterIn: 0.162 });
    expect(four.alt).toContain("the fastener bends in both members");
    // Equal members: it bends as deep in one as in the other.
    expect(four.bendsIn.side).toBeCloseTo(four.bendsIn.main ?? 0, 12);
    const planeLb = 0.162 ** 2 * Math.sqrt((2 * 4650 * 90_000) / 6);
    expect(four.bendsIn.side).toBeCloseTo(planeLb / (4650 * 0.162), 9);
    expect(four.members.map((m) => m.crushed)).toEqual([true, true]);

    const three = shown({ ...bolted, second: member("second", 1.5) });
    expect(three).toMatchObject({ mode: "IIIs", bendsIn: { side: undefined } });
    expect(three.members.map((m) => [m.name, m.crushed])).toEqual([
      ["side", true],
      ["main", false],
      ["second", true],
    ]);
    const single = shown(bolted);
    expect(single.mode).toBe("IIIs");
    expect(three.bendsIn.main).toBeCloseTo(single.bendsIn.main ?? 0, 9);

    const turned = shown({ ...bolted, main: member("main", 1.5) });
    expect(turned).toMatchObject({ mode: "II", bendsIn: { side: undefined, main: undefined } });
    expect(turned.members.map((m) => m.crushed)).toEqual([true, true]);

    const steel = shown({ ...bolted, side: member("side", 3.5), main: member("main", 1.5) });
    expect(steel.mode).toBe("IIIm");
    expect(steel.members.map((m) => m.crushed)).toEqual([false, true]);
    expect(steel.bendsIn.main).toBeUndefined();
    expect(steel.bendsIn.side).toBeGreaterThan(0);

    const main = shown({ ...bolted, main: member("main", 0.5), second: member("second", 1.5) });
    expect(main.mode).toBe("Im");
    expect(main.members.map((m) => m.crushed)).toEqual([false, true, false]);
    const side = shown({ ...bolted, side: member("side", 0.1) });
    expect(side.mode).toBe("Is");
    expect(side.members.map((m) => m.crushed)).toEqual([true, false]);
  });

  test("a side too thin for wood is asked about", () => {
    const asked = (side: Member) => {
      const tape = new Tape();
      yieldValue({ ...nailed, side }, "2018", tape);
      return tape.cautions.join();
    };
    expect(asked(member("strip", 0.125))).toBe("strip is 0.125 in thick: is the thickness in inches?");
    expect(asked(member("strip", 0.25))).toBe("");
    expect(asked(member("plate", 0.06, { kind: "steel" }))).toBe("");
  });

  test("cautions of a gap", () => {
    const tape = new Tape();
    yieldValue({ ...nailed, gapIn: 2 }, "2018", tape);
    expect(tape.cautions.join()).toContain("gap");
    const none = new Tape();
    yieldValue(nailed, "2018", none);
    expect(none.cautions).toEqual([]);
  });
});
