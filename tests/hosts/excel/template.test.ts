import { afterEach, describe, expect, test, vi } from "vitest";
import { HeadlessWorkbook } from "../../../src/hosts/tryout/engine/headless.ts";
import { demo } from "../../../src/templates/demo.ts";
import { templates } from "../../../src/templates/index.ts";
import { addressText } from "../../../src/workbook/host.ts";
import type { State } from "./stand-in/book.ts";
import { opened } from "./stand-in/page.ts";

afterEach(() => {
  vi.unstubAllGlobals();
});

const page = (sheets?: Parameters<typeof opened>[0]) =>
  opened(sheets, undefined, (name, value) => vi.stubGlobal(name, value));

const BEGUN = { Sheet1: { A1: "mine", B1: { formula: "=1+1", value: 2 } } };

test("every template is in the list", async () => {
  const { host } = await page();
  expect((await host.templates?.())?.map(({ name }) => name)).toEqual(templates.map(({ name }) => name));
  await expect(host.insertTemplate?.("Nothing")).rejects.toThrow("There is no template Nothing.");
});

test("the demo written live, where blank cells come as 0, has the values of the try-out sheet's engine, cell by cell", async () => {
  const { book, host } = await page();
  expect((await host.insertTemplate?.(demo.name))?.sheets).toEqual(demo.sheets.map(({ name }) => name));
  await book.settled();
  const engine = await HeadlessWorkbook.open(demo);
  await engine.arrived();
  const differ: string[] = [];
  let cells = 0;
  for (const sheet of demo.sheets) {
    sheet.rows.forEach((line, row) => {
      line.forEach((cell, column) => {
        if (typeof cell?.is !== "string" || !cell.is.startsWith("=")) return;
        const address = addressText({ sheet: sheet.name, row, column });
        const here = book.sheet(sheet.name)?.cells.get(`${row},${column}`)?.value;
        const there = engine.valueAt(address);
        cells++;
        const same =
          typeof here === "number" && typeof there === "number"
            ? Math.abs(here - there) <= 1e-9 * Math.max(1, Math.abs(there))
            : here === there;
        if (!same) differ.push(`${address} ${cell.is}: ${here}, the engine ${there}`);
      });
    });
  }
  engine.dispose();
  expect(differ).toEqual([]);
  expect(cells).toBeGreaterThan(200);
  expect(book.errors()).toEqual([]);
  expect(book.largest).toBeLessThan(2_000_000);
});

describe("what is written", () => {
  test("inputs are marked and stay text, choices and notes stand at their cells, widths, names and print are set", async () => {
    const { book, host } = await page();
    await host.insertTemplate?.("Wind schedule");
    const site = book.sheet("Site");
    const row = [...(site?.cells ?? [])].find(([, { value }]) => value === "Exposure")?.[0].split(",")[0];
    const exposure = `B${Number(row) + 1}`;
    expect(site?.at(exposure)).toMatchObject({ value: "C", text: true });
    expect(site?.look(exposure)).toMatchObject({
      "fill color": "#FFF8DC",
      numberFormat: "@",
      "validation rule": { list: { inCellDropDown: true, source: "B,C,D" } },
      "validation errorAlert": { style: "Warning", message: "One of: B,C,D" },
      "validation prompt": { showPrompt: true, message: expect.stringContaining("exposure") },
    });
    expect(site?.widths.get(0)).toBeGreaterThan(100);
    expect(site?.print).toMatchObject({
      orientation: "Landscape",
      zoom: { horizontalFitToPages: 1 },
      "headersFooters.defaultForAllPages.leftFooter": "&A",
    });
    expect(book.names.get("Basis")).toMatch(/^=Site!\$A\$\d+:\$C\$\d+$/);
    expect(book.sheet("Wind")?.look("B14")).toMatchObject({ numberFormat: "0.0", "font bold": true });
    expect(book.shown("Wind", "B14")).toBeGreaterThan(10);
    expect(book.active.sheet).toBe("Site");
    // Typed over by the user: text stays text in a cell for text.
    book.type("Site", exposure, "B");
    expect(book.errors()).toEqual([]);
  });

  test("a sheet and a name of the user's own stay; ours get numbers, in the formulas too", async () => {
    const { book, host } = await page({ Wind: { A1: "mine" }, Own: { A1: 5 } });
    book.names.set("WindLines", "=Own!$A$1");
    const done = await host.insertTemplate?.("Wind schedule");
    expect(done).toMatchObject({ sheets: ["Site", "Wind (2)"], used: [] });
    expect(done?.says).toBe(
      "Wind schedule is in the workbook: Site, Wind (2). Names that were taken got a number: WindLines_2. Undo takes it out again in one step.",
    );
    expect(book.sheet("Wind")?.cells.size).toBe(1);
    expect(book.names.get("WindLines")).toBe("=Own!$A$1");
    expect(book.names.get("WindLines_2")).toMatch(/^='Wind \(2\)'!/);
    const spill = [...(book.sheet("Wind (2)")?.cells.values() ?? [])].map(({ formula }) => formula);
    expect(spill).toContain("=SILL.WIND_BASESHEAR(WindLines_2,Basis)");
    expect(book.errors()).toEqual([]);
  });

  test("what is there already is used and not written twice", async () => {
    const { book, host } = await page();
    await host.insertTemplate?.("Wind schedule");
    book.type("Site", "B99", "typed later");
    const second = await host.insertTemplate?.("Snow and loads");
    expect(second).toMatchObject({ sheets: ["Assemblies", "Loads"], used: ["Site"] });
    expect(second?.says).toContain("It uses Site, which was there.");
    expect(book.errors()).toEqual([]);
    const before = book.state();
    const third = await host.insertTemplate?.("Wind schedule");
    expect(third?.says).toBe("All of Wind schedule is in this workbook already, on Site, Wind: nothing was written.");
    expect(book.state()).toEqual(before);
  });

  test("a name that a deleted sheet left behind is given to the new one", async () => {
    const { book, host } = await page();
    book.names.set("Basis", "=#REF!");
    await host.insertTemplate?.("Site basis");
    expect(book.names.get("Basis")).toMatch(/^=Site!/);
  });
});

describe("undo", () => {
  test("one step takes all of it out again, where Excel groups steps", async () => {
    const { book, host } = await page(BEGUN);
    const before = book.state();
    await host.insertTemplate?.("Wind schedule");
    expect(book.steps).toHaveLength(1);
    book.undo();
    expect(book.state()).toEqual(before);
  });

  test.each([
    ["of an older Excel", (book: { api: number }) => Object.assign(book, { api: 17 })],
    [
      "where a step cannot be undone",
      (book: { fault?: unknown; requests: number }) => Object.assign(book, refusesGroup(book)),
    ],
  ])("%s: it goes in all the same, and the sentence says so", async (_, change) => {
    const { book, host } = await page(BEGUN);
    change(book);
    const done = await host.insertTemplate?.("Wind schedule");
    expect(done?.says).toContain("This Excel cannot undo it in one step");
    expect(done?.sheets).toEqual(["Site", "Wind"]);
    expect(book.sheets.map(({ name }) => name)).toEqual(["Sheet1", "Site", "Wind"]);
  });

  function refusesGroup(book: { requests: number }) {
    return { fault: { at: book.requests + 5, lasts: false, code: "UndoNotSupported", done: "nothing" } };
  }
});

describe("whole or not at all", () => {
  const unchanged = (state: State) => ({ sheets: state.sheets, names: state.names });

  test("a protected workbook refuses with a sentence, and nothing is there", async () => {
    const { book, host } = await page(BEGUN);
    book.isProtected = true;
    const before = unchanged(book.state());
    await expect(host.insertTemplate?.("Wind schedule")).rejects.toThrow(/is protected.*Take the protection off/);
    expect(unchanged(book.state())).toEqual(before);
  });

  test("a cell that is opened in the middle: once it is finished the template is whole, once", async () => {
    const { book, host } = await page(BEGUN);
    book.fault = { at: book.requests + 5, lasts: false, code: "InvalidOperationInCellEditMode", done: "nothing" };
    const done = await host.insertTemplate?.("Wind schedule");
    expect(book.sheets.map(({ name }) => name)).toEqual(["Sheet1", "Site", "Wind"]);
    expect(done?.sheets).toEqual(["Site", "Wind"]);
    expect(book.errors()).toEqual([]);
  });
});
