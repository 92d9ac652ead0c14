import { describe, expect, test } from "vitest";
import type { RawArgument } from "../../src/functions/declare/raw.ts";
import { Ledger } from "../../src/workbook/ledger.ts";

const cell = (row: number) => ({ sheet: "Wall", row, column: 1 });
const outcome = { ok: true, value: 1 } as const;
const call = (id: string, ...args: RawArgument[]) => ({ id, args, outcome });

/** A ledger on a clock that the test moves. */
function timed(capacity?: number) {
  let now = 0;
  const ledger = new Ledger(capacity, () => now);
  const after = (ms: number) => {
    now += ms;
  };
  const ids = (row: number) => ledger.at(cell(row))?.calls.map(({ id }) => id) ?? [];
  return { ledger, after, ids };
}

describe("the calls of a cell", () => {
  test("are those of its last calculation: what comes later begins anew", () => {
    const { ledger, after, ids } = timed();
    ledger.record(cell(1), call("INNER", 1));
    after(500);
    ledger.record(cell(1), call("OUTER", 2));
    expect(ids(1)).toEqual(["INNER", "OUTER"]);
    after(2001);
    ledger.record(cell(1), call("INNER", 9));
    expect(ids(1)).toEqual(["INNER"]);
  });

  test("a search that takes long belongs to the calculation in which it began", () => {
    const { ledger, after, ids } = timed();
    const slow = ledger.turn();
    ledger.record(cell(1), call("QUICK", 1));
    after(9000);
    ledger.record(cell(1), call("SLOW", 2), slow);
    after(300);
    ledger.record(cell(1), call("OUTER", 3));
    expect(ids(1)).toEqual(["SLOW", "QUICK", "OUTER"]);
  });

  test("the same call twice stands once, sixteen at most", () => {
    const { ledger, ids } = timed();
    for (let i = 0; i < 3; i++) ledger.record(cell(1), call("SAME", 1, [[1, "a"]]));
    expect(ids(1)).toEqual(["SAME"]);
    for (let i = 0; i < 30; i++) ledger.record(cell(1), call(`F${i}`, i));
    expect(ids(1)).toHaveLength(16);
    expect(ids(1).at(-1)).toBe("F29");
  });
});

describe("ranges", () => {
  const rows = (n: number) => Array.from({ length: n }, (_, i) => [`layer ${i}`, i / 3, null]);

  test("that are equal are held once, over cells and calculations", () => {
    const { ledger } = timed();
    ledger.record(cell(1), call("A", rows(5)));
    ledger.record(cell(2), call("B", rows(5), rows(4)));
    const [first, second] = [ledger.at(cell(1)), ledger.at(cell(2))].map((entry) => entry?.calls[0]?.args);
    expect(second?.[0]).toBe(first?.[0]);
    expect(second?.[1]).not.toBe(first?.[0]);
  });

  test("that differ in one cell, or only in the kind of it, stay apart", () => {
    const { ledger } = timed();
    const given = [[["1"]], [[1]], [[true]], [[{ error: "#N/A" }]], [[{ error: "#VALUE!" }]], [[-0]], [[0]]] as const;
    given.forEach((range, row) => {
      ledger.record(cell(row), call("A", range));
    });
    given.forEach((range, row) => {
      expect(ledger.at(cell(row))?.calls[0]?.args).toEqual([range]);
    });
  });

  test("lose blank rows and columns at their end, never those between", () => {
    const { ledger } = timed();
    const blank = [null, "", null];
    ledger.record(cell(1), call("A", [["a", 1, null], blank, ["b", null, ""], blank, blank]));
    expect(ledger.at(cell(1))?.calls[0]?.args).toEqual([
      [
        ["a", 1],
        [null, ""],
        ["b", null],
      ],
    ]);
    ledger.record(cell(2), call("A", [blank, blank]));
    expect(ledger.at(cell(2))?.calls[0]?.args).toEqual([[[null]]]);
  });
});

test("past its capacity the cell that calculated longest ago leaves", () => {
  const { ledger } = timed(2);
  for (const row of [1, 2, 1, 3]) ledger.record(cell(row), call("A", row));
  expect(ledger.entries().map(({ address }) => address.row)).toEqual([1, 3]);
});
