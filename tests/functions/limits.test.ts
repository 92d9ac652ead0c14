import { describe, expect, test } from "vitest";
import { sentence } from "../../src/core/kit/refusal.ts";
import type { CellFunction, NamedParam } from "../../src/functions/declare/cell-function.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { limitText } from "../../src/functions/declare/limits.ts";
import { isOptional, isTerm } from "../../src/functions/declare/param.ts";
import type { RawArgument } from "../../src/functions/declare/raw.ts";
import { registry } from "../../src/functions/registry.ts";
import { invoke, type Outcome } from "../../src/functions/run/invoke.ts";

const quick = registry.filter((fn) => !fn.heavy);
const KINDS = new Set(["number", "length", "quantity"]);

/** The example with one argument changed, wherever it stands. */
function withValue(fn: CellFunction, { name, param }: NamedParam, value: number): RawArgument[] {
  const unit = param.unit === "" || ["%", "deg"].includes(param.unit) ? value : `${value} ${param.unit}`;
  // A 0 in a place that may be left out is a blank, so it is written as a text; slopes are texts in any case.
  const written =
    param.unit === "deg"
      ? `${value} deg`
      : value === 0 && isOptional(param)
        ? "none"
        : param.kind === "number"
          ? value
          : unit;
  return positional(fn, { ...fn.example.args, [name]: written });
}

const text = (outcome: Outcome): string => (outcome.ok ? "" : sentence(outcome.said));

/** The places where the declared range of an argument begins and ends. */
function edges({ param }: NamedParam): { readonly at: number; readonly step: number; readonly open: boolean }[] {
  const { min, max, above, below } = param.limits ?? {};
  const size = (x: number) => Math.max(Math.abs(x) * 1e-3, 1e-6);
  return [
    ...(min === undefined ? [] : [{ at: min, step: -size(min), open: false }]),
    ...(above === undefined ? [] : [{ at: above, step: -size(above), open: true }]),
    ...(max === undefined ? [] : [{ at: max, step: size(max), open: false }]),
    ...(below === undefined ? [] : [{ at: below, step: size(below), open: true }]),
  ];
}

describe.each(quick.map((fn) => [fn.name, fn] as const))("%s", (_, fn) => {
  const limited = [...fn.params, ...fn.named].filter(
    ({ param }) =>
      KINDS.has(param.kind) && param.limits !== undefined && Object.keys(param.limits).some((k) => k !== "source"),
  );
  if (limited.length === 0) {
    test("takes no limited number", () => expect(limited).toEqual([]));
    return;
  }
  test.each(limited.map((p) => [p.name, p] as const))("%s: at, just inside and just beyond its limits", (name, p) => {
    const says = limitText(p.param.limits ?? {}, p.param.unit);
    for (const { at, step, open } of edges(p)) {
      const beyond = invoke(fn, withValue(fn, p, at + step));
      expect(beyond.ok, `${fn.name}: ${name} of ${at + step} should be refused`).toBe(false);
      // Whole numbers and the like may be refused first for another reason.
      for (const inside of [...(open ? [] : [at]), at - step]) {
        // A refusal inside the range is about something else than this range.
        expect(text(invoke(fn, withValue(fn, p, inside))), `${fn.name}: ${name} of ${inside}`).not.toContain(
          `it must be ${says}`,
        );
      }
    }
    expect(isTerm(p.param) || isOptional(p.param) || fn.params.includes(p)).toBe(true);
  });
});
