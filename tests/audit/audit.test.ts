import { describe, expect, test } from "vitest";
import { registry } from "../../src/functions/registry.ts";
import found from "../../src/publish/help/how-close.json" with { type: "json" };
import type { HowClose } from "../../src/publish/help/how-close.ts";
import { rows } from "../published/rows.ts";
import { rowFiles } from "./attribution.ts";
import kept from "./ceilings.json" with { type: "json" };
import { type Ceiling, ceilings, exampleKind } from "./closeness.ts";

const FOUND = found as Readonly<Record<string, HowClose>>;
const files = rowFiles();

describe.each(registry.map((fn) => [fn.name, fn] as const))("%s", (name, fn) => {
  test("stands on a row, a library, memory or arithmetic, as the last audit found it (npm run audit)", () => {
    const close = FOUND[name];
    expect(close, "it is not in the table of the help pages").toBeDefined();
    const counted = [...(files.get(name) ?? [])].reduce((sum, file) => sum + rows(file).length, 0);
    const example = exampleKind(fn) === "arithmetic" ? 0 : 1;
    const { printed = 0, library = 0, memory = 0, arithmetic = false, worst } = close ?? {};
    expect(printed + library + memory).toBe(counted + example);
    expect(printed + library + memory > 0 || arithmetic).toBe(true);
    expect(worst?.share ?? 0).toBeLessThanOrEqual(1);
  });
});

test("no function is left in the table that is gone", () => {
  const names = new Set(registry.map((fn) => fn.name));
  expect(Object.keys(FOUND).filter((name) => !names.has(name))).toEqual([]);
});

test("what a row may be off is never more than at the last audit, unless the row gives a new reason", () => {
  const before = new Map((kept as readonly Ceiling[]).map((ceiling) => [ceiling.row, ceiling]));
  const wider = ceilings().filter(({ row, most, why }) => {
    const known = before.get(row);
    return known !== undefined && most > known.most && why === known.why;
  });
  expect(wider).toEqual([]);
});
