import { expect, test } from "vitest";
import { driftHeight, snowDensity } from "../../../src/core/loads/snow-drift.ts";
import { balancedSnow, flatRoofSnow, leastSnow, type SnowSite } from "../../../src/core/loads/snow-roof.ts";
import { RISK_CATEGORIES } from "../../../src/core/loads/tables/snow.ts";

// Rules of the standard worked by hand, for numbers that no print at hand holds.

const SITE: SnowSite = { groundPsf: 100, ce: 1, ct: 1, category: "II", edition: "7-16" };

test("the importance factors of 7-16 and the least loads of 7-22, by risk category", () => {
  const factors = RISK_CATEGORIES.map((category) => flatRoofSnow({ ...SITE, category }) / 70);
  [0.8, 1, 1.1, 1.2].forEach((factor, i) => {
    expect(factors[i]).toBeCloseTo(factor, 9);
  });
  const least = RISK_CATEGORIES.map((category) => leastSnow({ ...SITE, category, edition: "7-22" }, 0));
  expect(least).toEqual([25, 30, 35, 40]);
});

test("snow is never denser than 30 pcf", () => {
  expect(snowDensity(123, "7-16")).toBeCloseTo(29.99, 9);
  expect(snowDensity(124, "7-16")).toBe(30);
});

test("rain on snow is 5 psf to 7-16 and 8 psf in 7-22", () => {
  const rain = (edition: SnowSite["edition"]) =>
    balancedSnow({ ...SITE, groundPsf: 20, edition }, 0.5, "other", 50).rainPsf;
  expect([rain("7-10"), rain("7-16"), rain("7-22")]).toEqual([5, 5, 8]);
});

test("drift heights: the root of the importance factor in 7-16 alone, 20 ft of fetch at least, the 7-22 equation", () => {
  const site = { groundPsf: 30, category: "IV", winterWind: 0.45, edition: "7-10" } as const;
  const plain = 0.43 * 20 ** (1 / 3) * 40 ** 0.25 - 1.5;
  expect(driftHeight(site, 12)).toBeCloseTo(plain, 9);
  expect(driftHeight({ ...site, edition: "7-16" }, 20)).toBeCloseTo(plain * Math.sqrt(1.2), 9);
  expect(driftHeight({ ...site, edition: "7-16" }, 24)).toBeGreaterThan(driftHeight({ ...site, edition: "7-16" }, 20));
  // 1.5 sqrt(63^0.74 40^0.70 0.45^1.7 / 22.19), logarithms by hand: exp((3.0659 + 2.5822 - 1.3575 - 3.0997) / 2) x 1.5
  const by22 = driftHeight({ groundPsf: 63, category: "II", winterWind: 0.45, edition: "7-22" }, 40);
  expect(by22).toBeCloseTo(1.5 * Math.exp((3.0659 + 2.5822 - 1.3575 - 3.0997) / 2), 3);
});
