import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { functionNamed } from "../../src/functions/registry.ts";
import { invoke } from "../../src/functions/run/invoke.ts";
import { addIn, launch, top } from "./launch.ts";
import { serve } from "./serve.ts";

let browser: Browser;
let folder: string;
let site: Awaited<ReturnType<typeof serve>>;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "sillwork-"));
  const entryPoints = ["page", "worker"].map((name) => `${top}tests/browser/searches/${name}.ts`);
  await build({ entryPoints, outdir: folder, bundle: true, format: "iife", target: "es2022", logLevel: "error" });
  const policy = (more: string) =>
    `<!doctype html><meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; ${more}"><script src="page.js"></script>`;
  writeFileSync(join(folder, "searches.html"), policy("worker-src 'self'"));
  writeFileSync(join(folder, "forbidden.html"), policy("worker-src 'none'"));
  site = await serve(folder, addIn());
  browser = await launch();
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
  rmSync(folder, { recursive: true, force: true });
});

describe("a page with a real worker", () => {
  /** Opens a page and asks it for searches of so many milliseconds. */
  async function asking(path: string): Promise<{ page: Page; ask: (...ms: number[]) => Promise<Asked> }> {
    const page = await browser.newPage();
    await page.goto(`${site.url}/${path}`);
    return { page, ask: (...ms) => page.evaluate(`ask(${ms.join()})`) };
  }
  interface Asked {
    readonly outcomes: readonly unknown[];
    readonly turns: number;
  }
  const took = (ms: number) => ({ ok: true, value: ms });

  test("stays alive while it searches, and searches once for all that ask for the same", async () => {
    const { page, ask } = await asking("searches.html");
    const { outcomes, turns } = await ask(1500, 1500, 1500);
    expect(outcomes).toEqual([took(1500), took(1500), took(1500)]);
    // A page that searches itself gets no turn before the answer.
    expect(turns).toBeGreaterThan(5);
    expect(page.workers()).toHaveLength(1);
    await page.close();
  });

  test("makes the search itself when the worker dies, and then starts another", async () => {
    const { page, ask } = await asking("searches.html");
    expect((await ask(1)).outcomes).toEqual([took(1)]);
    expect((await ask(666)).outcomes).toEqual([took(666)]);
    expect((await ask(2)).outcomes).toEqual([took(2)]);
    expect(page.workers()).toHaveLength(1);
    await page.close();
  });

  test("makes the searches itself where its policy forbids workers", async () => {
    const { page, ask } = await asking("forbidden.html");
    expect((await ask(30, 40)).outcomes).toEqual([took(30), took(40)]);
    expect(page.workers()).toHaveLength(0);
    await page.close();
  });
});

describe("the built add-in", () => {
  const scripts = () => readdirSync(addIn()).filter((name) => name.endsWith(".js"));
  const source = (name: string) => readFileSync(join(addIn(), name), "utf8");
  const nest = functionNamed("SHEETS_NEEDED") as CellFunction;
  /** A county and a station that stand in no declaration. */
  const MARKS = ["Tuscaloosa", "Sacramento Metropolitan"];

  test("keeps the tables out of what loads at the start; each is a small file of its own", () => {
    const entry = scripts().filter((name) => source("taskpane.html").includes(name));
    expect(entry.length).toBeGreaterThan(0);
    for (const mark of MARKS) {
      const holders = scripts().filter((name) => source(name).includes(mark));
      expect(holders).toHaveLength(1);
      expect(entry).not.toContain(holders[0]);
      expect(gzipSync(source(holders[0] ?? "")).length).toBeLessThanOrEqual(60_000);
    }
  });

  /** The shipped page under its own policy, with the part of office.js that associates functions. */
  async function addInPage(): Promise<Page> {
    const page = await browser.newPage();
    await page.route("**/*", (route) =>
      new URL(route.request().url()).origin === site.url ? route.continue() : route.abort(),
    );
    await page.addInitScript(`
      window.functions = {};
      window.CustomFunctions = { associate: (id, fn) => { window.functions[id] = fn; } };
      window.Office = { onReady: () => {} };
    `);
    await page.goto(`${site.url}/taskpane.html`);
    await page.waitForFunction(() => document.documentElement.dataset.functions !== undefined);
    return page;
  }

  test("loads a family when a cell first calls it, then a table when one first asks for it; each once", async () => {
    const page = await addInPage();
    const asked: string[] = [];
    page.on("request", (request) => asked.push(new URL(request.url()).pathname));
    const figure = "[1, 2].map(() => functions.UCODE('wood wall', '5A', '2021'))";
    expect(await page.evaluate(`Promise.all(${figure})`)).toEqual([0.045, 0.045]);
    expect(await page.evaluate(figure)).toEqual([0.045, 0.045]);
    expect(asked).toContainEqual(expect.stringMatching(/^\/enclosure\.[0-9a-f]{10}\.js$/));
    expect(asked.some((path) => path.startsWith("/wind."))).toBe(false);
    expect(asked).toHaveLength(new Set(asked).size);
    asked.length = 0;
    const given = `[1, 2].map(() => functions.CLIMATEZONE("DeKalb", "AL"))`;
    expect(await page.evaluate(`${given}.every((zone) => zone instanceof Promise)`)).toBe(true);
    expect(await page.evaluate(`Promise.all(${given})`)).toEqual(["3A", "3A"]);
    expect(await page.evaluate(given)).toEqual(["3A", "3A"]);
    expect(asked).toEqual([expect.stringMatching(/^\/county-zones\.[0-9a-f]{10}\.js$/)]);
    await page.close();
  });

  test("searches beside the page, and answers at once what it has searched before", async () => {
    const page = await addInPage();
    const given = `functions.SHEETSNEEDED(${JSON.stringify(positional(nest, nest.example.args)).slice(1, -1)})`;
    expect(await page.evaluate(`${given} instanceof Promise`)).toBe(true);
    const found = await page.evaluate(given);
    expect(found).toEqual(await page.evaluate(`[${given}][0]`));
    expect(await page.evaluate(`${given} instanceof Promise`)).toBe(false);
    expect(invoke(nest, positional(nest, nest.example.args))).toEqual({ ok: true, value: found });
    expect(page.workers()).toHaveLength(1);
    await page.close();
  });

  test("has a worker file that starts under the page's policy and answers, with the tables too", async () => {
    const [file] = scripts().filter((name) => /^searches\.[0-9a-f]{10}\.js$/.test(name));
    expect(file).toBeDefined();
    const page = await addInPage();
    const said = await page.evaluate(`new Promise((done, fail) => {
      const said = [];
      const worker = new Worker("${file}");
      worker.onerror = (event) => fail(new Error(event.message));
      worker.onmessage = ({ data }) => said.push(data) === 3 && done(said);
      worker.postMessage({ turn: 1, wants: "outcome", id: "CLIMATEZONE", args: ["DeKalb", "AL"] });
      worker.postMessage({ turn: 2, wants: "outcome", id: "NOSUCH", args: [] });
    })`);
    const answer = { turn: 1, found: { ok: true, value: "3A" } };
    expect(said).toHaveLength(3);
    expect(said).toEqual(expect.arrayContaining(["ready", answer, { turn: 2 }]));
    await page.close();
  });
});
