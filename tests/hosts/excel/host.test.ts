import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { command } from "../../../src/hosts/excel/commands.ts";
import { excelHost } from "../../../src/hosts/excel/host.ts";
import { keepValuesOnly } from "../../../src/hosts/excel/keep-values.ts";
import { repairFormulas } from "../../../src/hosts/excel/repair.ts";
import { watchWorkbook } from "../../../src/hosts/excel/watch.ts";
import type { CellAddress } from "../../../src/workbook/ledger.ts";
import { Ledger } from "../../../src/workbook/ledger.ts";
import { coverage } from "../../../src/workbook/scan.ts";
import { FakeWorkbook } from "./stand-in/book.ts";

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

  test("reads the cells of a reference, with or without its worksheet, and none that are too many", async () => {
    new FakeWorkbook({ "Wall 1": { B4: 3, C5: "osb" }, B: { A1: 7 } });
    const host = excelHost(new Ledger());
    expect(await host.readRange?.("B4:C5", "Wall 1")).toEqual([
      [3, ""],
      ["", "osb"],
    ]);
    expect(await host.readRange?.("'Wall 1'!$B$4", "B")).toEqual([[3]]);
    expect(await host.readRange?.("B!A1", "Wall 1")).toEqual([[7]]);
    expect(await host.readRange?.("Gone!A1", "B")).toBeUndefined();
    expect(await host.readRange?.("A1:Z90000", "B")).toBeUndefined();
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
    expect(sheet?.at("A1")).toMatchObject({ value: "=1+1", text: true });
    expect(sheet?.at("B1")?.value).toBe(5);
    expect(sheet?.at("A2")?.value).toBe("7-16");
    expect(sheet?.at("B2")).toBeUndefined();
    expect(sheet?.at("C3")?.value).toBe("@y");
    expect(await host.writeSheet("basis all", [["new"]])).toBe("basis all");
    expect(book.sheets).toHaveLength(2);
    expect(sheet?.cells.size).toBe(1);
    book.addSheet("Cautions").put("A1", "a user's own");
    expect(await host.writeSheet("Cautions", [["ours"]])).toBe("Cautions (2)");
    expect(book.sheet("Cautions")?.at("A1")?.value).toBe("a user's own");
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

describe("scan", () => {
  test("finds our formulas and every error, whatever was calculated, and says how many were", async () => {
    const book = new FakeWorkbook({
      Wall: {
        B2: { formula: "=SILL.FTIN(A1)", value: "1'-0\"" },
        B3: { formula: "=_xldudf_SILL_LENGTH(A1)", value: "#NOM?" },
        B4: { formula: "=1/0", value: "#DIV/0!" },
        B5: "#not an error",
        B6: { formula: "=A1+1", value: 2 },
      },
      Empty: {},
      Roof: { A1: { formula: "=SUM(SILL.FTIN(1))", value: "#SPILL!" } },
    });
    const ledger = new Ledger();
    const host = excelHost(ledger);
    ledger.record(at("Wall", 1, 1), call);
    const scan = await host.scan();
    expect(scan.cells.map(({ address, error, ours }) => [address.sheet, address.row, error, ours])).toEqual([
      ["Wall", 1, "", true],
      ["Wall", 2, "#NOM?", true],
      ["Wall", 3, "#DIV/0!", false],
      ["Roof", 0, "#SPILL!", true],
    ]);
    expect(coverage(scan, ledger)).toMatchObject({ ours: 3, calculated: 1, says: "1 of 3 cells calculated" });
    expect(await host.calculate(coverage(scan, ledger).waiting)).toEqual([]);
    expect(book.sheet("Wall")?.at("B3")).toEqual({ formula: "=SILL.LENGTH(A1)", value: "calculated" });
    expect(book.sheet("Wall")?.at("B2")?.value).toBe("1'-0\"");
  });

  test("cells of a protected sheet refuse to calculate and are given back", async () => {
    const book = new FakeWorkbook({ Locked: { A1: { formula: "=SILL.FTIN(1)", value: 1 } } });
    (book.sheet("Locked") as { isProtected: boolean }).isProtected = true;
    expect(await excelHost(new Ledger()).calculate([at("Locked", 0, 0)])).toEqual([at("Locked", 0, 0)]);
  });

  test("a large sheet is read in parts that Excel on the web takes", async () => {
    const book = new FakeWorkbook({ Big: {} });
    const sheet = book.sheet("Big");
    const text = "x".repeat(80);
    for (let row = 1; row <= 12_000; row++) for (const column of "ABCDE") sheet?.put(`${column}${row}`, text);
    sheet?.put("F12000", { formula: "=SILL.FTIN(1)", value: "#NAME?" });
    const { cells } = await excelHost(new Ledger()).scan();
    expect(cells.map(({ address }) => [address.row, address.column])).toEqual([[11_999, 5]]);
    expect(await repairFormulas()).toBe("1 formula works again.");
    expect(book.largest).toBeLessThan(5_000_000);
  });
});

describe("ribbon", () => {
  test("repair writes broken formulas of ours again, and counts those that work then", async () => {
    const book = new FakeWorkbook({
      Wall: {
        B2: { formula: "=SILL.FTIN(A1)", value: "#NAME?" },
        B3: { formula: "=[2]!_xldudf_SILL_LENGTH(A1)", value: 3 },
        B4: { formula: "=SILL.FTIN(A2)", value: "2'-0\"" },
        B5: { formula: "=OTHER.F(1)", value: "#NAME?" },
        B6: "=text",
        B7: { formula: "=SILL.NOSUCH(1)", value: "#NAME?" },
        B8: { formula: "=SILL.FTIN(A3)", value: "#SPILL!" },
      },
      Empty: {},
      Locked: { A1: { formula: "=_xldudf_SILL_FTIN(1)", value: "#NAME?" } },
    });
    const locked = book.sheet("Locked");
    if (locked !== undefined) locked.isProtected = true;
    expect(await repairFormulas()).toBe(
      "2 formulas work again. No function has the name NOSUCH: correct the spelling in its cell. Nothing could be written in Locked: take the sheet protection off and repair again.",
    );
    const wall = book.sheet("Wall");
    expect(wall?.at("B2")).toEqual({ formula: "=SILL.FTIN(A1)", value: "calculated" });
    expect(wall?.at("B3")).toEqual({ formula: "=SILL.LENGTH(A1)", value: "calculated" });
    expect(wall?.at("B4")?.value).toBe("2'-0\"");
    expect(wall?.at("B5")?.value).toBe("#NAME?");
    expect(wall?.at("B8")?.value).toBe("#SPILL!");
  });

  test("repair knows #NAME? in another language, and says what stays without a value", async () => {
    const book = new FakeWorkbook({
      Wall: {
        B2: { formula: "=SILL.FTIN(A1)", value: "#NOM?" },
        B3: { formula: "=FOREIGN(SILL.FTIN(A1))", value: "#NOM?" },
      },
    });
    book.nameError = "#NOM?";
    expect(await repairFormulas()).toBe("2 formulas work again.");
    expect(book.sheet("Wall")?.at("B2")?.value).toBe("calculated");
  });

  test("keep values only works on a copy: values in the place of our formulas, tables whole, errors as errors", async () => {
    const book = new FakeWorkbook({
      Wall: {
        B2: { formula: "=SILL.FTIN(A1)", value: "=odd" },
        B3: { formula: "=SILL.LENGTH(A1)", value: "#N/A" },
        C5: { formula: "=SILL.R_SCHEDULE(A1:A2)", value: "stud", spill: [2, 2] },
        D5: 1.5,
        C6: "7-16",
        D6: 2.5,
        E1: { formula: "=B2", value: "x" },
        F1: { formula: "=SUM(C5#)", value: 4 },
        F2: { formula: "=SILL.FTIN(A9)", value: "#BUSY!" },
        F3: { formula: "=SILL.FTIN(A9)", value: "#SPILL!" },
      },
      Roof: { A1: { formula: "=SILL.FTIN(A1)", value: "y" } },
    });
    const before = structuredClone([...(book.sheet("Wall")?.cells ?? [])]);
    expect(await keepValuesOnly()).toBe(
      "Wall is unchanged. Its copy Wall values holds 4 values in the place of formulas. 2 cells that show #BUSY!, #SPILL! had no value to keep and still hold their formulas.",
    );
    expect([...(book.sheet("Wall")?.cells ?? [])]).toEqual(before);
    const copy = book.sheet("Wall values");
    expect(copy?.at("B2")).toMatchObject({ value: "=odd", text: true });
    expect(copy?.at("B3")?.formula).toBe("#N/A");
    expect(copy?.at("C5")).toMatchObject({ formula: "stud", value: "stud" });
    expect(copy?.at("C6")).toMatchObject({ formula: "7-16", text: true });
    expect(copy?.at("D6")?.formula).toBe(2.5);
    expect(copy?.at("E1")?.formula).toBe("=B2");
    expect(copy?.at("F1")?.formula).toBe(4);
    expect(copy?.at("F2")?.formula).toBe("=SILL.FTIN(A9)");
    expect(book.sheet("Roof")?.at("A1")?.formula).toBe("=SILL.FTIN(A1)");
    book.active.sheet = "Wall";
    await keepValuesOnly();
    expect(book.sheets.map(({ name }) => name)).toEqual(["Wall", "Roof", "Wall values", "Wall values (2)"]);
  });

  test("a protected sheet and one without our formulas say so, and nothing is made", async () => {
    const book = new FakeWorkbook({ Wall: { A1: 1 } });
    expect(await keepValuesOnly()).toBe("Wall holds no formula of Sillwork: nothing was copied.");
    (book.sheet("Wall") as { isProtected: boolean }).isProtected = true;
    expect(await keepValuesOnly()).toMatch(/^Wall is protected/);
    expect(book.sheets).toHaveLength(1);
  });

  test.each([
    ["done", async () => "Done.", "Done."],
    ["failed", async () => Promise.reject(new Error("Refused.")), "Refused."],
  ])("a button whose work is %s is free again before the pane is shown", async (_, work, sentence) => {
    const order: string[] = [];
    vi.stubGlobal("Office", { addin: { showAsTaskpane: async () => order.push("pane") } });
    const event = { completed: () => order.push("free") } as unknown as Office.AddinCommands.Event;
    await command(work, (said) => order.push(said))(event);
    expect(order).toEqual([sentence, "free", "pane"]);
  });
});
