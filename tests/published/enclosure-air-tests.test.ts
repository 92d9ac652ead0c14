import { expect, test } from "vitest";
import { ach50Of } from "../../src/core/enclosure/loss/air-tightness.ts";
import { airTightness } from "../../src/functions/basis/glossary/air-tightness.ts";
import { rows } from "./rows.ts";

const notes = { assume: () => undefined, caution: () => undefined };

test.each(rows("enclosure-air-tests.csv").map((r) => [r.text, r] as const))("%s", (text, r) => {
  const { value } = airTightness.read(text, "air tightness", notes);
  const ach50 = ach50Of(value, { volumeFt3: 20_000, areaFt2: 5000, exponent: 0.65 });
  expect(Math.abs(ach50 - Number(r.ach50))).toBeLessThanOrEqual(Number(r.within));
});
