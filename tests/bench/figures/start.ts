/** How long Excel would wait for the functions: the built page in a browser, with Office's own script from this machine. */
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { Browser } from "playwright-core";
import { functionNames } from "../../../src/functions/declare/names.ts";
import { launch } from "../../browser/launch.ts";
import { serve } from "../../browser/serve.ts";
import { type Line, line } from "./line.ts";

const OFFICE_ADDRESS = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";
const LOADS = 15;

/** Milliseconds of one load of the page. */
interface Load {
  /** from the first statement of office.js until Office.onReady answers */
  readonly office: number;
  /** from the first statement of our script until the last id is associated */
  readonly ours: number;
  /** from the request of the page until either */
  readonly officeAt: number;
  readonly oursAt: number;
  /** from a first call of a cell, with its family not loaded yet, until its answer */
  readonly firstCall: number;
}

/** The built page with marks before the first and after the last statement of both scripts, and nothing else changed. */
function marked(): string {
  const folder = mkdtempSync(join(tmpdir(), "sillwork-"));
  cpSync("dist", folder, { recursive: true });
  const page = readFileSync(join(folder, "taskpane.html"), "utf8");
  if (!page.includes(OFFICE_ADDRESS)) throw new Error("the page asks for no office.js");
  writeFileSync(join(folder, "taskpane.html"), page.replaceAll(OFFICE_ADDRESS, "office.js"));
  const wrap = (from: string, name: string, end: string) =>
    writeFileSync(join(folder, name), `performance.mark("${name}");${readFileSync(from, "utf8")}\n${end}`);
  wrap(join(officeFolder(), "office.js"), "office.js", KEEP);
  wrap(join(folder, "functions.js"), "functions.js", 'performance.mark("functions ready");');
  writeFileSync(join(folder, ALONE), '<!doctype html><script src="office.js"></script>');
  return folder;
}

const ALONE = "office-alone.html";

/** Milliseconds from the first statement of office.js until Office.onReady answers, in a page with nothing else. */
async function officeAlone(browser: Browser, url: string): Promise<number> {
  const { context, page } = await opened(browser, url, ALONE);
  const took = await page.evaluate(
    'performance.getEntriesByName("office ready")[0].startTime - performance.getEntriesByName("office.js")[0].startTime',
  );
  await context.close();
  return took as number;
}

/** A page as a browser opens it that has seen nothing of it, once Office has answered. */
async function opened(browser: Browser, url: string, path: string) {
  const context = await browser.newContext();
  const page = await context.newPage();
  // Office's script asks its own servers for leave to tell them how it is used; the answer is awaited by nobody.
  await page.route("**/*", (route) => (route.request().url().startsWith(url) ? route.continue() : route.abort()));
  await page.goto(`${url}/${path}`);
  await page.waitForFunction('performance.getEntriesByName("office ready").length > 0');
  return { context, page };
}

function officeFolder(): string {
  return dirname(createRequire(join(process.cwd(), "package.json")).resolve("@microsoft/office-js/dist/office.js"));
}

/** Ends office.js: keeps each function that is associated from here on, for a call, and lets Office's own association happen. */
const KEEP = `
  Office.onReady(() => performance.mark("office ready"));
  window.associated = new Map();
  const associate = CustomFunctions.associate;
  CustomFunctions.associate = (id, fn) => {
    window.associated.set(id, fn);
    return associate(id, fn);
  };
`;

const READ = `(async () => {
  const at = (name) => performance.getEntriesByName(name)[0].startTime;
  const before = performance.now();
  const answer = await window.associated.get("WINDKZ")(30, "C");
  const firstCall = performance.now() - before;
  return {
    ids: window.associated.size,
    answer,
    load: {
      office: at("office ready") - at("office.js"),
      ours: at("functions ready") - at("functions.js"),
      officeAt: at("office ready"),
      oursAt: at("functions ready"),
      firstCall,
    },
  };
})()`;

async function loaded(browser: Browser, url: string): Promise<Load> {
  const { context, page } = await opened(browser, url, "taskpane.html");
  await page.waitForFunction("document.documentElement.dataset.functions !== undefined");
  const { ids, answer, load } = (await page.evaluate(READ)) as { ids: number; answer: unknown; load: Load };
  await context.close();
  if (ids !== functionNames.length) throw new Error(`${ids} ids were associated`);
  if (typeof answer !== "number") throw new Error(`a call gave ${String(answer)}`);
  return load;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

export async function start(): Promise<Line[]> {
  if (!existsSync("dist/functions.js")) return [line("Start of the page", "no build: npm run build first")];
  const folder = marked();
  const site = await serve(folder, officeFolder());
  const browser = await launch();
  const loads: Load[] = [];
  const alone: number[] = [];
  for (let i = 0; i < LOADS; i++) {
    loads.push(await loaded(browser, site.url));
    alone.push(await officeAlone(browser, site.url));
  }
  await browser.close();
  await site.close();
  rmSync(folder, { recursive: true, force: true });
  const ms = (pick: (load: Load) => number) => median(loads.map(pick));
  const [office, ours] = [ms((l) => l.office), ms((l) => l.ours)];
  const of = `median of ${LOADS} loads by Chromium outside Excel, office.js ${officeVersion()} and the page from this machine`;
  return [
    line(
      `From a script's first statement: all ${functionNames.length} functions registered, against Office.onReady of office.js in the same page (${of})`,
      `${ours.toFixed(1)} against ${office.toFixed(1)} ms`,
      "not longer",
      ours <= office,
    ),
    line(
      "The same against office.js in a page with nothing else; in Excel it then also waits for Excel, so this is the least that it takes",
      `${ours.toFixed(1)} against ${median(alone).toFixed(1)} ms`,
      "not longer",
      ours <= median(alone),
    ),
    line(
      "From the request of the page, with office.js and all else that comes before",
      `${ms((l) => l.oursAt).toFixed(0)} against ${ms((l) => l.officeAt).toFixed(0)} ms`,
    ),
    line("A cell's first call, which loads its family, until the answer", `${ms((l) => l.firstCall).toFixed(0)} ms`),
  ];
}

function officeVersion(): string {
  const { version } = JSON.parse(readFileSync(join(officeFolder(), "../package.json"), "utf8")) as { version: string };
  return version;
}
