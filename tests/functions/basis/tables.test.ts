import { describe, expect, test } from "vitest";
import { sentence } from "../../../src/core/kit/refusal.ts";
import type { CellFunction } from "../../../src/functions/declare/cell-function.ts";
import { isOptional, isTerm } from "../../../src/functions/declare/param.ts";
import type { Raw, RawArgument } from "../../../src/functions/declare/raw.ts";
import { registry } from "../../../src/functions/registry.ts";
import { invoke, type Outcome } from "../../../src/functions/run/invoke.ts";

const quick = registry.filter((fn) => fn.takesBasis && !fn.heavy);

/** What a workbook's basis might hold beside what one function takes. */
const WORKBOOK: readonly (readonly Raw[])[] = [
  ["Basis", "Value", "Unit"],
  ["project", "shed", ""],
  ["crew wage", 31, "$/h"],
  ["county", "Brown", ""],
];

/** The example with its terms in a workbook's basis, and its own arguments by place. */
function split(fn: CellFunction): { readonly own: RawArgument[]; readonly basis: Raw[][] } {
  const taken = new Set<string>();
  const rows = [...fn.params, ...fn.named].flatMap(({ name, param }) => {
    const value = fn.example.args[name];
    if (!isTerm(param) || value === undefined || Array.isArray(value)) return [];
    taken.add(name);
    return [[param.term, value as Raw, ""]];
  });
  const own = fn.params.map(
    ({ name, param }): RawArgument =>
      param.kind === "basis" || taken.has(name) ? null : ((fn.example.args[name] ?? null) as RawArgument),
  );
  const given = new Set(rows.map(([term]) => term));
  return { own, basis: [...WORKBOOK.map((row) => [...row]).filter(([term]) => !given.has(term ?? null)), ...rows] };
}

describe.each(quick.map((fn) => [fn.name, fn] as const))("%s", (_, fn) => {
  const { own, basis } = split(fn);
  const last = fn.params.length - 1;
  const answer = invoke(
    fn,
    own.map((raw, i) => (i === last ? basis : raw)),
  );

  test("a basis in any place is the basis or is refused, never a table", () => {
    fn.params.forEach(({ param }, i) => {
      const call = own.map((raw, k) => (k === i ? basis : k > i ? null : raw));
      const outcome = invoke(fn, call);
      const lost = own.slice(i).some((raw) => raw !== null);
      if (!isOptional(param)) expect(outcome.ok, `${fn.name}: place ${i + 1}`).toBe(false);
      else if (!lost) expect(outcome, `${fn.name}: place ${i + 1}`).toEqual(answer);
    });
  });

  test("no table of the example is a basis, with its headings on top neither", () => {
    fn.params.forEach(({ name, param }, i) => {
      const rows = own[i];
      if (param.kind !== "table" || !Array.isArray(rows)) return;
      const columns = param.columns ?? [];
      const width = Math.max(...rows.map((row) => (row as readonly Raw[]).length));
      const [first] = (rows as Raw[][])[0] ?? [];
      const hasHeadings = String(first).toLowerCase() === columns[0]?.name.toLowerCase();
      if (width < 2 || width > columns.length || hasHeadings) return;
      const spoken = (word: string) => word.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`);
      const headed = [columns.slice(0, width).map((c) => spoken(c.name)), ...(rows as Raw[][])];
      const call = own.map((raw, k) => (k === i ? headed : k === last ? basis : raw));
      const outcome = invoke(fn, call);
      expect(
        unnumbered(outcome),
        `${fn.name}: ${name} with headings: ${outcome.ok ? "" : sentence(outcome.said)}`,
      ).toEqual(unnumbered(answer));
    });
  });
});

/** Rows are named by their number in the range, which a row of headings moves. */
function unnumbered(outcome: Outcome): unknown {
  return JSON.parse(JSON.stringify(outcome).replace(/row \d+/g, "row"));
}
