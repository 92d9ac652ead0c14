import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { keepValuesOnly } from "../../src/hosts/excel/keep-values.ts";
import { repairFormulas } from "../../src/hosts/excel/repair.ts";
import type { Host } from "../../src/workbook/host.ts";
import type { FakeWorkbook, Fault } from "./excel/stand-in/book.ts";
import { opened } from "./excel/stand-in/page.ts";

/**
 * A host whose n-th request fails, for n = 1, 2, ... until none is left; once, and from then on; before, in the middle of and after what it asks for.
 * After each: the user's cells are as they were, a sentence was given, and the work done again ends as if nothing had failed.
 */

beforeEach(() => {
  // The waiting between two tries takes no time here.
  const at = (work: () => void) => setImmediate(work) as unknown as ReturnType<typeof setTimeout>;
  vi.spyOn(globalThis, "setTimeout").mockImplementation(at as typeof setTimeout);
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const OURS = { formula: "=SILL.SLOPE(B1)", value: "#NAME?" };
const USER = {
  Start: { A1: "mine", B1: { formula: "6:12", value: "6:12", text: true as const }, C1: { formula: "=1+1", value: 2 } },
  Ours: { B1: { formula: "6:12", value: "6:12", text: true as const }, A2: OURS, A3: OURS },
};

const BASIS = [
  ["Basis", "Value", "Unit"],
  ["Wind speed", 110, "mph"],
];

interface Work {
  readonly name: string;
  /** how the workbook stands before */
  readonly begin?: (book: FakeWorkbook) => void;
  readonly run: (host: Host, book: FakeWorkbook) => Promise<unknown> | undefined;
  /** sheets that the work may change */
  readonly may?: readonly string[];
}

const WORKS: readonly Work[] = [
  { name: "a template is put in", run: (host) => host.insertTemplate?.("Site basis") },
  { name: "a worksheet is written", run: (host) => host.writeSheet("Report", [["a", 1], ["=1+1"]]) },
  {
    name: "a worksheet is written anew",
    begin: (book) => {
      const sheet = book.addSheet("Report");
      sheet.put("A1", "old");
      sheet.properties.set("sillwork-report", "Report");
    },
    run: (host) => host.writeSheet("Report", [["a", 1], ["=1+1"]]),
    may: ["Report"],
  },
  { name: "a basis is made", run: (host) => host.writeBasis?.(BASIS) },
  {
    name: "a basis is changed",
    begin: (book) => {
      const sheet = book.addSheet("Site");
      for (const [cell, held] of Object.entries({ A1: "Basis", B1: "Value", C1: "Unit", A2: "Wind speed", B2: 90 })) {
        sheet.put(cell, held);
      }
      book.names.set("Basis", "=Site!$A$1:$C$2");
    },
    run: (host) =>
      host.writeBasis?.([
        ["Basis", "Value", "Unit"],
        ["Wind speed", 120, "mph"],
        ["Exposure", "C", ""],
      ]),
    may: ["Site"],
  },
  {
    name: "values are kept on a copy",
    begin: (book) => {
      book.active.sheet = "Ours";
      for (const cell of book.sheet("Ours")?.cells.values() ?? []) if (cell.value === "#NAME?") cell.value = 26.5;
    },
    run: () => keepValuesOnly(),
  },
  { name: "formulas are repaired", run: () => repairFormulas(), may: ["Ours"] },
  {
    name: "the rest is calculated",
    run: (host) => host.calculate([{ sheet: "Ours", row: 1, column: 0 }]),
    may: ["Ours"],
  },
  { name: "the workbook is looked at", run: (host) => host.scan() },
  {
    name: "a formula is put in",
    run: (host) => host.insertFormula("=SILL.SLOPE(B1)"),
    may: ["Start"],
    begin: (book) => book.select("Start", "D9"),
  },
  { name: "a cell is gone to", run: (host) => host.goTo({ sheet: "Ours", row: 1, column: 0 }) },
  { name: "ticks are kept", run: (host) => host.keep?.("seen", "a:1"), may: [] },
  { name: "a range is read", run: (host) => host.readRange?.("B1:C1", "Start") },
  { name: "a name is read", run: (host) => host.readName?.("Basis") },
  {
    name: "cells with a name are read",
    begin: (book) => void book.names.set("Mine", "=Start!$A$1"),
    run: (host) => host.namedCells?.(),
  },
];

const FAULTS: readonly Omit<Fault, "at">[] = [
  { lasts: false, code: "GeneralException", done: "nothing" },
  { lasts: false, code: "GeneralException", done: "half" },
  { lasts: false, code: "RequestAborted", done: "all" },
  { lasts: true, code: "ServiceNotAvailable", done: "half" },
  { lasts: false, code: "InvalidOperationInCellEditMode", done: "nothing" },
  { lasts: true, code: "InvalidOperationInCellEditMode", done: "nothing" },
];

async function begun({ begin }: Work) {
  const it = await opened(structuredClone(USER), undefined, (name, value) => vi.stubGlobal(name, value));
  begin?.(it.book);
  return it;
}

/** All that a user sees, without what only programs read. */
function seen(book: FakeWorkbook) {
  return {
    sheets: book.sheets.map(({ name, cells, spilled }) => ({
      name,
      cells: [...cells].map(([key, { formula, value }]) => [key, formula, value]).sort(),
      spilled: [...spilled].map(([key, { value }]) => [key, value]).sort(),
    })),
    names: [...book.names].sort(),
    settings: [...book.settings],
  };
}

const SENTENCE = /^[A-Z“"'].{20,}[.!]$/s;

describe.each(WORKS)("$name", (work) => {
  test.each(FAULTS)("$code, $done done, lasts: $lasts", async (fault) => {
    const clean = await begun(work);
    await work.run(clean.host, clean.book);
    await clean.book.settled();
    const wanted = seen(clean.book);

    let failed = 0;
    for (let n = 1; ; n++) {
      const { book, host } = await begun(work);
      const before = seen(book);
      const first = book.requests;
      book.fault = { ...fault, at: first + n };
      let said: unknown;
      try {
        said = await work.run(host, book);
      } catch (error) {
        said = error;
      }
      const met = book.requests >= first + n;
      book.fault = undefined;
      await book.settled();
      if (!met) break;
      failed++;
      const at = `request ${n}: `;
      if (said instanceof Error) expect(said.message, at).toMatch(SENTENCE);
      // The user's own sheets hold what they held.
      for (const sheet of before.sheets.filter(({ name }) => !work.may?.includes(name))) {
        expect(
          seen(book).sheets.find(({ name }) => name === sheet.name),
          `${at}${sheet.name}`,
        ).toEqual(sheet);
      }
      // What could not be finished is finished by doing it again.
      if (said instanceof Error) {
        if (!fault.lasts && !work.may) expect(seen(book), `${at}nothing is left`).toEqual(before);
        asTheSentenceSays(book, said.message);
        await work.run(host, book);
        await book.settled();
      }
      expect(seen(book), at).toEqual(wanted);
    }
    expect(failed).toBeGreaterThan(0);
  });
});

/** Where Excel refused to take a part out, the sentence names the worksheets to delete, and the user does. */
function asTheSentenceSays(book: FakeWorkbook, sentence: string): void {
  const named = /Delete the worksheet (.+) if it is there/.exec(sentence)?.[1]?.split(" or ") ?? [];
  book.sheets = book.sheets.filter(({ name }) => !named.includes(name));
  if (named.length > 0) book.active.sheet = book.sheet("Ours") === undefined ? "Start" : "Ours";
}
