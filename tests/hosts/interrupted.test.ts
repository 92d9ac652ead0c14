import { afterEach, describe, expect, test, vi } from "vitest";
import { formulaOf } from "../../src/functions/declare/formula.ts";
import { registry } from "../../src/functions/registry.ts";
import { answered } from "../../src/functions/run/tables-on-demand.ts";
import { Ledger } from "../../src/workbook/ledger.ts";
import { Searches, type SearchWorker } from "../../src/workbook/searches/searches.ts";
import { opened } from "./excel/stand-in/page.ts";

/** What breaks from outside: nothing is lost, and where something cannot be had a sentence says so. A host that fails is in faults.test.ts. */

const stub = (name: string, value: unknown) => vi.stubGlobal(name, value);

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const heavy = registry.find(({ heavy }) => heavy);
const SEARCH = heavy === undefined ? "" : `=${formulaOf(heavy, heavy.example.args, "SILL").replace(/^=/, "")}`;

describe("a worker that makes the searches", () => {
  class Silent implements SearchWorker {
    onmessage = null;
    onerror: ((event: ErrorEvent) => void) | null = null;
    onmessageerror = null;
    postMessage(): void {
      queueMicrotask(() => this.onerror?.({} as ErrorEvent));
    }
    terminate(): void {}
  }

  test("dies in the middle: the cell is busy, then has the answer that the page makes itself", async () => {
    const searches = new Searches(() => new Silent());
    const { book } = await opened({ Sheet1: {} }, searches.answer, stub);
    const plain = await opened({ Sheet1: {} }, answered, stub);
    plain.book.type("Sheet1", "A1", SEARCH);
    book.front();
    book.type("Sheet1", "A1", SEARCH);
    await book.settled();
    expect(heavy).toBeDefined();
    expect(book.shown("Sheet1", "A1")).toEqual(plain.book.shown("Sheet1", "A1"));
    expect(String(book.shown("Sheet1", "A1"))).not.toMatch(/BUSY|NAME/);
  });
});

test("a search whose formula was changed meanwhile does not write over the new one", async () => {
  let give: () => void = () => {};
  const wait = new Promise<void>((done) => {
    give = done;
  });
  let first = true;
  const { book } = await opened(
    { Sheet1: {} },
    (fn, raw) => {
      if (!first) return answered(fn, raw);
      first = false;
      return wait.then(() => ({ ok: true as const, value: 999 }));
    },
    stub,
  );
  book.type("Sheet1", "A1", '=SILL.SLOPE("12:12")');
  expect(book.shown("Sheet1", "A1")).toBe("#BUSY!");
  book.type("Sheet1", "A1", '=SILL.SLOPE("0.5:12")');
  const shown = book.shown("Sheet1", "A1");
  give();
  await book.settled();
  expect(book.shown("Sheet1", "A1")).toBe(shown);
  expect(shown).toBeLessThan(45);
});

test("the page is started again in the middle: the workbook keeps its values and its ticks, and says what has not calculated", async () => {
  const before = await opened({ Sheet1: {} }, answered, stub);
  before.book.type("Sheet1", "A1", '=SILL.SLOPE("12:12")');
  await before.host.keep?.("seen", "a:1");
  const after = await opened({}, answered, stub);
  after.book.restore(structuredClone(before.book.state()));
  expect(after.book.shown("Sheet1", "A1")).toBeCloseTo(45, 9);
  expect(await after.host.kept?.("seen")).toBe("a:1");
  expect(after.ledger.size).toBe(0);
  const { cells } = await after.host.scan();
  expect(cells).toHaveLength(1);
  await after.host.calculate(cells.map(({ address }) => address));
  expect(after.ledger.size).toBe(1);
});

test("two workbooks are open: each has its page, and neither sees the other's cells or ticks", async () => {
  const one = await opened({ Sheet1: {} }, answered, stub);
  const two = await opened({ Sheet1: {} }, answered, stub);
  one.book.front();
  one.book.type("Sheet1", "A1", '=SILL.SLOPE("12:12")');
  await one.host.keep?.("seen", "a:1");
  two.book.front();
  two.book.type("Sheet1", "B2", '=SILL.SLOPE("6:12")');
  expect(one.ledger.entries().map(({ address }) => address.column)).toEqual([0]);
  expect(two.ledger.entries().map(({ address }) => address.column)).toEqual([1]);
  expect(await two.host.kept?.("seen")).toBeUndefined();
  expect((await two.host.scan()).cells.map(({ address }) => address.column)).toEqual([1]);
});

test("the tab slept for a day: what calculates then is a new calculation, with the right arguments", () => {
  let now = 0;
  const ledger = new Ledger(10, () => now);
  const address = { sheet: "A", row: 0, column: 0 };
  const call = (n: number) => ({ id: "SLOPE", args: [n], outcome: { ok: true as const, value: n } });
  ledger.record(address, call(1));
  now = 86_400_000;
  ledger.record(address, call(2));
  expect(ledger.at(address)?.calls.map(({ args }) => args[0])).toEqual([2]);
});

test("an Excel without a part that is wanted says so, and does the rest", async () => {
  const { book, host } = await opened({ Sheet1: {} }, answered, stub);
  book.api = 3;
  await expect(host.keep?.("seen", "a:1")).rejects.toThrow("This Excel is too old for that.");
  expect(await host.insertFormula('=SILL.SLOPE("12:12")')).toEqual({ sheet: "Sheet1", row: 0, column: 0 });
});

describe("the browser keeps no draft", () => {
  async function files() {
    const said: string[] = [];
    let edited: () => void = () => {};
    stub("addEventListener", () => {});
    const { Files } = await import("../../src/hosts/tryout/sheet/files.ts");
    const sheet = {
      onEdit: (listener: () => void) => {
        edited = listener;
      },
      file: async () => ({ title: "Work", sheets: [], names: [] }),
      openFile: async () => {},
    };
    const it = new Files(sheet as never, (sentence) => said.push(sentence));
    return { it, said, edit: () => edited() };
  }

  test.each([
    ["storage is blocked", undefined],
    [
      "storage is full",
      {
        open: () => {
          throw new DOMException("full", "QuotaExceededError");
        },
      },
    ],
  ])("%s: one sentence says so, and the work goes on", async (_, indexedDB) => {
    stub("indexedDB", indexedDB);
    vi.useFakeTimers();
    const { it, said, edit } = await files();
    await it.resume();
    expect(said).toEqual([]);
    edit();
    await vi.advanceTimersByTimeAsync(5000);
    edit();
    await vi.advanceTimersByTimeAsync(5000);
    expect(said).toEqual(["This browser keeps no draft of your work here: save it as a file before you leave."]);
  });
});
