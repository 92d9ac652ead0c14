import { expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import { solveBeam } from "../../../src/core/wood/beam/beam.ts";
import { equalSpans, uniform } from "../../../src/core/wood/beam/spans.ts";
import { beamColumnChecks } from "../../../src/core/wood/beam-column.ts";
import { panelChecks } from "../../../src/core/wood/panel.ts";
import { curveOf, memberPicture } from "../../../src/core/wood/picture-of-member.ts";
import type { PanelBaysPicture, WoodMemberPicture } from "../../../src/core/wood/pictures.ts";
import { actual, asd, member, own } from "../../published/wood-known.ts";

const solution = solveBeam(equalSpans(100, 2, { bending: 1e6 }, [uniform(200, 3)]));

test("a curve goes evenly from break to break and shows both sides of a jump", () => {
  const shear = curveOf(solution, solution.shearLb);
  expect(shear[0]?.[0]).toBe(0);
  expect(shear.at(-1)?.[0]).toBe(200);
  const steps = shear.slice(1).map(([x], i) => x - (shear[i]?.[0] ?? 0));
  expect(Math.max(...steps)).toBeCloseTo(6.25, 9);
  expect(Math.min(...steps)).toBe(0);
  const middle = shear.filter(([x]) => x === 100).map(([, v]) => v);
  expect(middle).toEqual([expect.closeTo(-187.5, 6), expect.closeTo(187.5, 6)]);
  for (const [x, v] of curveOf(solution, solution.momentLbIn)) expect(v).toBe(solution.momentLbIn(x));
});

test("a member's picture has its checks in words, the worst named", () => {
  const checks = [
    { check: "bending", demand: 3, capacity: 2, unit: "psi", ratio: 1.5, clause: "" },
    { check: "shear", demand: 1, capacity: 2, unit: "psi", ratio: 0.5, clause: "" },
  ];
  const picture = memberPicture(solution, solution, "2x10", checks);
  expect(picture.ratios).toEqual(["bending 1.50", "shear 0.50"]);
  expect(picture.alt).toContain("2x10 of 200 in on 3 supports");
  expect(picture.alt).toContain("bending is worst at 1.50");
  expect([picture.axialLb, picture.supportsIn, picture.lengthIn]).toEqual([0, [0, 100, 200], 200]);
  expect(Math.max(...picture.deflectionIn.map(([, y]) => y))).toBeGreaterThan(0);
});

test("a beam-column's picture carries its axial load", () => {
  const tape = new Tape();
  const wood = own({ Fb: 1000, Fv: 150, Fc: 1350, E: 1.6e6, Emin: 580_000 });
  const bracing = { strongIn: 96, weakIn: 0, fastening: "none" } as const;
  const load = { lateralLbPerIn: 1, serviceLbPerIn: 1, deflectionOver: 240 };
  beamColumnChecks(member(actual(1.5, 5.5), wood, asd("wind")), { lengthIn: 96, bracing, axialLb: 700, ...load }, tape);
  expect((tape.pictures[0] as WoodMemberPicture).axialLb).toBe(700);
});

test("a panel's picture: bays, supports, the shape with its greatest size 1", () => {
  const tape = new Tape();
  const values = { E: 1.6e6, G: 0, Fb: 1800, Fs: 50, I: 3.375, S: 4.5, Q: 12, "support width": 4.5 };
  const use = asd("wind");
  const at = { spanIn: 96, spans: 3, psf: 30, servicePsf: 20, deflectionOver: 180, use };
  panelChecks({ values, grain: "across", ...at }, tape);
  const picture = tape.pictures[0] as PanelBaysPicture;
  expect([picture.spans, picture.spanIn, picture.supportWidthIn, picture.pressurePsf, picture.grain]).toEqual([
    3,
    96,
    4.5,
    30,
    "across",
  ]);
  expect(Math.max(...picture.shape.map(([, y]) => Math.abs(y)))).toBe(1);
  expect(picture.shape.at(-1)?.[0]).toBeCloseTo(288, 9);
  expect(picture.alt).toContain("3 bays of 96 in");
  const { "support width": _width, ...bare } = values;
  const other = new Tape();
  panelChecks({ values: bare, grain: "along", ...at }, other);
  expect((other.pictures[0] as PanelBaysPicture).supportWidthIn).toBe(0);
});
