import { describe, expect, test } from "vitest";
import { sentence } from "../../src/core/kit/refusal.ts";
import type { CellFunction, NamedParam } from "../../src/functions/declare/cell-function.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { inside, limitText } from "../../src/functions/declare/limits.ts";
import {
  type ColumnFacts,
  isOptional,
  isTerm,
  type Limits,
  type ParamFacts,
} from "../../src/functions/declare/param.ts";
import type { Raw, RawArgument } from "../../src/functions/declare/raw.ts";
import { registry } from "../../src/functions/registry.ts";
import { invoke, type Outcome } from "../../src/functions/run/invoke.ts";

const quick = registry.filter((fn) => !fn.heavy);
const KINDS = new Set(["number", "length", "quantity"]);
/** A part of a step beyond a limit, so small that six digits would print the limit itself. */
const HAIR = 1e-6;

const isLimited = (limits: Limits | undefined) =>
  limits !== undefined && Object.keys(limits).some((key) => key !== "source");

/** A number as a cell of a column holds it: with its unit, so that nothing is read as a date. */
const writtenCell = (value: number, { unit }: ParamFacts): Raw =>
  unit === "" || ["%", "deg"].includes(unit) ? value : `${value} ${unit}`;

/** The example with one argument changed, wherever it stands. */
function withValue(fn: CellFunction, { name, param }: NamedParam, value: number): RawArgument[] {
  const unit = writtenCell(value, param);
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

/** The number that a refusal says it was given: "is 392.4 F". */
function printed(says: string): number {
  return Number(/ is (-?[\d.]+(?:e[-+]?\d+)?)/.exec(says)?.[1] ?? Number.NaN);
}

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
  const limited = [...fn.params, ...fn.named].filter(({ param }) => KINDS.has(param.kind) && isLimited(param.limits));
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
      for (const value of [...(open ? [] : [at]), at - step]) {
        // A refusal inside the range is about something else than this range.
        expect(text(invoke(fn, withValue(fn, p, value))), `${fn.name}: ${name} of ${value}`).not.toContain(
          `it must be ${says}`,
        );
      }
    }
    expect(isTerm(p.param) || isOptional(p.param) || fn.params.includes(p)).toBe(true);
  });

  test.each(limited.map((p) => [p.name, p] as const))(
    "%s: a hair beyond, the number that is refused is printed as one that is not allowed",
    (name, p) => {
      for (const { at, step } of edges(p)) {
        const outcome = invoke(fn, withValue(fn, p, at + step * HAIR));
        const says = text(outcome);
        if (!says.includes(`it must be ${limitText(p.param.limits ?? {}, p.param.unit)}`)) continue;
        expect(inside(p.param.limits ?? {}, printed(says)), `${fn.name} ${name}: ${says}`).toBe(false);
      }
    },
  );
});

/** A column of a table that an example gives. */
interface Column {
  readonly fn: CellFunction;
  /** the table's argument */
  readonly name: string;
  readonly column: ColumnFacts;
  readonly rows: readonly (readonly Raw[])[];
}

const columns = registry.flatMap((fn) =>
  fn.params.flatMap(({ name, param }): Column[] => {
    const rows = fn.example.args[name];
    if (param.kind !== "table" || !Array.isArray(rows)) return [];
    return (param.columns ?? [])
      .filter((column) => KINDS.has(column.kind) && isLimited(column.limits))
      .map((column) => ({ fn, name, column, rows: rows as readonly (readonly Raw[])[] }));
  }),
);

/** The example with one cell of the table's first row changed; under headings the column is added where it is not there. */
function withCell({ fn, name, column, rows }: Column, value: number): Outcome {
  const [first = [], ...rest] = rows;
  const headed = first.every((cell) => typeof cell === "string") && typeof rest[0]?.[1] === "number";
  const columnsOf = fn.params.find((p) => p.name === name)?.param.columns ?? [];
  const heads = headed ? [...first] : columnsOf.map((c) => c.name);
  if (!heads.includes(column.name)) heads.push(column.name);
  const at = heads.indexOf(column.name);
  const changed = heads.map((_, i) =>
    i === at ? writtenCell(value, column) : ((headed ? rest[0] : first)?.[i] ?? null),
  );
  const table = headed ? [heads, changed, ...rest.slice(1)] : [changed, ...rest];
  return invoke(fn, positional(fn, { ...fn.example.args, [name]: table }));
}

describe("columns of tables", () => {
  test("are looked at", () => expect(columns.length).toBeGreaterThan(100));

  test.each(columns.map((c) => [`${c.fn.name}: ${c.column.name} of ${c.name}`, c] as const))(
    "%s: at, just inside and just beyond its limits",
    (_, c) => {
      const limits = c.column.limits ?? {};
      const says = limitText(limits, c.column.unit);
      for (const { at, step, open } of edges({ name: c.name, param: c.column as never })) {
        const beyond = text(withCell(c, at + step));
        expect(beyond, `${at + step}`).toMatch(/it must be |a share is written as a part of one/);
        expect(inside(limits, printed(beyond)), beyond).toBe(false);
        for (const value of [...(open ? [] : [at]), at - step])
          expect(text(withCell(c, value)), `${value}`).not.toContain(`it must be ${says}`);
      }
    },
  );
});
