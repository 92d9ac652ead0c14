import { expect, test } from "vitest";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { functionNamed, registry } from "../../src/functions/registry.ts";
import { explain, invoke } from "../../src/functions/run/invoke.ts";
import { sampleOf } from "../../src/pane/working/sample.ts";
import { type CellAddress, Ledger } from "../../src/workbook/ledger.ts";

const at = (row: number): CellAddress => ({ sheet: "Wall", row, column: 1 });

function ledgerOf(names: readonly string[]): Ledger {
  const ledger = new Ledger();
  names.forEach((name, row) => {
    const fn = functionNamed(name) as CellFunction;
    const args = positional(fn, fn.example.args);
    ledger.record(at(row), { id: fn.id, args, outcome: invoke(fn, args) });
  });
  return ledger;
}

const sampled = (...names: string[]) => sampleOf(ledgerOf(names).entries(), registry, explain);

test("a cell without a function is shown a picture of the workbook: the wall with its dew point before all others", () => {
  expect(sampled("WIND_KZ", "LIFT_SLING", "DEW_PROFILE")).toMatchObject({
    address: at(2),
    fn: { name: "DEW_PROFILE" },
  });
  expect(sampled("WIND_KZ", "LIFT_SLING")?.fn.name).toBe("LIFT_SLING");
  expect(sampled("WIND_KZ", "LIFT_SLING")?.working.pictures).toHaveLength(1);
});

test("no picture where there is none, where only a search has one, or where it would have to wait", () => {
  expect(sampled()).toBeUndefined();
  expect(sampled("WIND_KZ")).toBeUndefined();
  expect(sampled("SHEETS_LAYOUT")).toBeUndefined();
  const later = (fn: CellFunction, raw: Parameters<typeof explain>[1]) => Promise.resolve(explain(fn, raw));
  expect(sampleOf(ledgerOf(["DEW_PROFILE"]).entries(), registry, later)).toBeUndefined();
});
