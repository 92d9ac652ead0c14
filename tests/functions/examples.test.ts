import { describe, expect, test } from "vitest";
import { sentence } from "../../src/core/kit/refusal.ts";
import type { Cell, Table } from "../../src/core/kit/tape.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { registry } from "../../src/functions/registry.ts";
import { explain, invoke } from "../../src/functions/run/invoke.ts";
import { withoutHeadings } from "../../src/functions/run/present.ts";

/** Each printed answer beside the calculated one; numbers within the example's tolerance. */
function expectAnswer(got: Cell | Table, want: Cell | Table, within: number): void {
  if (Array.isArray(want)) {
    expect(Array.isArray(got)).toBe(true);
    expect((got as Table).length).toBe(want.length);
    (want as Table).forEach((row, r) => {
      row.forEach((cell, c) => {
        expectAnswer((got as Table)[r]?.[c] as Cell, cell, within);
      });
    });
  } else if (typeof want === "number") {
    expect(typeof got).toBe("number");
    expect(Math.abs((got as number) - want)).toBeLessThanOrEqual(within * (1 + 1e-9));
  } else expect(got).toBe(want);
}

describe.each(registry.map((fn) => [fn.name, fn] as const))("%s", (_name, fn) => {
  const args = positional(fn, fn.example.args);

  test(`example: ${fn.example.source}`, () => {
    const outcome = invoke(fn, args);
    expect(outcome, outcome.ok ? "" : sentence(outcome.said)).toMatchObject({ ok: true });
    if (outcome.ok) expectAnswer(withoutHeadings(fn, outcome.value), fn.example.gives, fn.example.within);
  });

  test("the working ends with the value that the cell gets", () => {
    const { outcome, steps } = explain(fn, args);
    expect(outcome.ok).toBe(true);
    if (outcome.ok) expect(steps.at(-1)?.value).toEqual(withoutHeadings(fn, outcome.value));
  });

  test("is declared in full", () => {
    expect(fn.name).toMatch(/^[A-Z][A-Z0-9]*(_[A-Z0-9]+)*$/);
    expect(fn.id).toMatch(/^[A-Z][A-Z0-9]{2,}$/);
    expect(fn.summary).toMatch(/\.$/);
    expect(fn.sources.length).toBeGreaterThan(0);
    for (const { name, param } of fn.params) {
      expect(name).toMatch(/^[A-Za-z][A-Za-z0-9]*$/);
      expect(param.says).not.toBe("");
    }
    const order = fn.params.map(({ param }) => ("optional" in param ? 1 : 0));
    expect(order, "required arguments come first").toEqual([...order].sort());
  });
});

test("names and ids are unique", () => {
  expect(new Set(registry.map((fn) => fn.name)).size).toBe(registry.length);
  expect(new Set(registry.map((fn) => fn.id)).size).toBe(registry.length);
});

test("the preliminary families carry a caution on every function", () => {
  const bare = registry.filter(
    (fn) =>
      ["Wind", "Loads", "Wood members", "Fasteners and furring", "Anchorage", "Lifting and hauling"].includes(
        fn.family,
      ) && fn.cautions.length === 0,
  );
  expect(bare.map((fn) => fn.name)).toEqual([]);
});
