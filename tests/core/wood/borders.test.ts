import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { adjust, showAdjusted } from "../../../src/core/wood/adjust.ts";
import { solveBeam } from "../../../src/core/wood/beam/beam.ts";
import { greatestDeflection, greatestShear } from "../../../src/core/wood/beam/beam-extremes.ts";
import { equalSpans, uniform } from "../../../src/core/wood/beam/spans.ts";
import { columnAnswer } from "../../../src/core/wood/column.ts";
import { joistLoads } from "../../../src/core/wood/joist-loads.ts";
import { beamChecks, bendingStress } from "../../../src/core/wood/member-check.ts";
import { woodWeightPcf } from "../../../src/core/wood/moisture/moist-weight.ts";
import { panelChecks, panelSpans } from "../../../src/core/wood/panel.ts";
import type { PanelCase } from "../../../src/core/wood/panel-case.ts";
import { panelPicture } from "../../../src/core/wood/picture-of-panel.ts";
import { beamStability } from "../../../src/core/wood/stability.ts";
import type { Use } from "../../../src/core/wood/use.ts";
import { actual, asd, member, own } from "../../published/wood-known.ts";

const WOOD = own({ Fb: 1000, Fv: 150, Fcp: 500, Fc: 1350, E: 1.6e6, Emin: 580_000 });
const lrfd = (duration: Use["duration"]): Use => ({ method: "strength", duration, wet: false, edition: "2018" });

describe("line loads on joists 16 in apart: psf x 16 / 144 lb/in", () => {
  const psf = (livePsf: number, deadPsf: number, use: Use, level?: "strength" | "allowable") => {
    const { lbPerIn, serviceLbPerIn } = joistLoads({ livePsf, deadPsf, spacingIn: 16 }, use, level);
    return [lbPerIn * 9, serviceLbPerIn * 9].map((v) => Number(v.toPrecision(12)));
  };

  test("allowable stress: live and dead for strength, live alone for deflection", () => {
    expect(psf(40, 10, asd("live"))).toEqual([50, 40]);
    expect(psf(40, 10, asd("snow"))).toEqual([50, 40]);
  });

  test("strength design: 1.2 D + 1.6 L, 1.4 D for permanent load; deflection by the load as it is", () => {
    expect(psf(40, 10, lrfd("live"))).toEqual([76, 40]);
    expect(psf(40, 10, lrfd("permanent"))).toEqual([78, 40]);
    expect(psf(0, 10, lrfd("permanent"))).toEqual([14, 0]);
  });

  test("wind and earthquake are brought to the level by 0.6 and 0.7, and take no factor in strength design", () => {
    expect(psf(40, 10, asd("wind"), "strength")).toEqual([34, 24]);
    expect(psf(40, 10, asd("seismic"), "strength")).toEqual([38, 28]);
    expect(psf(40, 10, lrfd("wind"), "strength")).toEqual([52, 24]);
    expect(psf(40, 10, lrfd("seismic"), "strength")).toEqual([52, 28]);
    expect(() => psf(40, 10, asd("wind"))).toThrow("load level is missing");
  });

  test("no load at all is refused, one pound of dead load is one, and live and dead alike are two", () => {
    expect(() => psf(0, 0, asd("live"))).toThrow("both 0");
    expect(psf(0, 1, asd("live"))).toEqual([1, 0]);
    expect(psf(10, 10, asd("live"))).toEqual([20, 10]);
  });
});

describe("beams", () => {
  const CASE = {
    spanIn: 100,
    spans: 2,
    loads: [],
    deflectionLoads: [],
    deflectionOver: 360,
    bearingIn: 1,
    unbracedIn: 0,
  };
  const m = member(actual(3.5, 9.25), WOOD, asd(1));

  test("bearing: the outer support governs where the inner one has a little more load, but Cb", () => {
    // 1000 lb 40 in from the right end: M over the support = 1000 x 40 (100^2 - 40^2) / (4 x 100^2) = 8400 lb in;
    // the end takes 1000 x 60/100 - 8400/100 = 516 lb, the middle 400 + 2 x 84 = 568 lb, which over Cb 1.375 is 413.
    const loads = [{ kind: "point", atIn: 160, lb: 1000 } as const];
    const bearing = beamChecks(m, { ...CASE, loads }).find((c) => c.check === "bearing");
    expect(bearing?.demand).toBeCloseTo(516 / 3.5, 6);
    expect(bearing?.capacity).toBe(500);
  });

  test("the first support that is lifted is named", () => {
    const lifted = (atIn: number) => {
      const tape = new Tape();
      beamChecks(m, { ...CASE, loads: [{ kind: "point", atIn, lb: 1000 }] }, tape);
      return tape.cautions.join(" ");
    };
    expect(lifted(150)).toContain("Support 1 is lifted by 93.75 lb");
    expect(lifted(50)).toContain("Support 3 is lifted by 93.75 lb");
  });

  test("a point load within the depth of the right support keeps its whole shear: 1000 x 97 / 100", () => {
    const line = solveBeam(equalSpans(100, 1, { bending: 1 }, [{ kind: "point", atIn: 97, lb: 1000 }]));
    expect(Math.abs(greatestShear(line, 9.25).value)).toBeCloseTo(970, 6);
    // In the second of two spans shear is left out at the depth from each support though the span starts far from 0.
    const two = solveBeam(equalSpans(100, 2, { bending: 1 }, [uniform(200, 1)]));
    expect(Math.abs(greatestShear(two, 30).value)).toBeCloseTo(62.5 - 30, 6);
    expect(Math.abs(greatestShear(two, 50).value)).toBeCloseTo(62.5, 6);
    // Load on the second span alone, 0.5625 w L beside the middle: where the depths meet the whole span counts.
    const second = solveBeam(
      equalSpans(100, 2, { bending: 1 }, [{ kind: "uniform", fromIn: 100, toIn: 200, lbPerIn: 1 }]),
    );
    expect(Math.abs(greatestShear(second, 50).value)).toBeCloseTo(56.25, 6);
  });

  test("the greatest deflection just beside a load: P b (L^2 - b^2)^1.5 / (9 sqrt 3 L E I)", () => {
    // From a load at 52 of 100 in the turn lies at sqrt((L^2 - b^2) / 3) = 50.65 in, b = 48; both ends of the stretch are lower.
    for (const atIn of [52, 48]) {
      const line = solveBeam(equalSpans(100, 1, { bending: 1000 }, [{ kind: "point", atIn, lb: 1 }]));
      const found = greatestDeflection(line);
      expect(found.value).toBeCloseTo((48 * (100 ** 2 - 48 ** 2) ** 1.5) / (9 * Math.sqrt(3) * 100 * 1000), 9);
      expect(Math.abs(found.atIn - 50)).toBeCloseTo(Math.sqrt((100 ** 2 - 48 ** 2) / 3) - 50, 4);
    }
  });

  test("CL of a 2x10 whose edge is held each 8 ft, by hand", () => {
    // le = 1.63 x 96 + 3 x 9.25; RB^2 = le d / b^2; FbE = 1.2 Emin / RB^2 over Fb* 1000
    const le = 1.63 * 96 + 3 * 9.25;
    const ratio = (1.2 * 580_000) / ((le * 9.25) / 1.5 ** 2) / 1000;
    const half = (1 + ratio) / 1.9;
    expect(beamStability(actual(1.5, 9.25), 96, 1000, 580_000)).toBeCloseTo(
      half - Math.sqrt(half ** 2 - ratio / 0.95),
      12,
    );
    expect(beamStability(actual(1.5, 9.25), 96, 500, 580_000)).toBeGreaterThan(
      beamStability(actual(1.5, 9.25), 96, 1000, 580_000),
    );
  });

  test("Emin is in the working only where an edge can turn sideways", () => {
    const resistances = (unbracedIn: number) => {
      const tape = new Tape();
      bendingStress(member(actual(1.5, 9.25), WOOD, lrfd("live")), unbracedIn, tape);
      return tape.steps.filter((s) => s.symbol === "KF").map((s) => s.value);
    };
    expect(resistances(0)).toEqual([2.54]);
    expect(resistances(60)).toEqual([2.54, 1.76]);
  });

  test("a value without factors stands in the working as it is", () => {
    const said = (name: "E" | "Fb") => {
      const tape = new Tape();
      showAdjusted(adjust(name, member(actual(1.5, 9.25), WOOD, asd("wind"))), tape);
      return tape.steps.at(-1)?.expression;
    };
    expect(said("E")).toBe("1600000");
    expect(said("Fb")).toContain("1000 x");
  });
});

test("one ply is solid, and plies that are held side to side need no fastening: nothing is said of either", () => {
  const said = (plies: number, weakIn: number) => {
    const tape = new Tape();
    columnAnswer(member(actual(1.5, 5.5, plies), WOOD, asd(1)), { strongIn: 60, weakIn, fastening: "none" }, tape);
    return tape.cautions.join(" ");
  };
  expect(said(1, 60)).not.toContain("plies");
  expect(said(2, 0)).not.toContain("plies");
  expect(said(2, 60)).toContain("not joined");
});

test("wood as light as 0.1 is weighed", () => {
  expect(woodWeightPcf(0.1, 0)).toBeCloseTo(6.24, 9);
  expect(() => woodWeightPcf(0.099, 0)).toThrow("specific gravity");
});

describe("panels", () => {
  const VALUES = { E: 1.6e6, G: 60_000, Fb: 1800, Fs: 50, I: 3.375, S: 4.5, Q: 12, thickness: 1.5 };
  const CASE: PanelCase = {
    values: VALUES,
    grain: "along",
    spanIn: 48,
    spans: 2,
    psf: 30,
    servicePsf: 18,
    deflectionOver: 180,
    use: asd("wind"),
  };

  test("the picture of two spans bends alike to both sides of the middle support", () => {
    const { shape } = panelPicture(CASE, panelChecks(CASE));
    const mirrored = shape.map(([x, y]) => [96 - x, y]).reverse();
    expect(mirrored).toEqual(shape.map(([x, y]) => [expect.closeTo(x, 6), expect.closeTo(y, 6)]));
    expect(Math.max(...shape.map(([, y]) => Math.abs(y)))).toBeCloseTo(1, 9);
  });

  test("a strength of half a psi is one; a factor C of 0 is none, a half is one", () => {
    const { Fs: _fs, ...rest } = VALUES;
    expect(panelChecks({ ...CASE, values: { ...rest, Fv: 0.5 } }).map((c) => c.check)).toContain("shear");
    const sag = (values: PanelCase["values"]) =>
      panelChecks({ ...CASE, values }).find((c) => c.check === "deflection")?.demand;
    expect(sag({ ...VALUES, C: 0 })).toBe(sag(VALUES));
    expect(sag({ ...VALUES, C: 0.5 })).not.toBe(sag(VALUES));
  });

  test("spans from one inch clear on: a pressure that 1.5 in just carry has its answer, one that 0.9 in would carry is refused", () => {
    // Fb' S = w/12 L^2 / 8: at L = 1.5 in w = 1.6 x 1800 x 4.5 x 96 / 1.5^2; the shear is made not to govern.
    const psf = (spanIn: number) => (1.6 * 1800 * 4.5 * 96) / spanIn ** 2;
    const spans = (spanIn: number) =>
      panelSpans({ ...CASE, spans: 1, values: { ...VALUES, Fs: 1e7 }, psf: psf(spanIn), servicePsf: 1 });
    expect(spans(1.5)[0]).toEqual({ check: "bending", spanIn: expect.closeTo(1.5, 9) });
    expect(() => spans(0.9)).toThrow("over any span");
  });
});
