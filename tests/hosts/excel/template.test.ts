import { afterEach, describe, expect, test, vi } from "vitest";
import { HeadlessWorkbook } from "../../../src/hosts/tryout/engine/headless.ts";
import { demo } from "../../../src/templates/demo.ts";
import { templates } from "../../../src/templates/index.ts";
import { addressText } from "../../../src/workbook/host.ts";
import { opened } from "./stand-in/page.ts";

afterEach(() => {
  vi.unstubAllGlobals();
});

const page = (...given: Parameters<typeof opened>) =>
  opened(given[0] ?? { Sheet1: {} }, given[1], (name, value) => vi.stubGlobal(name, value));

describe("a template written live", () => {
  test("the demo's values are those of the try-out sheet's engine, cell by cell", async () => {
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
  });
});

test("every template is in the list", async () => {
  const { host } = await page();
  expect((await host.templates?.())?.map(({ name }) => name)).toEqual(templates.map(({ name }) => name));
});
