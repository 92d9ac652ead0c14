import { describe, expect, test } from "vitest";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { isOptional, isTerm } from "../../src/functions/declare/param.ts";
import type { Raw, RawArgument } from "../../src/functions/declare/raw.ts";
import { keyOfTerm } from "../../src/functions/declare/words.ts";
import { registry } from "../../src/functions/registry.ts";
import { explain, invoke } from "../../src/functions/run/invoke.ts";

/** A blank cell as hosts hand it over: null on one, 0 on another, "" from a formula. */
const BLANKS: readonly Raw[] = [null, "", "  ", 0];

/** The same answer as with nothing there; where something must be there a 0 has a sentence of its own, since it may have been meant. */
function expectBlank(fn: CellFunction, call: RawArgument[], without: RawArgument[], what: string): void {
  const working = explain(fn, call);
  const same = invoke(fn, without);
  if (same.ok || working.outcome.ok) expect(working.outcome, what).toEqual(same);
  else expect(working.outcome.said.what, what).toBe(same.said.what);
}

const quick = registry.filter((fn) => !fn.heavy);

describe.each(quick.map((fn) => [fn.name, fn] as const))("%s", (_, fn) => {
  const example = positional(fn, fn.example.args);

  test("null, empty text and 0 in a place that may be left out are the same", () => {
    fn.params.forEach(({ name, param }, i) => {
      if (!isOptional(param) || param.kind === "basis") return;
      const without = [...example];
      without[i] = null;
      for (const blank of BLANKS) {
        const call = [...example];
        call[i] = blank;
        expectBlank(fn, call, without, `${fn.name}: ${name} is ${JSON.stringify(blank)}`);
      }
    });
  });

  test("null, empty text and 0 in a row of the basis are the same as no row", () => {
    if (!fn.takesBasis) return;
    const terms = [...fn.params, ...fn.named].flatMap(({ param }) => (isTerm(param) ? [param.term] : []));
    const rows = terms.flatMap((term) => {
      const value = fn.example.args[keyOfTerm(term)];
      return value === undefined || Array.isArray(value) ? [] : [[term, value as Raw]];
    });
    const own = fn.params.map(({ param, name }) => {
      if (param.kind === "basis" || (isTerm(param) && !Array.isArray(fn.example.args[name]))) return null;
      return (fn.example.args[name] ?? null) as RawArgument;
    });
    const call = (basis: Raw[][]): RawArgument[] => {
      const args = [...own];
      args[args.length - 1] = [["Basis", "Value"], ...basis];
      return args;
    };
    for (const term of terms) {
      const others = rows.filter(([name]) => name !== term);
      // A basis without any term is refused, so one that changes nothing stands beside.
      const rest: Raw[][] = [...others, terms.includes("county") ? ["bond share", "1%"] : ["county", "Brown"]];
      for (const blank of BLANKS) {
        const what = `${fn.name}: a row ${term} is ${JSON.stringify(blank)}`;
        expectBlank(fn, call([...rest, [term, blank]]), call(rest), what);
      }
    }
  });

  test("the same answer whether blank cells of its tables arrive as null, as empty text or, beside a name, as 0", () => {
    fn.params.forEach(({ name, param }, i) => {
      const given = example[i];
      if (param.kind !== "table" || !Array.isArray(given)) return;
      const columns = param.columns ?? [];
      const named = columns[0]?.kind === "text";
      const filled = (blank: Raw) =>
        given.map((row) => columns.map((column, c) => (row as readonly Raw[])[c] ?? (column.optional ? blank : null)));
      const at = (blank: Raw) =>
        invoke(
          fn,
          example.map((raw, k) => (k === i ? filled(blank) : raw)),
        );
      const base = at(null);
      expect(at(""), `${fn.name}: ${name}, ""`).toEqual(base);
      if (
        named &&
        columns.every(
          (c) => !c.optional || c.limits === undefined || (c.limits.min ?? -1) > 0 || (c.limits.above ?? -1) >= 0,
        )
      ) {
        expect(at(0), `${fn.name}: ${name}, 0`).toEqual(base);
      }
    });
  });
});
