import { afterEach, describe, expect, test, vi } from "vitest";
import { registry } from "../../../src/functions/registry.ts";
import { explain } from "../../../src/functions/run/invoke.ts";
import { keepValuesOnly } from "../../../src/hosts/excel/keep-values.ts";
import { repairFormulas } from "../../../src/hosts/excel/repair.ts";
import { basisRows, inputsOf } from "../../../src/pane/cautions/basis-sheet.ts";
import { Gathering } from "../../../src/pane/cautions/findings.ts";
import { Survey } from "../../../src/pane/cautions/survey.ts";
import { Ticks } from "../../../src/pane/cautions/ticks.ts";
import { look } from "../../../src/pane/cautions/workbook-scan.ts";
import { asStored } from "../../../src/workbook/formula.ts";
import { columnLetters } from "../../../src/workbook/host.ts";
import { parseRange } from "../../../src/workbook/named-rows.ts";
import { coverage } from "../../../src/workbook/scan.ts";
import type { FakeWorkbook } from "./stand-in/book.ts";
import { opened } from "./stand-in/page.ts";

/** Days in the stand-in workbook: the real adapter, from what is typed to what is sent. */

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

type Page = Awaited<ReturnType<typeof opened>>;
const page = (sheets?: Parameters<typeof opened>[0]): Promise<Page> =>
  opened(sheets, undefined, (name, value) => vi.stubGlobal(name, value));

/** The same file opened again: stored values stay, nothing has calculated. */
async function reopened({ book }: Page): Promise<Page> {
  const next = await page({});
  next.book.restore(structuredClone(book.state()));
  next.book.active.sheet = next.book.sheets[0]?.name ?? "";
  return next;
}

/** The working of the selected cell, as the pane makes it. */
async function working({ host, ledger }: Page) {
  const address = await host.selection();
  const entry = address && ledger.at(address);
  const call = entry?.calls.at(-1);
  const fn = registry.find(({ id }) => id === call?.id);
  if (call === undefined || fn === undefined) throw new Error("the selected cell has no working");
  return explain(fn, call.args);
}

function findings({ ledger }: Page) {
  const survey = new Survey(() => registry);
  survey.start(ledger.entries());
  survey.work(() => true);
  const gathering = new Gathering();
  for (const cell of survey.cells) gathering.add(cell);
  return { found: gathering.findings(), cells: survey.cells };
}

/** Types a row into the first free row of a named table. */
function typeRow(book: FakeWorkbook, name: string, row: readonly (string | number)[]): void {
  const range = parseRange(book.names.get(name) ?? "");
  if (range === undefined) throw new Error(`no cells are named ${name}`);
  const sheet = book.sheet(range.first.sheet);
  let free = range.first.row;
  while (sheet?.cells.has(`${free},${range.first.column}`)) free++;
  expect(free).toBeLessThan(range.first.row + range.rows);
  book.paste(range.first.sheet, `${columnLetters(range.first.column)}${free + 1}`, [row]);
}

describe("an estimator types", () => {
  test("a formula, reads its working, mistypes, mends it, and clears the cell", async () => {
    const it = await page({ Estimate: { A1: "Slope", B1: { formula: "6:12", value: "6:12", text: true } } });
    const { book, host, ledger } = it;
    book.type("Estimate", "B2", "=SILL.SLOPE(B1)");
    book.select("Estimate", "B2");
    expect(book.shown("Estimate", "B2")).toBeCloseTo(26.565, 3);
    expect(await host.formulaAt({ sheet: "Estimate", row: 1, column: 1 })).toBe("=SILL.SLOPE(B1)");
    expect((await working(it)).steps.length).toBeGreaterThan(0);

    book.type("Estimate", "B2", '=SILL.SLOPE("0:0")');
    expect(book.shown("Estimate", "B2")).toMatch(/^#(VALUE!|N\/A)$/);
    const refused = (await working(it)).outcome;
    expect(refused.ok ? "" : refused.said.todo).not.toBe("");

    book.type("Estimate", "B1", "'8:12");
    book.type("Estimate", "B2", "=SILL.SLOPE(B1)");
    expect(book.shown("Estimate", "B2")).toBeCloseTo(33.69, 2);
    book.type("Estimate", "B1", "'12:12");
    expect(book.shown("Estimate", "B2")).toBeCloseTo(45, 9);

    book.type("Estimate", "B2", "");
    await book.settled();
    expect(ledger.size).toBe(0);
  });

  test.each([0, null, ""] as const)("a blank cell that arrives as %j is left out", async (blank) => {
    const { book } = await page({
      Sheet1: { A1: "Basis", B1: "Value", C1: "Unit", A2: "Wind speed", B2: 110, C2: "mph" },
    });
    book.blank = blank;
    book.type("Sheet1", "D1", '=SILL.WIND_KZ(15,"C")');
    book.type("Sheet1", "D2", '=SILL.WIND_KZ(15,"C",A1:C9)');
    expect(book.shown("Sheet1", "D1")).toBeGreaterThan(0.5);
    expect(book.shown("Sheet1", "D2")).toBe(book.shown("Sheet1", "D1"));
  });

  test("a table spills, is blocked, says so, and spills again when the way is free", async () => {
    const { book } = await page({ Sheet1: { A1: "gypsum board", B1: 0.5, A2: "air cavity", B2: 3.5 } });
    book.type("Sheet1", "D3", "in the way");
    book.type("Sheet1", "D1", "=SILL.R_SCHEDULE(A1:B2)");
    expect(book.shown("Sheet1", "D1")).toBe("#SPILL!");
    book.type("Sheet1", "D3", "");
    book.type("Sheet1", "D1", "=SILL.R_SCHEDULE(A1:B2)");
    expect(book.shown("Sheet1", "D2")).not.toBeUndefined();
    expect(book.sheet("Sheet1")?.at("D1")?.spill?.[0]).toBeGreaterThan(2);
  });

  test("a formula comes from the pane into the active cell; while a cell is typed in the pane waits", async () => {
    vi.useFakeTimers();
    const { book, host } = await page();
    book.select("Sheet1", "C4");
    book.refusals = 2;
    const inserted = host.insertFormula('=SILL.SLOPE("12:12")');
    await vi.advanceTimersByTimeAsync(2000);
    expect(await inserted).toEqual({ sheet: "Sheet1", row: 3, column: 2 });
    expect(book.shown("Sheet1", "C4")).toBeCloseTo(45, 9);
  });

  test("an answer that comes later shows as busy, then as its value, and what depends on it follows", async () => {
    let give: (value: number) => void = () => {};
    const later = new Promise<number>((done) => {
      give = done;
    });
    const { book } = await opened(
      { Sheet1: {} },
      () => later.then((value) => ({ ok: true as const, value })),
      (name, value) => vi.stubGlobal(name, value),
    );
    book.type("Sheet1", "A1", '=SILL.SLOPE("12:12")');
    book.type("Sheet1", "A2", "=A1+1");
    expect(book.shown("Sheet1", "A1")).toBe("#BUSY!");
    give(45);
    await book.settled();
    expect(book.shown("Sheet1", "A2")).toBe(46);
  });
});

describe("a project manager builds from templates", () => {
  test("puts a takeoff in, adds a window, copies a wall: quantities follow, no cell shows an error", async () => {
    const { book, host } = await page({ Notes: { A1: "mine" } });
    await host.insertTemplate?.("Whole-house UA");
    expect(book.errors()).toEqual([]);
    const named = (name: string) => {
      const [sheet = "", cell = ""] = (book.names.get(name) ?? "").slice(1).replaceAll("$", "").split("!");
      return Number(book.shown(sheet, cell));
    };
    const [net, windows] = [named("NetWallArea"), named("WindowArea")];
    typeRow(book, "Openings", ["window Z", "3'-0\"", "4'-0\"", 1, "3'-0\"", "20'-0\"", "north"]);
    expect(book.errors()).toEqual([]);
    expect(named("WindowArea")).toBeCloseTo(windows + 12, 6);
    expect(named("NetWallArea")).toBeCloseTo(net - 12, 6);
    const walls = parseRange(book.names.get("Walls") ?? "");
    const first = book.sheet("Walls")?.cells;
    const copied = Array.from(
      { length: 5 },
      (_, c) => first?.get(`${(walls?.first.row ?? 0) + 1},${c}`)?.formula ?? "",
    );
    typeRow(book, "Walls", ["copied wall", ...copied.slice(1).map((held) => (typeof held === "boolean" ? 0 : held))]);
    expect(book.errors()).toEqual([]);
    expect(named("NetWallArea")).toBeGreaterThan(net);
    expect(book.sheet("Notes")?.at("A1")?.value).toBe("mine");
  });

  test("adds a window to the hold-down schedule: the wall's part, its openings and its hold-down follow", async () => {
    const { book, host } = await page();
    await host.insertTemplate?.("Hold-down schedule");
    await book.settled();
    const north = (name: string) => {
      const range = parseRange(book.names.get(name) ?? "");
      const at = (row: number, column: number) =>
        book.shown(range?.first.sheet ?? "", `${columnLetters((range?.first.column ?? 0) + column)}${row + 1}`);
      const rows = Array.from({ length: range?.rows ?? 0 }, (_, r) => (range?.first.row ?? 0) + r);
      const row = rows.find((r) => at(r, 0) === "north") ?? -1;
      return Array.from({ length: range?.columns ?? 0 }, (_, c) => at(row, c));
    };
    const pull = Number(north("PiercedHoldDowns")[3]);
    expect(north("LeftByOpenings")[1]).toBe(2);
    typeRow(book, "Openings", ["window Z", "3'-0\"", "2'-0\"", 1, "6'-0\"", "22'-6\"", "north"]);
    await book.settled();
    expect(book.errors()).toEqual([]);
    expect(north("LeftByOpenings").slice(1)).toEqual([3, expect.any(Number), 38.75]);
    expect(Number(north("PiercedHoldDowns")[3])).toBeGreaterThan(pull);
  });

  test("moves the basis to another site: every cell of the wind schedule follows", async () => {
    const { book, host } = await page();
    await host.insertTemplate?.("Wind schedule");
    const pressure = Number(book.shown("Wind", "B14"));
    const held = await host.readName?.("Basis");
    const rows = (held?.rows ?? []).map((row) => (row[0] === "Wind speed" ? [row[0], 220, row[2] ?? ""] : row));
    await host.writeBasis?.(rows);
    expect(Number(book.shown("Wind", "B14")) / pressure).toBeCloseTo(4, 6);
  });
});

describe("an office reviews and sends", () => {
  async function saved(): Promise<Page> {
    const it = await page();
    await it.host.insertTemplate?.("Wind schedule");
    await it.host.insertTemplate?.("Wall assembly and dew point");
    return reopened(it);
  }

  test("a workbook that was just opened says what has calculated, calculates the rest, and writes the basis sheet whole", async () => {
    const it = await saved();
    const { host, ledger, book } = it;
    const before = await look(host);
    expect(before.coverage.calculated).toBe(0);
    expect(before.coverage.ours).toBeGreaterThan(10);
    const partly = basisRows({ ...findings(it), looked: before, ...(await inputsOf(host)) }).map(([text]) => text);
    expect(partly).toContainEqual(expect.stringMatching(/^NOT WHOLE: 0 of \d+ cells calculated/));
    expect(await host.calculate(before.coverage.waiting)).toEqual([]);
    await book.settled();
    const scan = await host.scan();
    expect(coverage(scan, ledger).waiting).toEqual([]);
    const rows = basisRows({ ...findings(it), looked: await look(host), ...(await inputsOf(host)) });
    expect(rows.map(([text]) => text)).not.toContainEqual(expect.stringContaining("NOT WHOLE"));
    // Inputs by name, with unit and cell: rows of the basis and cells with a name; then results, those of the spreadsheet's own formulas too.
    const row = (name: string) => rows.find(([text]) => text === name);
    expect(row("Wind speed")?.slice(1)).toEqual([110, "mph", expect.stringMatching(/^Site!B\d+$/)]);
    expect(row("Still air inside a wall (WallFilm)")?.slice(1)).toEqual([
      0.68,
      "h ft2 F/Btu",
      expect.stringMatching(/^Assemblies!B\d+$/),
    ]);
    expect(row("Velocity pressure q (VelocityPressure)")?.slice(1)).toEqual([
      expect.closeTo(25.71, 2),
      "psf",
      "Wind!B14",
    ]);
    expect(row("Floor area, outside the panels (FloorArea)")?.slice(1, 3)).toEqual([1536, "ft2"]);
    const at = (heading: string) => rows.findIndex(([text]) => text === heading);
    expect(at("Input")).toBeGreaterThan(at("Date"));
    expect(at("Result")).toBeGreaterThan(at("Input"));
    expect(at("Kind")).toBeGreaterThan(at("Result"));
    book.addSheet("Basis and cautions").put("A1", "a user's own");
    expect(await host.writeSheet("Basis and cautions", rows)).toBe("Basis and cautions (2)");
    expect(book.sheet("Basis and cautions")?.at("A1")?.value).toBe("a user's own");
    const sheet = book.sheet("Basis and cautions (2)");
    expect(sheet?.cells.size).toBeGreaterThan(50);
    // It reads and prints: a title, headings, texts that wrap in columns of their own, on paper as wide as the sheet.
    const heading = rows.findIndex(([text]) => text === "Kind") + 1;
    expect(sheet?.look("A1")).toMatchObject({ "font bold": true, "font size": 15 });
    expect(sheet?.look(`B${heading}`)).toMatchObject({ "font bold": true });
    expect(sheet?.look(`B${heading + 1}`)).toMatchObject({
      "format wrapText": true,
      "format verticalAlignment": "Top",
    });
    expect(sheet?.widths.get(1)).toBeGreaterThan(sheet?.widths.get(3) ?? 0);
    expect(sheet?.print).toMatchObject({ orientation: "Landscape", zoom: { horizontalFitToPages: 1 } });
  });

  test("a caution that was ticked is still ticked when the workbook is opened again", async () => {
    const it = await saved();
    await it.host.calculate((await look(it.host)).coverage.waiting);
    const [caution] = findings(it).found.standingCautions;
    if (caution === undefined) throw new Error("no caution to tick");
    const ticks = new Ticks(() => {});
    await ticks.read(it.host);
    await ticks.tick(caution);
    const later = new Ticks(() => {});
    const again = await reopened(it);
    await later.read(again.host);
    expect(later.has(caution)).toBe(true);
  });

  test("keeps values only on a copy, which is whole where the add-in is not", async () => {
    const it = await saved();
    const { book } = it;
    book.active.sheet = "Wind";
    const shown = new Map([...(book.sheet("Wind")?.cells ?? [])].map(([key, { value }]) => [key, value]));
    const spilled = [...(book.sheet("Wind")?.spilled ?? [])].map(([key, { value }]) => [key, value] as const);
    expect(await keepValuesOnly()).toMatch(/^Wind is unchanged\. Its copy Wind values holds \d+ values/);
    const copy = book.sheet("Wind values");
    expect([...(copy?.cells.values() ?? [])].filter(({ formula }) => /SILL/.test(String(formula)))).toEqual([]);
    for (const [key, value] of [...shown, ...spilled]) expect(copy?.cells.get(key)?.value ?? "", key).toEqual(value);
  });

  test("a workbook that a colleague saved without the add-in shows #NAME?; repair brings every cell back", async () => {
    const it = await saved();
    const { book } = it;
    const before = new Map(
      book.sheets.flatMap(({ name, cells }) => [...cells].map(([k, c]) => [`${name} ${k}`, c.value])),
    );
    for (const sheet of book.sheets) {
      for (const cell of sheet.cells.values()) {
        if (typeof cell.formula !== "string" || !/^=.*SILL\./.test(cell.formula)) continue;
        Object.assign(cell, { formula: asStored(cell.formula), value: "#NAME?" });
        delete cell.spill;
      }
      sheet.spilled.clear();
    }
    expect(await repairFormulas()).toMatch(/^\d+ formulas work again\.$/);
    await book.settled();
    expect(book.errors()).toEqual([]);
    const after = new Map(
      book.sheets.flatMap(({ name, cells }) => [...cells].map(([k, c]) => [`${name} ${k}`, c.value])),
    );
    for (const [key, value] of before) expect(after.get(key), key).toEqual(value);
  });
});
