import fc from "fast-check";
import { expect, test } from "vitest";
import { BadInput } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import {
  dressed,
  isFlat,
  nominalSection,
  sectionProperties,
  showSection,
  widthIn,
} from "../../../src/core/wood/section.ts";
import { actual } from "../../published/wood-known.ts";

test("dressed sizes: lumber, wide lumber, timbers", () => {
  expect([1, 2, 3, 4].map((n) => dressed(n, 6))).toEqual([0.75, 1.5, 2.5, 3.5]);
  expect([5, 6, 8, 10, 12, 14].map((n) => dressed(n, 2))).toEqual([4.5, 5.5, 7.25, 9.25, 11.25, 13.25]);
  expect([5, 6, 8, 12].map((n) => dressed(n, 6))).toEqual([4.5, 5.5, 7.5, 11.5]);
  expect(dressed(8, 4)).toBe(7.25);
  // up to 24 in wide, in steps of two from 8 in on
  for (let n = 8; n <= 24; n += 2) expect(dressed(n, 2)).toBe(n - 0.75);
  for (const n of [0, 7, 9, 23, 26]) expect(() => dressed(n, 2)).toThrow(BadInput);
  expect(dressed(8, 5)).toBe(7.5);
  expect(() => dressed(7, 2)).toThrow(BadInput);
  expect(() => dressed(9.25, 2)).toThrow(/such as 9.25.0/);
});

test("plies lie side by side, as deep as one", () => {
  const s = nominalSection("3-2x6", 3, 2, 6);
  expect([widthIn(s), s.plyIn, s.depthIn]).toEqual([4.5, 1.5, 5.5]);
  const p = sectionProperties(s);
  const one = sectionProperties(nominalSection("2x6", 1, 2, 6));
  expect(p.areaIn2).toBeCloseTo(3 * one.areaIn2, 12);
  expect(p.inertiaIn4).toBeCloseTo(3 * one.inertiaIn4, 12);
  expect(p.weakInertiaIn4).toBeCloseTo(27 * one.weakInertiaIn4, 9);
  expect(p.weakModulusIn3).toBeCloseTo(9 * one.weakModulusIn3, 9);
  expect(p.torsionIn4).toBeCloseTo(3 * one.torsionIn4, 12);
});

test("both axes change places when the section is turned", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 20, noNaN: true }),
      fc.double({ min: 0.5, max: 20, noNaN: true }),
      (b, d) => {
        const [one, turned] = [sectionProperties(actual(b, d)), sectionProperties(actual(d, b))];
        expect(turned.inertiaIn4).toBeCloseTo(one.weakInertiaIn4, 6);
        expect(turned.modulusIn3).toBeCloseTo(one.weakModulusIn3, 6);
        expect(turned.torsionIn4).toBeCloseTo(one.torsionIn4, 6);
        expect(one.modulusIn3 * d).toBeCloseTo(2 * one.inertiaIn4, 6);
        const twice = sectionProperties(actual(2 * b, 2 * d));
        expect(twice.torsionIn4 / one.torsionIn4).toBeCloseTo(16, 6);
      },
    ),
  );
});

test("torsion: 0.1406 b^4 of a square, b^3 d / 3 of a thin strip (Saint-Venant)", () => {
  expect(sectionProperties(actual(1, 1)).torsionIn4).toBeCloseTo(0.1408, 3);
  expect(sectionProperties(actual(0.01, 1)).torsionIn4 / (0.01 ** 3 / 3)).toBeCloseTo(1, 1);
  expect(sectionProperties(actual(1, 2)).torsionIn4).toBeCloseTo(2 * 0.229, 2);
});

test("flat where the load comes on the wide face", () => {
  expect(isFlat(nominalSection("6x2", 1, 6, 2))).toBe(true);
  expect(isFlat(nominalSection("2x6", 1, 2, 6))).toBe(false);
  expect(isFlat(nominalSection("4x4", 1, 4, 4))).toBe(false);
  expect(isFlat(nominalSection("3-2x4", 3, 2, 4))).toBe(false);
});

test("the working says the actual size and where it comes from", () => {
  const tape = new Tape();
  showSection(nominalSection("3-2x6", 3, 2, 6), tape);
  expect(tape.steps[0]?.expression).toBe("3-2x6: actual 4.5 x 5.5 in (3 plies of 1.5 in)");
  expect(tape.steps[0]?.clause).toContain("from memory");
  const given = new Tape();
  showSection(actual(1.75, 9.5), given);
  expect(given.steps[0]?.clause).toBe("as given");
  expect(given.steps[0]?.expression).not.toContain("plies");
  const two = new Tape();
  showSection(actual(1.5, 9.25, 2), two);
  expect(two.steps[0]?.expression).toContain("(2 plies of 1.5 in)");
  expect(given.steps[0]?.value).toBe("1.75 x 9.5");
});
