import fc from "fast-check";
import { expect, test } from "vitest";
import type { CellFunction } from "../../../src/functions/declare/cell-function.ts";
import { isTerm } from "../../../src/functions/declare/param.ts";
import type { Raw, RawArgument } from "../../../src/functions/declare/raw.ts";
import { keyOfTerm } from "../../../src/functions/declare/words.ts";
import { registry } from "../../../src/functions/registry.ts";
import { invoke } from "../../../src/functions/run/invoke.ts";

/** One cell: a table goes into its place, never into a basis. */
const single = (value: unknown): value is Raw => !Array.isArray(value) && value !== undefined;

/** Own arguments of the example by place, and its terms as rows. */
function parts(fn: CellFunction) {
  const args = fn.example.args;
  const rows = [...fn.params, ...fn.named].flatMap(({ name, param }) =>
    isTerm(param) && single(args[name])
      ? [{ term: param.term, key: keyOfTerm(param.term), value: args[name] as Raw }]
      : [],
  );
  return { args, rows };
}

const withBasis = registry.filter((fn) => fn.takesBasis && !fn.heavy);

/** The call with each term typed in its place, in a first basis or in a second one, as `where` says. */
function call(fn: CellFunction, where: readonly number[], noise: boolean): RawArgument[] {
  const { args, rows } = parts(fn);
  const bases: Raw[][][] = [[], []];
  const typed = new Set<string>();
  rows.forEach(({ term, key, value }, i) => {
    const place = fn.params.some((p) => p.name === key);
    const to = place ? (where[i % where.length] ?? 0) % 3 : ((where[i % where.length] ?? 0) % 2) + 1;
    if (to === 0) typed.add(key);
    else bases[to - 1]?.push([to === 1 ? term : term.toUpperCase(), value]);
  });
  const filled = bases
    .filter((b) => b.length > 0)
    .map((b) => [
      ["Basis", "Value"],
      ...(noise
        ? [
            ["project", "shed"],
            ["", 0],
            [null, ""],
          ]
        : []),
      ...b,
    ]);
  const own: RawArgument[] = fn.params
    .filter((p) => p.param.kind !== "basis")
    .map(({ name, param }) =>
      isTerm(param) && single(args[name]) && !typed.has(name) ? null : ((args[name] ?? null) as RawArgument),
    );
  return [...own, ...filled];
}

if (withBasis.length > 0) {
  test.each(withBasis.map((fn) => [fn.name, fn] as const))(
    "%s: typed, in one basis or split over two, the same",
    (_, fn) => {
      const typed = invoke(fn, call(fn, [0], false));
      fc.assert(
        fc.property(fc.array(fc.nat(2), { minLength: 1, maxLength: 12 }), fc.boolean(), (where, noise) => {
          expect(invoke(fn, call(fn, where, noise))).toEqual(typed);
        }),
        { numRuns: 25, seed: 20261126 },
      );
      expect(typed.ok).toBe(true);
    },
  );
} else test("functions with a basis are still to come", () => expect(registry.length).toBeGreaterThan(0));
