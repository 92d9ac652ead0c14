import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { pageOfFamily } from "../../src/functions/find/help-place.ts";
import { registry } from "../../src/functions/registry.ts";
import { templates } from "../../src/templates/index.ts";
import { readWorkbook } from "../../src/workbook/file/read.ts";
import { callsOurs } from "../../src/workbook/formula.ts";
import { addIn, launch } from "./launch.ts";
import { serve } from "./serve.ts";

/** Office's own script, the package's copy, served from this machine in place of its address. */
const office = dirname(createRequire(import.meta.url).resolve("@microsoft/office-js/dist/office.js"));
const OFFICE_ADDRESS = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

/** What office.js asks for by itself, told by DEVELOPERS.md; the page's policy lets none of it through today. */
const ASKED_BY_OFFICE = ["telemetryservice.firstpartyapps.oaspapps.com"];

let browser: Browser;
let site: Awaited<ReturnType<typeof serve>>;
let folder: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "sillwork-"));
  cpSync(addIn(), folder, { recursive: true });
  const page = readFileSync(join(folder, "taskpane.html"), "utf8");
  expect(page).toContain(OFFICE_ADDRESS);
  // The shipped page with nothing changed but where Office's script comes from; the policy keeps its 'self'.
  writeFileSync(join(folder, "taskpane.html"), page.replaceAll(OFFICE_ADDRESS, "office.js"));
  site = await serve(folder, office);
  browser = await launch();
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
  rmSync(folder, { recursive: true, force: true });
});

test("the built page associates every id with the real office.js, under its own policy, without an error", async () => {
  const page = await browser.newPage();
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(message.text());
  });
  const outside: string[] = [];
  await page.route("**/*", (route) => {
    const url = new URL(route.request().url());
    if (url.origin === site.url) return route.continue();
    outside.push(url.href);
    return route.abort();
  });
  await page.goto(`${site.url}/taskpane.html`);
  await page.getByRole("tab", { name: "Functions" }).waitFor();
  await page.waitForFunction(() => document.documentElement.dataset.functions !== undefined);
  const count = await page.evaluate(() => document.documentElement.dataset.functions);
  expect(Number(count)).toBe(registry.length);
  // Where Office itself keeps what it was told.
  const ids = (await page.evaluate("Object.keys(CustomFunctions._association.mappings)")) as string[];
  expect([...ids].sort()).toEqual(registry.map((fn) => fn.id).sort());
  const metadata = JSON.parse(readFileSync(join(folder, "functions.json"), "utf8")) as { functions: { id: string }[] };
  expect(metadata.functions.map((fn) => fn.id).sort()).toEqual(registry.map((fn) => fn.id).sort());
  // The help stands beside the pane here too.
  expect(await page.locator(".sw-help a").getAttribute("href")).toBe("help/index.html");
  // Through every view, with something typed and a function opened.
  for (const tab of await page.getByRole("tab").all()) await tab.click();
  await page.getByRole("tab", { name: "Functions" }).click();
  await page.getByRole("searchbox").first().fill("drywall");
  await page.waitForTimeout(300);
  expect(outside.filter((address) => !ASKED_BY_OFFICE.includes(new URL(address).hostname))).toEqual([]);
  const own = errors.filter((text) => !/telemetryservice|ERR_FAILED|ERR_ABORTED/.test(text));
  expect(own).toEqual([]);
});

test("every template stands beside the page as a file with our formulas in it", async () => {
  const files = readdirSync(join(folder, "templates"));
  expect(files.sort()).toEqual(templates.map(({ name }) => `${name}.xlsx`).sort());
  const { file } = await readWorkbook(readFileSync(join(folder, "templates", "Wind schedule.xlsx")), "Wind schedule");
  const formulas = file.sheets.flatMap(({ cells }) => [...cells.values()].flatMap(({ formula }) => formula ?? []));
  expect(formulas.filter(callsOurs).length).toBeGreaterThan(5);
});

test("the help pages open and hold an anchor for every function, and the start page finds them", async () => {
  const page = await browser.newPage();
  for (const family of new Set(registry.map((fn) => fn.family))) {
    await page.goto(`${site.url}/help/${pageOfFamily(family)}`);
    for (const fn of registry.filter((f) => f.family === family)) {
      expect(await page.locator(`[id="${fn.name}"]`).count(), fn.name).toBe(1);
    }
  }
  await page.goto(`${site.url}/help/index.html`);
  await page.fill("#search", "drywall");
  await expect.poll(() => page.locator("#all li:visible").count()).toBeLessThan(registry.length / 3);
  expect(await page.locator("#all li:visible").allTextContents()).toEqual(
    expect.arrayContaining([expect.stringContaining("LINING")]),
  );
  await page.fill("#search", "how many sheets?");
  await expect
    .poll(() => page.locator("#all li:visible").allTextContents())
    .toContainEqual(expect.stringContaining("SHEETS_NEEDED"));
});
