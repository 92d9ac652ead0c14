import { readFileSync } from "node:fs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readWorkbook } from "../../src/workbook/file/read.ts";
import { callsOurs } from "../../src/workbook/formula.ts";
import { schemaFaults } from "../workbook/file/schema.ts";
import { launch } from "./launch.ts";
import { pdfText } from "./pdf.ts";
import { type Site, SOON, serveTryOut, TryOut } from "./try-out.ts";

let browser: Browser;
let site: Site;
let page: TryOut;
const sheet = (): TryOut => page;

beforeAll(async () => {
  site = await serveTryOut();
  browser = await launch();
  page = await TryOut.open(browser, site, { permissions: ["clipboard-read", "clipboard-write"] });
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** A day begins with a workbook of its own and ends without a fault of the page, which is the same for all days: opening one is slow. */
function day(name: string, begin: "#blank" | "#anew", steps: () => void): void {
  describe(name, () => {
    beforeAll(async () => {
      await page.page.click(begin);
      await page.page
        .locator("#said")
        .getByText(/^(?:A new workbook|The demo) is open/)
        .waitFor();
    });
    steps();
    test("and the page reported no fault", () => expect(page.problems).toEqual([]));
  });
}

day("the estimator types", "#blank", () => {
  test("a word is enough to find the function; its arguments are shown with units, and its result before Enter", async () => {
    const { page } = sheet();
    await sheet().enter("Sheet1!A1");
    await page.keyboard.type("=dew");
    await page.locator(".sw-typing").getByText("SILL.DEW_POINT").waitFor();
    await page.locator("li").getByText("SILL.DEW_POINT").first().waitFor();
    for (let i = 0; i < 4; i++) await page.keyboard.press("Backspace");
    await page.keyboard.type("=SILL.DEW_POINT(70,50");
    await expect.poll(() => page.locator(".sw-typing mark").textContent(), SOON).toContain("humidity");
    await expect.poll(() => page.locator(".sw-typing").textContent(), SOON).toMatch(/50\.5/);
    await page.keyboard.type(")");
    await sheet().leave("Sheet1!A1");
    await expect.poll(() => sheet().value("Sheet1!A1"), SOON).toBeCloseTo(50.5, 1);
    await expect.poll(() => page.locator(".sw-typing").count(), SOON).toBe(0);
  });

  test("lengths stay as they are typed, and cells feed the preview", async () => {
    await sheet().type("Sheet1!A3", "12'6");
    await sheet().enter("Sheet1!B3");
    await sheet().page.keyboard.type("=SILL.LENGTH(A3");
    await expect.poll(() => sheet().page.locator(".sw-typing").textContent(), SOON).toMatch(/12\.5/);
    await sheet().page.keyboard.type(")");
    await sheet().leave("Sheet1!B3");
    await expect.poll(() => sheet().value("Sheet1!B3"), SOON).toBe(12.5);
  });

  test("a slip is refused with a sentence, and mended", async () => {
    await sheet().type("Sheet1!A5", '=SILL.WIND_KZ("tall","C")');
    await expect.poll(() => sheet().value("Sheet1!A5"), SOON).toBe("#VALUE!");
    await expect.poll(() => sheet().paneOf("Sheet1!A5"), SOON).toMatch(/"tall" is not a length/);
    await sheet().type("Sheet1!A5", '=SILL.WIND_KZ("24 ft","C")');
    await expect.poll(() => sheet().value("Sheet1!A5"), SOON).toBeCloseTo(2.41 * (24 / 2460) ** (2 / 9.8), 6);
  });

  test("a function without SILL. in front is told what it lacks", async () => {
    await sheet().type("Sheet1!A7", "=DEW_POINT(70,50)");
    await expect.poll(() => sheet().paneOf("Sheet1!A7"), SOON).toContain("Write SILL.DEW_POINT");
    await sheet().type("Sheet1!A7", "-");
  });

  test("the site is filled in once in the pane and used by name", async () => {
    const { page } = sheet();
    await sheet().view("site");
    await page.getByLabel("Wind speed", { exact: true }).fill("115");
    await page.getByRole("button", { name: "Make the sheet Site basis" }).click();
    await expect.poll(async () => (await sheet().named("Basis")).rows.flat(), SOON).toContain(115);
    await expect.poll(() => sheet().panel(), SOON).toMatch(/1 term that no formula uses yet\s+Wind speed/i);
    await sheet().type("Sheet1!A9", '=SILL.WIND_PRESSURE(,"24 ft","C",,,,Basis)');
    await expect.poll(() => sheet().value("Sheet1!A9"), SOON).toBeTypeOf("number");
    await sheet().view("site");
    await expect.poll(() => sheet().panel(), SOON).not.toMatch(/no formula uses yet/);
  });

  test("the work is there again after the page was left", async () => {
    const { page } = sheet();
    await page.waitForTimeout(2000);
    await page.reload();
    await page.waitForSelector("html[data-ready=yes]");
    // It is in no file yet, so the page asked before it let go.
    expect(sheet().asked).toContain("beforeunload");
    expect(await sheet().said()).toMatch(/^Your work of .* is open again/);
    await expect.poll(() => sheet().value("Sheet1!B3"), SOON).toBe(12.5);
  });
});

day("the manager builds from templates", "#blank", () => {
  const noError = () => expect.poll(() => sheet().errors(), SOON).toEqual([]);
  const panels = async () => Number((await sheet().named("WallPanels")).rows[0]?.[0]);

  test("templates go in one after the other and share their inputs", async () => {
    const { page } = sheet();
    await sheet().view("templates");
    await page.getByRole("button", { name: "Insert Wall takeoff and courses" }).click();
    await page.getByText(/Wall takeoff and courses is in the workbook: Site, Walls, Courses/).waitFor();
    await page.getByRole("button", { name: "Insert Truck plan" }).click();
    await page.getByText(/Truck plan is in the workbook: .* It uses Site, which was there/).waitFor();
    await noError();
    await expect.poll(panels, SOON).toBeGreaterThan(0);
  });

  test("a template is saved as a file of its own, with its values, and the workbook is left alone", async () => {
    const { name, path } = await sheet().download("[aria-label='Save as .xlsx: Bid build-up']");
    expect(name).toBe("Bid build-up.xlsx");
    const { file } = await readWorkbook(readFileSync(path), "template");
    expect(file.sheets.map((one) => one.name)).toEqual(["Site", "Bid"]);
    const values = file.sheets.flatMap(({ cells }) => [...cells.values()].filter((c) => c.formula !== undefined));
    expect(values.some(({ value }) => typeof value === "number")).toBe(true);
    await expect.poll(panels, SOON).toBeGreaterThan(0);
  });

  test("a window is added in a spare row", async () => {
    const before = (await sheet().named("OpeningArea")).rows[0]?.[0] as number;
    const row = await sheet().rowOf("Openings", "");
    await sheet().enter(row);
    for (const text of ["window N3", "3'-0\"", "2'-0\"", "1", "6'-0\"", "22'-6\"", "north"]) {
      await sheet().page.keyboard.type(text);
      await sheet().page.keyboard.press("Tab");
    }
    await expect.poll(async () => (await sheet().named("OpeningArea")).rows[0]?.[0], SOON).toBeCloseTo(before + 6, 6);
    await noError();
  });

  test("a wall is copied to the next row and renamed", async () => {
    const before = await panels();
    await sheet().enterRow(await sheet().rowOf("Walls", "north"), 5);
    await sheet().page.keyboard.press("Control+c");
    // The engine hands the cells to the system's clipboard after the key.
    await expect.poll(() => sheet().page.evaluate("navigator.clipboard.readText()"), SOON).toContain("north");
    const free = await sheet().rowOf("Walls", "");
    await sheet().enter(free);
    await sheet().page.keyboard.press("Control+v");
    await expect.poll(() => sheet().value(free), SOON).toBe("north");
    // The selection is the pasted row now, and Enter goes round inside it.
    await sheet().enter(free);
    await sheet().page.keyboard.type("garden");
    await sheet().page.keyboard.press("Enter");
    await expect.poll(() => sheet().value(free), SOON).toBe("garden");
    await expect.poll(panels, SOON).toBeGreaterThan(before);
    await noError();
  });

  test("and removed again with another, whose openings go too", async () => {
    const { page } = sheet();
    for (const [table, row, columns] of [
      ["Walls", "garden", 5],
      ["Openings", "window W1", 7],
      ["Openings", "wide opening W", 7],
      ["Walls", "west", 5],
    ] as const) {
      await sheet().enterRow(await sheet().rowOf(table, row), columns);
      await page.keyboard.press("Delete");
      await expect.poll(async () => (await sheet().named(table)).rows.flat(), SOON).not.toContain(row);
    }
    await expect
      .poll(
        () =>
          sheet()
            .panel()
            .then(() => panels()),
        SOON,
      )
      .toBeGreaterThan(0);
    await noError();
  });

  test("the cut sheet prints: marks and numbered cuts, sheet by sheet", async () => {
    const { page } = sheet();
    await sheet().view("templates");
    await page.getByRole("button", { name: "Insert House courses and cutting list" }).click();
    await page.getByText(/House courses and cutting list is in the workbook/).waitFor();
    await expect.poll(async () => (await sheet().named("LiningSheets")).rows[0]?.[0], SOON).toBeTypeOf("number");
    await noError();
    const { first } = await sheet().named("LiningSheets");
    await page.evaluate("window.print = () => {}");
    await sheet().paneOf(`${first.sheet}!B${first.row + 1}`);
    await page.locator(".sw-picture").getByRole("button", { name: "Print" }).first().click();
    const paper = page.locator(".sw-print");
    await expect.poll(() => paper.locator("figure svg").count(), SOON).toBeGreaterThan(1);
    const printed = pdfText(new Uint8Array(await page.pdf({ format: "Letter" })));
    expect(printed).toMatch(/SHEETS_NEEDED\s+in\s.*Project: _+ Date: _+/);
    expect(printed).toMatch(/mark S 1[\s\S]*Cuts: 1 /);
    // The picture's own text, and nothing of the rest of the page.
    expect(printed).toMatch(/Sheets? \d+[\s\S]*Leaves: /);
    expect(printed).not.toMatch(/Open \.xlsx|Templates/);
    // The browser tells of the end of printing, and the page is as it was.
    expect(await paper.count()).toBe(0);
  });

  test("a picture is enlarged, closed with a key, and copied", async () => {
    const { page } = sheet();
    const picture = page.locator(".sw-picture").first();
    await picture.getByRole("button", { name: "Enlarge" }).click();
    const large = page.getByRole("dialog");
    await large.locator("svg").waitFor();
    const widths = await Promise.all(
      [picture.locator("svg").first(), large.locator("svg")].map(async (svg) => (await svg.boundingBox())?.width ?? 0),
    );
    expect(widths[1]).toBeGreaterThan(1.5 * (widths[0] ?? 0));
    await page.keyboard.press("Escape");
    await expect.poll(() => large.count(), SOON).toBe(0);
    await picture.getByRole("button", { name: "Copy picture" }).click();
    await page.getByText("Picture copied").waitFor();
    const kinds = await page.evaluate(async () => (await navigator.clipboard.read()).flatMap(({ types }) => types));
    expect(kinds).toContain("image/png");
  });

  test("a picture goes into the sheet, takes the place of its earlier self, and is in the file and there again when that is opened", async () => {
    const { page } = sheet();
    for (const _ of ["first", "again"]) {
      await page.locator(".sw-picture").getByRole("button", { name: "Place picture in the sheet" }).first().click();
      await expect
        .poll(() => page.locator("#pane").textContent(), SOON)
        .toContain("The picture stands beside the cells");
    }
    const pictures = async () => {
      const bytes = readFileSync((await sheet().download("#save")).path);
      expect(await schemaFaults(bytes)).toEqual([]);
      const { file } = await readWorkbook(bytes, "with a picture");
      return {
        bytes,
        held: file.sheets.flatMap(({ name, pictures = [] }) => pictures.map((one) => ({ on: name, ...one }))),
      };
    };
    const { bytes, held } = await pictures();
    expect(held.map(({ name }) => name)).toEqual([expect.stringMatching(/^Sillwork SHEETS_NEEDED B\d+$/)]);
    expect(held[0]?.width).toBe(640);
    await sheet().openFile("with a picture.xlsx", bytes);
    expect((await pictures()).held).toEqual(held);
  });
});

day("the office reviews and shares", "#anew", () => {
  let saved: Buffer;

  test("Cautions goes through the whole workbook, and the sheet for the file is written", async () => {
    const { page } = sheet();
    await sheet().view("cautions");
    await expect.poll(() => sheet().panel(), SOON).toMatch(/Cautions?/);
    await page
      .getByRole("button", { name: /Write .*sheet|Basis and cautions/i })
      .first()
      .click();
    await expect.poll(async () => (await sheet().selected()).split("!")[0], SOON).toContain("Basis and cautions");
    expect(await sheet().value("'Basis and cautions'!A1")).toBe("Basis and cautions");
  });

  test("the sheet for the file names the inputs with their units and cells, then the results", async () => {
    const rows = await sheet().page.evaluate(async () => {
      const { tryOutSheet } = globalThis as unknown as {
        tryOutSheet: { readRange(a: string, b: string): Promise<(string | number)[][]> };
      };
      return tryOutSheet.readRange("A1:D400", "Basis and cautions");
    });
    const row = (first: string) => rows.find(([cell]) => cell === first)?.slice(1);
    expect(row("Wind speed")).toEqual([110, "mph", expect.stringMatching(/^Site!B/)]);
    expect(row("A plate (PlatePlf)")).toEqual([1.66, "plf", expect.stringMatching(/^Lift!B/)]);
    expect(row("Price (Price)")).toEqual([expect.any(Number), "$", expect.stringMatching(/^Bid!B/)]);
    // Nothing waits in a workbook that has calculated.
    expect(rows.flat().filter((cell) => String(cell).startsWith("NOT WHOLE"))).toEqual([]);
  });

  test("saved and opened again, every number is what it was", async () => {
    const { path } = await sheet().download("#save");
    saved = readFileSync(path);
    expect(await schemaFaults(saved)).toEqual([]);
    const { file } = await readWorkbook(saved, "saved");
    await sheet().page.click("#blank");
    await expect.poll(() => sheet().said(), SOON).toMatch(/^A new workbook/);
    await sheet().openFile("again.xlsx", saved);
    await same(file);
  });

  test("a copy with values only is shared and needs nothing of ours", async () => {
    const { name, path } = await sheet().download("#values");
    expect(name).toMatch(/\(values only\)\.xlsx$/);
    const copy = readFileSync(path);
    expect(await schemaFaults(copy)).toEqual([]);
    const { file } = await readWorkbook(copy, "values");
    const formulas = file.sheets.flatMap((s) => [...s.cells.values()].flatMap(({ formula }) => formula ?? []));
    expect(formulas.filter((formula) => callsOurs(formula))).toEqual([]);
  });

  test("a file whose formulas point at a copy of another workbook is repaired by opening it", async () => {
    const parts = unzipSync(saved);
    for (const [path, content] of Object.entries(parts)) {
      if (!path.startsWith("xl/worksheets/")) continue;
      parts[path] = strToU8(strFromU8(content).replaceAll("_xldudf_SILL_", "[1]!_xldudf_SILL_"));
    }
    await sheet().openFile("copied.xlsx", Buffer.from(zipSync(parts)));
    await same((await readWorkbook(saved, "saved")).file);
    expect(await sheet().errors()).toEqual([]);
  });

  /** Every number that the file has stored for a formula stands in the sheet. */
  async function same(file: Awaited<ReturnType<typeof readWorkbook>>["file"]): Promise<void> {
    const stored = file.sheets.flatMap(({ name, cells }) =>
      [...cells].flatMap(([key, { formula, value }]) => {
        const [row = 0, column = 0] = key.split(",").map(Number);
        return formula === undefined || typeof value !== "number" ? [] : [{ sheet: name, row, column, value }];
      }),
    );
    expect(stored.length).toBeGreaterThan(100);
    const differing = () =>
      sheet().page.evaluate(async (cells) => {
        const { tryOutSheet } = globalThis as unknown as { tryOutSheet: { valueAt(a: object): Promise<unknown> } };
        const now = await Promise.all(cells.map((cell) => tryOutSheet.valueAt(cell)));
        return cells.filter(({ value }, i) => !(Math.abs(Number(now[i]) - value) <= 1e-9 * Math.abs(value) + 1e-9));
      }, stored);
    await expect.poll(differing, SOON).toEqual([]);
  }
});
