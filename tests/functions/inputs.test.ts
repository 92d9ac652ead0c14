import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sentence } from "../../src/core/kit/refusal.ts";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { isOptional, type Raw, type RawArgument } from "../../src/functions/declare/param.ts";
import { registry } from "../../src/functions/registry.ts";
import { explain, invoke } from "../../src/functions/run/invoke.ts";
import { expectSound } from "./sound.ts";

/** Kinds of argument that hosts really send. */
const KINDS: Readonly<Record<string, RawArgument>> = {
  omitted: null,
  undefined: undefined,
  "blank as zero": 0,
  "empty text": "",
  spaces: "   ",
  "text number": " 12.5 ",
  words: "tall",
  "feet and inches": "12'-6 1/2\"",
  "wrong unit": "5 perm",
  "date serial": 46351,
  "text date": "2026-07-16",
  yes: true,
  no: false,
  error: { error: "#DIV/0!" },
  negative: -1,
  huge: 1e300,
  tiny: 1e-300,
  "not finite": Number.POSITIVE_INFINITY,
  "not a number": Number.NaN,
  "1x1 range": [[1]],
  "blank range": [
    [null, null],
    [0, ""],
  ],
  "ragged range": [["gypsum board", 0.5], ["plywood"]],
  "range with error": [
    ["gypsum board", 0.5],
    ["plywood", { error: "#DIV/0!" }],
  ],
  "empty range": [[]],
  "mixed range": [
    ["a", 1, true],
    [null, "x", -3],
  ],
  "markup text": "<img src=x onerror=alert(1)>",
  "prototype word": "__proto__",
  constructor: "constructor",
};

const quick = registry.filter((fn) => !fn.heavy);

describe.each(registry.map((fn) => [fn.name, fn] as const))("%s", (_name, fn) => {
  const example = positional(fn, fn.example.args);

  test("every kind of input in every place gives a value or a sentence", () => {
    fn.params.forEach(({ name }, i) => {
      for (const [kind, raw] of Object.entries(KINDS)) {
        const args = [...example];
        args[i] = raw;
        expectSound(invoke(fn, args), `${fn.name}: ${name} is ${kind}`);
      }
    });
  });

  test("fewer arguments than declared, more than declared, none", () => {
    for (let n = 0; n <= example.length; n++) expectSound(invoke(fn, example.slice(0, n)), `${fn.name} with ${n}`);
    const extra = invoke(fn, [...fn.params.map((_, i) => example[i] ?? null), 1]);
    expect(extra.ok).toBe(false);
  });

  test("a missing required argument is named", () => {
    fn.params.forEach(({ name, param }, i) => {
      if (isOptional(param)) return;
      const args = [...example];
      args[i] = null;
      const outcome = invoke(fn, args);
      expect(outcome.ok, `${fn.name} without ${name}`).toBe(false);
      if (!outcome.ok) expect(sentence(outcome.said).toLowerCase().replaceAll(" ", "")).toContain(name.toLowerCase());
    });
  });

  test("the same input gives the same answer, with working and without", () => {
    expect(invoke(fn, example)).toEqual(invoke(fn, example));
    expect(explain(fn, example).outcome).toEqual(invoke(fn, example));
  });
});

const cell: fc.Arbitrary<Raw> = fc.oneof(
  fc.double(),
  fc.integer({ min: -5, max: 400 }),
  fc.string({ maxLength: 12 }),
  fc.constantFrom("B", "C", "D", "7-16", "12'-6\"", "10%", "20 C", "gypsum board", "6:12", "4", "net", "5"),
  fc.boolean(),
  fc.constant(null),
  fc.constant({ error: "#N/A" }),
);

/** Arguments near the example: some as it has them, some replaced by anything. */
function argumentsOf(fn: CellFunction): fc.Arbitrary<RawArgument[]> {
  const example = positional(fn, fn.example.args);
  return fc.tuple(
    ...fn.params.map(({ param }, i) => {
      const any: fc.Arbitrary<RawArgument> =
        param.kind === "table" || param.kind === "list"
          ? fc.array(fc.array(cell, { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 5 })
          : cell;
      const within = numbersOf(param.limits?.min ?? param.limits?.above, param.limits?.max ?? param.limits?.below);
      return fc.oneof(
        { weight: 2, arbitrary: fc.constant(example[i]) },
        { weight: 1, arbitrary: within },
        { weight: 1, arbitrary: any },
      );
    }),
  ) as fc.Arbitrary<RawArgument[]>;
}

function numbersOf(min = -10, max = 1000): fc.Arbitrary<number> {
  return fc.double({ min, max: Math.max(min, max), noNaN: true });
}

test.each(quick.map((fn) => [fn.name, fn] as const))("%s: any input gives a value or a sentence", (_name, fn) => {
  fc.assert(
    fc.property(argumentsOf(fn), (args) => {
      expectSound(invoke(fn, args), `${fn.name}(${JSON.stringify(args)})`);
    }),
    { numRuns: 150, seed: 20260101 },
  );
});

/** Text with the declared unit behind it must read as the plain number does. */
test.each(quick.map((fn) => [fn.name, fn] as const))("%s: units text and plain numbers agree", (_name, fn) => {
  const example = positional(fn, fn.example.args);
  fn.params.forEach(({ name, param }, i) => {
    if (!["length", "quantity"].includes(param.kind) || ["", "%", "deg"].includes(param.unit)) return;
    const plain = example[i];
    if (typeof plain !== "number") return;
    const args = [...example];
    args[i] = `${plain} ${param.unit}`;
    const withUnit = invoke(fn, args);
    const without = invoke(fn, example);
    expect(withUnit.ok, `${fn.name}: ${name} as "${String(args[i])}"`).toBe(true);
    if (withUnit.ok && without.ok && typeof without.value === "number")
      expect(withUnit.value).toBeCloseTo(without.value, 9);
    else expect(withUnit.ok).toBe(without.ok);
  });
});
