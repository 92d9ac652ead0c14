import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import { formulaOf } from "../../src/functions/declare/formula.ts";
import { registry } from "../../src/functions/registry.ts";
import { demo } from "../../src/templates/demo.ts";
import { addressText } from "../../src/workbook/host.ts";
import { launch } from "./launch.ts";
import { type Site, SOON, serveTryOut, TryOut } from "./try-out.ts";

const search = registry.find((fn) => fn.heavy);
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let browser: Browser;
let site: Site;
let sheet: TryOut;
let page: Page;

beforeAll(async () => {
  site = await serveTryOut();
  browser = await launch();
  sheet = await TryOut.open(browser, site);
  page = sheet.page;
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** The first cell of a worksheet of the demo whose formula starts like this. */
function demoCell(name: string, start: string): string {
  const rows = demo.sheets.find((one) => one.name === name)?.rows ?? [];
  const found = rows.flatMap((cells, row) =>
    cells.flatMap((cell, column) => (String(cell?.is).startsWith(start) ? [{ sheet: name, row, column }] : [])),
  )[0];
  if (found === undefined) throw new Error(`the demo's ${name} has no ${start}`);
  return addressText(found);
}

/** The first cell of what a name of the demo stands for. */
function named(name: string): string {
  const reference = demo.names.find(([n]) => n === name)?.[1] ?? "";
  return reference.split(":")[0]?.replaceAll("$", "") ?? "";
}

/** The value cell of a row of the basis. */
function basisCell(term: string): string {
  const rows = demo.sheets[0]?.rows ?? [];
  return `Site!B${rows.findIndex(([cell]) => cell?.is === term) + 1}`;
}

const select = (where: string) => sheet.select(where);
const value = (where: string) => sheet.value(where);
const enter = (where: string) => sheet.enter(where);
const type = (where: string, text: string) => sheet.type(where, text);
const paneOf = (where: string) => sheet.paneOf(where);

describe("the try-out sheet", () => {
  test("opens the demo workbook with numbers in it and without an error", async () => {
    expect(await value(named("VelocityPressure"))).toBeTypeOf("number");
    // The climate of its station is loaded meanwhile.
    await expect.poll(() => value(demoCell("Moisture", "=SILL.DEW_MONTHS(")), SOON).toMatch(/^[a-z]/);
    expect(sheet.problems).toEqual([]);
    // The first screen says what to do, and shows a picture of the workbook.
    await expect.poll(() => page.locator("#sw-panel-working").textContent()).toContain("Type =SILL.");
    await page.locator("#sw-panel-working svg").first().waitFor();
  });

  test("a typed formula gets argument help and gives its number", async () => {
    await enter("Site!F4");
    await page.keyboard.type("=SILL.WIND_PRES");
    await page.getByText("SILL.WIND_PRESSURE").first().waitFor();
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await enter("Site!F5");
    await page.keyboard.type("=SILL.WIND_PRESSURE(");
    await page
      .getByText(/meanRoofHeight/)
      .first()
      .waitFor();
    await page.keyboard.type('170,"24 ft","C")');
    await page.keyboard.press("Enter");
    // 0.00256 x 2.41 (24/2460)^(2/9.8) x 170^2, ASCE/SEI 7-22 Eq. 26.10-1
    await expect
      .poll(() => value("Site!F5"), SOON)
      .toBeCloseTo(0.00256 * 2.41 * (24 / 2460) ** (2 / 9.8) * 170 ** 2, 6);
  });

  test("the pane shows arguments as read, each step, assumptions, cautions and sources", async () => {
    const text = await paneOf("Site!F5");
    for (const part of [
      "WIND_PRESSURE",
      "170 mph",
      "24 ft",
      "Kz",
      "Eq. 26.10-1",
      "flat site",
      "Preliminary wind",
      "psf",
    ]) {
      expect(text).toContain(part);
    }
    expect(text).toMatch(/69\.3/);
  });

  test("an argument is a link to the cell that it came from, and each step has its numbers put in", async () => {
    const text = await paneOf(named("VelocityPressure"));
    expect(text).toMatch(/= 0\.00256 × 0\.85\d+ × 1 × 0\.97\d+ × 110/);
    const speed = page.locator("#sw-panel-working .sw-args > div").filter({ hasText: "wind speed" });
    await speed.getByRole("button").click();
    await expect.poll(() => sheet.selected(), SOON).toBe(basisCell("Wind speed").replace("!B", "!A"));
  });

  test("what moves a number: its arguments a tenth up and down, the strongest first", async () => {
    await paneOf(named("VelocityPressure"));
    await page.getByText("What moves this number").click();
    const first = page.locator(".sw-moves > div").first();
    await expect
      .poll(() => first.textContent(), SOON)
      .toMatch(/wind speed[\s\S]*lower: -19\.0 %[\s\S]*higher: \+21\.0 %/);
    expect(await first.locator("meter").count()).toBe(2);
  });

  test("changing the wind speed changes everything downstream", async () => {
    const q = () => value(named("VelocityPressure")) as Promise<number>;
    const holdDown = async () => (await value(named("HoldDownPull"))) as number;
    const before = [await q(), await holdDown()];
    await type(basisCell("Wind speed"), "130");
    await expect.poll(q, SOON).toBeCloseTo((before[0] ?? 0) * (130 / 110) ** 2, 6);
    await expect.poll(holdDown, SOON).toBeGreaterThan(before[1] ?? 0);
    await type(basisCell("Wind speed"), "110");
    await expect.poll(q, SOON).toBeCloseTo(before[0] ?? 0, 9);
  });

  test("tables spill", async () => {
    await type("Site!K4", '=SILL.R_SCHEDULE({"gypsum board",0.5;"mineral wool board",4})');
    await expect.poll(() => value("Site!K4"), SOON).toBe("layer");
    await expect.poll(() => value("Site!K6"), SOON).toBe("gypsum board");
    await expect.poll(() => value("Site!N8"), SOON).toBeTypeOf("number");
  });

  test.each([
    ['=SILL.WIND_PRESSURE(170,"tall","C")', /"tall" is not a length/],
    ['=SILL.WIND_PRESSURE(170,24,"X")', /one of B, C, D/],
    ["=SILL.R_STACK(J20:K29)", /has no row that holds anything/],
    ['=SILL.R_STACK({"gypsum board",0.5;"plywood",0.5;"osb",0.5;"wattle",3})', /"wattle" in row 4/],
    ['=SILL.R_LAYER("plywood",-1)', /-1 in[\s\S]*from 0.001 to/],
    ["=SILL.R_STACK(A1:B100000)", /layers/],
  ])("%s says what is wrong", async (formula, sentence) => {
    await type("Site!F8", formula);
    await expect.poll(() => value("Site!F8"), SOON).toBe("#VALUE!");
    await expect.poll(() => paneOf("Site!F8"), SOON).toMatch(sentence);
  });

  test("an error in a range is named with its row", async () => {
    await type("Site!H4", "plywood");
    await type("Site!I4", "0.5");
    await type("Site!H5", "osb");
    await type("Site!I5", "=1/0");
    await type("Site!F8", "=SILL.R_STACK(H4:I5)");
    await expect.poll(() => value("Site!F8"), SOON).toBe("#VALUE!");
    await expect.poll(() => paneOf("Site!F8"), SOON).toMatch(/row 2[\s\S]*#DIV\/0!/);
    await type("Site!I5", "0.5");
    await expect.poll(() => value("Site!F8"), SOON).toBeTypeOf("number");
  });

  test("Cautions lists errors first and a click goes to the cell", async () => {
    await type("Site!F9", '=SILL.WIND_KZ("tall","C")');
    await expect.poll(() => value("Site!F9"), SOON).toBe("#VALUE!");
    await select("Site!A1");
    await page.getByRole("tab", { name: "Cautions" }).click();
    await page
      .locator("#pane")
      .getByText(/"tall" is not a length/)
      .first()
      .waitFor();
    await page.locator("#pane").getByRole("button", { name: "Site!F9" }).first().click();
    await page.getByRole("tab", { name: "Working" }).click();
    await page.locator("#pane").getByText("Site!F9", { exact: true }).first().waitFor();
    await enter("Site!F9");
    await page.keyboard.press("Delete");
    await page.getByRole("tab", { name: "Cautions" }).click();
    await expect.poll(() => page.getByRole("tabpanel").textContent(), SOON).not.toMatch(/"tall"/);
  });

  test("Functions finds, fills in and inserts", async () => {
    await select("Site!F12");
    await page.getByRole("tab", { name: "Functions" }).click();
    await page.getByRole("searchbox").fill("dew point");
    await page
      .locator("#pane")
      .getByRole("button", { name: /DEW_POINT/ })
      .first()
      .click();
    await page
      .getByLabel(/^temperature/i)
      .first()
      .fill("70");
    await page
      .getByLabel(/^humidity/i)
      .first()
      .fill("50");
    await page.getByRole("button", { name: /^Insert/ }).click();
    await expect.poll(() => value("Site!F12"), SOON).toBeCloseTo(50.5, 1);
  });

  test("Insert asks before it writes over a cell", async () => {
    await select("Site!F12");
    const before = await value("Site!F12");
    await page
      .getByLabel(/^humidity/i)
      .first()
      .fill("80");
    await page.getByRole("button", { name: "Insert in Site!F12" }).click();
    await page.getByText(/Not inserted: Site!F12 holds =SILL\.DEW_POINT\(70, 50\)/).waitFor();
    expect(await value("Site!F12")).toBe(before);
    await page.getByRole("button", { name: "Replace what Site!F12 holds" }).click();
    await expect.poll(() => value("Site!F12"), SOON).toBeGreaterThan((before as number) + 10);
  });

  test("cautions are filtered by words, ticked as seen and hidden", async () => {
    await sheet.view("cautions");
    const found = page.locator("#sw-panel-cautions li.sw-found");
    await expect.poll(() => found.count(), SOON).toBeGreaterThan(10);
    // All that the demo holds has calculated.
    expect(await sheet.panel()).not.toMatch(/\d+ of \d+ cells calculated/);
    // Assumptions are folded by family, and unfold for what is looked for.
    const families = page.locator("#sw-panel-cautions details");
    expect(await families.count()).toBeGreaterThan(5);
    expect(await families.first().locator("li.sw-found").first().isVisible()).toBe(false);
    await page.getByLabel("Only with the words").fill("flat site");
    await families.first().locator("li.sw-found").first().waitFor();
    await page.getByLabel("Only with the words").fill("shear lifting");
    await expect.poll(() => found.count(), SOON).toBe(0);
    await page.getByLabel("Only with the words").fill("preliminary lifting");
    await expect.poll(() => found.count(), SOON).toBe(1);
    await found.getByLabel("seen").check();
    await page.getByLabel("Hide what is ticked as seen").check();
    await expect.poll(() => found.count(), SOON).toBe(0);
    await page.getByLabel("Hide what is ticked as seen").uncheck();
    await expect.poll(() => found.getByLabel("seen").isChecked(), SOON).toBe(true);
    await page.getByLabel("Only with the words").fill("");
  });

  test("Site offers the zone of another county, takes it only when told, and lets go of it", async () => {
    await sheet.view("site");
    await page.getByLabel("County", { exact: true }).fill("Dane");
    await page.getByRole("button", { name: /^Take Climate zone 5A/ }).waitFor();
    expect(await page.getByLabel("Climate zone", { exact: true }).inputValue()).toBe("6A");
    await page.getByRole("button", { name: /^Take Climate zone 5A/ }).click();
    await page.getByRole("button", { name: "Write 2 changes to Basis" }).waitFor();
    expect(await value(basisCell("Climate zone"))).toBe("6A");
    await page.getByRole("button", { name: "Discard" }).click();
    await page.getByRole("button", { name: "No change to write" }).waitFor();
    await page.getByRole("tab", { name: "Functions" }).click();
  });

  test("a table that is loaded when it is first needed arrives in the cell and in the preview", async () => {
    await page.getByRole("tab", { name: "Functions" }).click();
    await page.evaluate(() => document.querySelector<HTMLElement>("#sw-panel-functions .sw-back button")?.click());
    await page.getByRole("searchbox").fill("CLIMATE_ZONE");
    await page
      .locator("#pane")
      .getByRole("button", { name: /CLIMATE_ZONE/ })
      .first()
      .click();
    await page.getByRole("button", { name: "Fill in the example" }).click();
    const zone = String(registry.find(({ name }) => name === "CLIMATE_ZONE")?.example.gives);
    await expect.poll(() => page.locator(".sw-preview").textContent(), SOON).toContain(zone);
    await type("Site!F14", '=SILL.CLIMATE_ZONE("Tuscaloosa","AL")&"!"');
    await expect.poll(() => value("Site!F14"), SOON).toBe("3A!");
    await expect.poll(() => paneOf("Site!F14"), SOON).toContain("climate zones by county");
  });

  test("a search runs in the worker, and its working comes from there too", async () => {
    const { name, example } = search as CellFunction;
    await type("Site!F16", `=ROWS(${formulaOf(search as CellFunction, example.args, "SILL").slice(1)})`);
    await expect.poll(() => value("Site!F16"), { timeout: 20_000 }).toBeTypeOf("number");
    expect(page.workers()).toHaveLength(1);
    await paneOf("Site!F16");
    await expect.poll(() => page.getByRole("tabpanel").textContent(), { timeout: 20_000 }).toMatch(/Sources?/);
    expect(await page.getByRole("tabpanel").textContent()).toContain(name);
    expect(page.workers()).toHaveLength(1);
  });

  test("a builder's notation stays text where it is typed", async () => {
    for (const [cell, text] of Object.entries({
      K20: "12'6",
      K21: "1/2",
      K22: "6:12",
      K23: "7-16",
      K24: "12'-6 1/2\"",
    })) {
      await type(`Site!${cell}`, text);
      await expect.poll(() => value(`Site!${cell}`), SOON).toBe(text);
    }
    await type("Site!L20", "=SILL.LENGTH(K20)");
    await expect.poll(() => value("Site!L20"), SOON).toBeCloseTo(12.5, 10);
    await type("Site!K25", "3.25");
    await expect.poll(() => value("Site!K25"), SOON).toBe(3.25);
  });

  test("F6 goes round sheet, pane, files and toolbar, and the next key goes into the cell", async () => {
    await enter("Site!K28");
    const inPane = () => page.evaluate(() => document.querySelector("#pane")?.contains(document.activeElement));
    const inside = (selector: string) =>
      page.evaluate((s) => document.querySelector(s)?.contains(document.activeElement), selector);
    // The whole round: the pane, the files, the toolbar, and the sheet again.
    for (const place of ["#pane", "#files", "[data-u-comp='ribbon-toolbar']"]) {
      await page.keyboard.press("F6");
      await expect.poll(() => inside(place), SOON).toBe(true);
    }
    await page.keyboard.press("F6");
    await expect.poll(() => inside("[data-u-comp='ribbon-toolbar']"), SOON).toBe(false);
    await page.keyboard.press("F6");
    await expect.poll(inPane, SOON).toBe(true);
    await page.keyboard.press("Shift+F6");
    await expect.poll(inPane, SOON).toBe(false);
    await page.keyboard.type("back");
    await page.keyboard.press("Enter");
    await expect.poll(() => value("Site!K28"), SOON).toBe("back");
  });

  test("every control of the page has a name, and the engine's button that throws is not there", async () => {
    const nameless = await page.evaluate(() =>
      [...document.querySelectorAll("button, input, a[href], [role=button], [role=tab]")]
        .filter(
          (c) =>
            ((c as HTMLInputElement).labels?.length ?? 0) === 0 &&
            c.getAttribute("aria-label") === null &&
            c.textContent?.trim() === "" &&
            c.id === "",
        )
        .map((c) => c.outerHTML.slice(0, 120)),
    );
    expect(nameless).toEqual([]);
    const signs = page.locator("[data-u-comp=formula-bar] .univer-w-20 > span");
    expect(await signs.count()).toBe(3);
    expect(await signs.nth(2).isVisible()).toBe(false);
    expect(sheet.problems).toEqual([]);
  });

  test("the page asked for nothing outside and reported no error", () => {
    expect(sheet.problems).toEqual([]);
  });
});

describe("files", () => {
  test("a file that is none says so, and the work stays", async () => {
    await type("Site!Y3", "9'6");
    await page.setInputFiles("#chooser", { name: "a.xlsx", mimeType: "", buffer: Buffer.from("no workbook") });
    await expect.poll(() => sheet.said(), SOON).toMatch(/The file is no workbook/);
    expect(await value("Site!Y3")).toBe("9'6");
  });

  test("the help stands beside the page: the start, and a function's own place", async () => {
    const [help] = await Promise.all([page.context().waitForEvent("page"), page.locator(".sw-help a").click()]);
    await help.getByRole("heading", { level: 1 }).waitFor();
    await help.close();
    await paneOf(named("VelocityPressure"));
    const link = await page.locator(".sw-help-link a").first().getAttribute("href");
    expect(link).toMatch(/^help\/wind\.html#WIND_/);
    const own = await page.context().newPage();
    await own.goto(`${site.url}/${link}`);
    expect(await own.locator(`article[id="${link?.split("#")[1]}"]`).count()).toBe(1);
    await own.close();
  });
});

const WIDE = { width: 1400, height: 900 };

/** Settings of one page, since opening another takes longer than all that is looked at; zoomed to 200 % a page has half the room. */
const VIEWS = ["working", "cautions", "functions", "templates", "site"] as const;
/** Where only the room changes, the views with most controls stand for all. */
const FULL = new Set<string>(["working", "site"]);

const SETTINGS: readonly (readonly [string, Parameters<Page["emulateMedia"]>[0], typeof WIDE])[] = [
  ["light", { colorScheme: "light", forcedColors: "none" }, WIDE],
  ["dark", { colorScheme: "dark", forcedColors: "none" }, WIDE],
  ["forced colors", { colorScheme: "light", forcedColors: "active" }, WIDE],
  ["320 px", { colorScheme: "light", forcedColors: "none" }, { width: 320, height: 700 }],
  ["zoom 200 %", { colorScheme: "light", forcedColors: "none" }, { width: 700, height: 450 }],
];

describe("everyone", () => {
  beforeAll(async () => {
    await select(named("VelocityPressure"));
    await page.evaluate(axe);
  });

  test.each(SETTINGS)(
    "%s: the whole page has no accessibility fault, and nothing sticks out in any view",
    async (_, media, size) => {
      await page.emulateMedia(media);
      await page.setViewportSize(size);
      for (const view of VIEWS) {
        await sheet.view(view);
        expect(await page.evaluate("document.documentElement.scrollWidth <= innerWidth"), view).toBe(true);
        if (size !== WIDE && !FULL.has(view)) continue;
        const faults = await page.evaluate(
          "axe.run(document, { resultTypes: ['violations'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target.join(' ')).join(', ')))",
        );
        expect(faults, view).toEqual([]);
      }
    },
  );

  test("the page asked for nothing outside and reported no error", () => expect(sheet.problems).toEqual([]));
});
