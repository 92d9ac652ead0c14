import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { freezeSheet, repairFormulas } from "../../../src/hosts/excel/commands.ts";
import { excelHost } from "../../../src/hosts/excel/host.ts";
import { watchWorkbook } from "../../../src/hosts/excel/watch.ts";
import type { CellAddress } from "../../../src/workbook/ledger.ts";
import { Ledger } from "../../../src/workbook/ledger.ts";
import { FakeWorkbook } from "./workbook.ts";

const at = (sheet: string, row: number, column: number): CellAddress => ({ sheet, row, column });
const call = { id: "FTIN", args: [1], outcome: { ok: true, value: "1'-0\"" } } as const;

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** Runs the timers while something is awaited. */
async function settled<T>(promise: Promise<T>): Promise<T> {
  promise.catch(() => {});
  await vi.advanceTimersByTimeAsync(5000);
  return promise;
}

describe("host", () => {
  test("reads the selection, formulas and values", async () => {
    const book = new FakeWorkbook({ "Wall 1": { B4: { formula: "=SILL.FTIN(A1)", value: "1'-0\"" }, B5: 3 } });
    book.active = at("Wall 1", 3, 1);
    const host = excelHost(new Ledger());
    expect(await host.selection()).toEqual(at("Wall 1", 3, 1));
    expect(await host.formulaAt(at("Wall 1", 3, 1))).toBe("=SILL.FTIN(A1)");
    expect(await host.valueAt(at("Wall 1", 3, 1))).toBe("1'-0\"");
    expect(await host.formulaAt(at("Wall 1", 4, 1))).toBe("");
    expect(await host.valueAt(at("Wall 1", 4, 1))).toBe(3);
    expect(await host.valueAt(at("Wall 1", 9, 9))).toBeUndefined();
    await expect(host.valueAt(at("Gone", 0, 0))).rejects.toThrow("The worksheet Gone is no longer in the workbook.");
  });

  test("goes to a cell and inserts a formula there", async () => {
    const book = new FakeWorkbook({ A: {}, B: {} });
    const host = excelHost(new Ledger());
    await host.goTo(at("B", 2, 0));
    expect(book.active).toEqual(at("B", 2, 0));
    expect(await host.insertFormula("=SILL.FTIN(1)")).toEqual(at("B", 2, 0));
    expect(book.sheet("B")?.at("A3")?.formula).toBe("=SILL.FTIN(1)");
    await expect(host.goTo(at("Gone", 0, 0))).rejects.toThrow("no longer");
  });

  test("tells of the selection once for several events, until it is stopped", async () => {
    const book = new FakeWorkbook({ A: {} });
    const seen: unknown[] = [];
    const stop = excelHost(new Ledger()).onSelection((address) => seen.push(address));
    await vi.advanceTimersByTimeAsync(0);
    book.active = at("A", 1, 1);
    for (const handler of [...book.events.selection.handlers, ...book.events.activated.handlers]) handler(undefined);
    await vi.advanceTimersByTimeAsync(500);
    expect(seen).toEqual([at("A", 1, 1)]);
    stop();
    await vi.advanceTimersByTimeAsync(500);
    expect(book.events.selection.handlers.size + book.events.activated.handlers.size).toBe(0);
  });

  test("stopped before Excel has registered it, leaves no handler behind", async () => {
    const book = new FakeWorkbook({ A: {} });
    book.refusals = 1;
    excelHost(new Ledger()).onSelection(() => {})();
    await vi.advanceTimersByTimeAsync(5000);
    expect(book.events.selection.handlers.size + book.events.activated.handlers.size).toBe(0);
  });

  test("writes a sheet as texts and numbers, and replaces it the next time", async () => {
    const book = new FakeWorkbook({ A: {} });
    const host = excelHost(new Ledger());
    const rows = [["=1+1", 5, true], ["7-16"], ["-", "+x", "@y"]];
    expect(await host.writeSheet("Basis: all", rows)).toBe("Basis all");
    const sheet = book.sheet("Basis all");
    expect(sheet?.at("A1")).toEqual({ formula: "=1+1", value: "=1+1" });
    expect(sheet?.at("B1")?.value).toBe(5);
    expect(sheet?.at("A2")?.value).toBe("7-16");
    expect(sheet?.at("B2")?.value).toBe("");
    expect(sheet?.at("C3")?.value).toBe("@y");
    expect(await host.writeSheet("basis all", [["new"]])).toBe("basis all");
    expect(book.sheets).toHaveLength(2);
    expect(sheet?.cells.size).toBe(1);
    await host.writeSheet(
      "Long",
      Array.from({ length: 4500 }, (_, i) => [i]),
    );
    expect(book.sheet("Long")?.at("A4500")?.value).toBe(4499);
    expect(await host.writeSheet("None", [])).toBe("None");
  });

  test("waits while a cell is edited, and says so in the end", async () => {
    const book = new FakeWorkbook({ A: {} });
    const host = excelHost(new Ledger());
    book.refusals = 3;
    expect(await settled(host.selection())).toEqual(at("A", 0, 0));
    book.refusals = 99;
    await expect(settled(host.insertFormula("=1"))).rejects.toThrow("Press Enter or Esc");
    book.refusals = 0;
    expect(book.sheet("A")?.cells.size).toBe(0);
  });
});

describe("ledger", () => {
  async function watched(): Promise<{ book: FakeWorkbook; ledger: Ledger }> {
    const ours = { formula: "=SILL.FTIN(A1)", value: "" };
    const book = new FakeWorkbook({ Wall: { B2: ours, B3: ours, D9: ours }, Roof: { A1: ours } });
    const ledger = new Ledger();
    for (const address of [at("Wall", 1, 1), at("Wall", 2, 1), at("Wall", 8, 3), at("Roof", 0, 0)]) {
      ledger.record(address, call);
    }
    await watchWorkbook(ledger);
    return { book, ledger };
  }
  const cells = (ledger: Ledger) => ledger.entries().map(({ address: a }) => `${a.sheet} ${a.row} ${a.column}`);
  async function change(book: FakeWorkbook, address: string, changeType = "RangeEdited"): Promise<void> {
    for (const handler of book.events.changed.handlers)
      await handler({ worksheetId: "id of Wall", address, changeType });
  }

  test("forgets cleared and overwritten cells of the edited range only", async () => {
    const { book, ledger } = await watched();
    book.sheet("Wall")?.cells.clear();
    book.sheet("Wall")?.put("B3", 12);
    await change(book, "B2:B3");
    expect(cells(ledger)).toEqual(["Roof 0 0", "Wall 8 3"]);
  });

  test("keeps a cell whose new formula calls a function of ours", async () => {
    const { book, ledger } = await watched();
    book.sheet("Wall")?.put("B2", "=1+SILL.LENGTH(A1)");
    await change(book, "B2");
    expect(ledger.size).toBe(4);
  });

  test.each([
    ["D9", "RowInserted"],
    ["B2,B3", "RangeEdited"],
  ])("checks the whole sheet after %s %s", async (address, type) => {
    const { book, ledger } = await watched();
    book.sheet("Wall")?.cells.clear();
    await change(book, address, type);
    expect(cells(ledger)).toEqual(["Roof 0 0"]);
  });

  test("follows a renamed sheet and forgets a deleted one", async () => {
    const { book, ledger } = await watched();
    const [wall] = book.sheets;
    if (wall !== undefined) wall.name = "North";
    for (const handler of book.events.renamed.handlers) await handler({ nameBefore: "Wall", nameAfter: "North" });
    expect(cells(ledger)).toEqual(["North 1 1", "North 2 1", "North 8 3", "Roof 0 0"]);
    book.sheets.shift();
    for (const handler of book.events.deleted.handlers) await handler({ worksheetId: "id of Wall" });
    expect(cells(ledger)).toEqual(["Roof 0 0"]);
  });
});

describe("ribbon", () => {
  test("repair writes broken formulas of ours again, and nothing else", async () => {
    const book = new FakeWorkbook({
      Wall: {
        B2: { formula: "=SILL.FTIN(A1)", value: "#NAME?" },
        B3: { formula: "=[2]!_xldudf_SILL_LENGTH(A1)", value: 3 },
        B4: { formula: "=SILL.FTIN(A2)", value: "2'-0\"" },
        B5: { formula: "=OTHER.F(1)", value: "#NAME?" },
        B6: "=text",
      },
      Empty: {},
      Locked: { A1: { formula: "=_xldudf_SILL_FTIN(1)", value: "#NAME?" } },
    });
    const locked = book.sheet("Locked");
    if (locked !== undefined) locked.isProtected = true;
    expect(await repairFormulas()).toBe(
      "2 formulas written into their cells again. Nothing could be written in Locked: take the sheet protection off and repair again.",
    );
    const wall = book.sheet("Wall");
    expect(wall?.at("B2")).toEqual({ formula: "=SILL.FTIN(A1)", value: "calculated" });
    expect(wall?.at("B3")).toEqual({ formula: "=SILL.LENGTH(A1)", value: "calculated" });
    expect(wall?.at("B4")?.value).toBe("2'-0\"");
    expect(wall?.at("B5")?.value).toBe("#NAME?");
  });

  test("freeze puts values in the place of our formulas, tables whole, errors as errors", async () => {
    const book = new FakeWorkbook({
      Wall: {
        B2: { formula: "=SILL.FTIN(A1)", value: "=odd" },
        B3: { formula: "=SILL.LENGTH(A1)", value: "#N/A" },
        C5: { formula: "=SILL.R_SCHEDULE(A1:A2)", value: "stud", spill: [2, 2] },
        D5: 1.5,
        C6: "7-16",
        D6: 2.5,
        E1: { formula: "=B2", value: "x" },
      },
      Roof: { A1: { formula: "=SILL.FTIN(A1)", value: "y" } },
    });
    expect(await freezeSheet()).toBe("3 formulas on Wall replaced by their values. Undo brings them back.");
    const wall = book.sheet("Wall");
    expect(wall?.at("B2")).toEqual({ formula: "=odd", value: "=odd" });
    expect(wall?.at("B3")?.formula).toBe("#N/A");
    expect(wall?.at("C5")).toEqual({ formula: "stud", value: "stud" });
    expect(wall?.at("C6")).toEqual({ formula: "7-16", value: "7-16" });
    expect(wall?.at("D6")?.formula).toBe(2.5);
    expect(wall?.at("E1")?.formula).toBe("=B2");
    expect(book.sheet("Roof")?.at("A1")?.formula).toBe("=SILL.FTIN(A1)");
  });

  test("an empty sheet has nothing to freeze", async () => {
    new FakeWorkbook({ Wall: {} });
    expect(await freezeSheet()).toBe("Wall is empty: there was nothing to freeze.");
  });
});
