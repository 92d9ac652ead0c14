import { describe, expect, test } from "vitest";
import { sentence } from "../../src/core/kit/refusal.ts";
import { positional, refusedArguments } from "../../src/functions/declare/formula.ts";
import { registry } from "../../src/functions/registry.ts";
import { invoke } from "../../src/functions/run/invoke.ts";

describe.each(registry.map((fn) => [fn.name, fn] as const))("%s", (_, fn) => {
  test("its refused calls change arguments that there are", () => {
    const names = new Set([...fn.params, ...fn.named].map(({ name }) => name));
    expect(fn.refuses.flatMap(({ args }) => Object.keys(args)).filter((name) => !names.has(name))).toEqual([]);
  });

  test("refuses what its help says it refuses, for the reason that stands there", () => {
    for (const refused of fn.refuses) {
      const outcome = invoke(fn, positional(fn, refusedArguments(fn, refused)));
      const says = outcome.ok ? `it answers ${String(outcome.value)}` : sentence(outcome.said);
      expect(says, JSON.stringify(refused.args)).toContain(refused.says);
    }
  });

  test("names each refusal once, in words that tell it from the others", () => {
    const says = fn.refuses.map((refused) => refused.says);
    expect(says.filter((text) => text.length < 10)).toEqual([]);
    expect(new Set(fn.refuses.map(({ args }) => JSON.stringify(args))).size).toBe(says.length);
  });

  test("says when to go elsewhere, or why never", () => {
    expect(fn.notFor).toMatch(/^(none, because .+|[A-Z].{20,})\.$/s);
    expect(fn.notFor.length).toBeLessThan(220);
  });
});
