import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { expect } from "vitest";
import { addressText, type NamedRows, parseAddress } from "../../src/workbook/host.ts";
import type { CellAddress } from "../../src/workbook/ledger.ts";
import type { Scan } from "../../src/workbook/scan.ts";
import { top } from "./launch.ts";
import { serve } from "./serve.ts";

/** The sheet as the page leaves it on the window. */
interface Sheet {
  focus(): void;
  selection(): Promise<CellAddress | undefined>;
  goTo(address: CellAddress): Promise<void>;
  valueAt(address: CellAddress): Promise<string | number | boolean | undefined>;
  formulaAt(address: CellAddress): Promise<string>;
  readName(name: string): Promise<NamedRows | undefined>;
  scan(): Promise<Scan>;
}
declare const window: { readonly tryOutSheet: Sheet };

/** Patience with a busy machine. */
export const SOON = { timeout: 30_000 };

export type Site = Awaited<ReturnType<typeof serve>>;

/** Serves the built try-out sheet. */
export const serveTryOut = (): Promise<Site> => serve(`${top}.cache/tryout`);

export function at(text: string): CellAddress {
  const address = parseAddress(text);
  if (address === undefined) throw new Error(`no address: ${text}`);
  return address;
}

/** A page with the try-out sheet, and what a person does in it. */
export class TryOut {
  readonly page: Page;
  /** errors of the page, and what it asked for outside */
  readonly problems: readonly string[];
  /** what the page has asked, each time answered with yes: "beforeunload", or a sentence */
  readonly asked: readonly string[];

  private constructor(page: Page, problems: readonly string[], asked: readonly string[]) {
    this.page = page;
    this.problems = problems;
    this.asked = asked;
  }

  static async open(browser: Browser, site: Site, options: BrowserContextOptions = {}): Promise<TryOut> {
    const context = await browser.newContext({ viewport: { width: 1400, height: 900 }, ...options });
    const page = await context.newPage();
    const problems: string[] = [];
    page.setDefaultTimeout(30_000);
    page.on("pageerror", (error) => problems.push(error.message));
    page.on("console", (message) => {
      if (message.type() === "error") problems.push(message.text());
    });
    const asked: string[] = [];
    page.on("dialog", (dialog) => {
      asked.push(dialog.type() === "beforeunload" ? "beforeunload" : dialog.message());
      void dialog.accept();
    });
    await context.route("**/*", (route) => {
      if (new URL(route.request().url()).origin === site.url) return route.continue();
      problems.push(`asks for ${route.request().url()}`);
      return route.abort();
    });
    await page.goto(site.url);
    await page.waitForSelector("html[data-ready=yes]");
    return new TryOut(page, problems, asked);
  }

  async close(): Promise<void> {
    await this.page.context().close();
  }

  select(where: string): Promise<void> {
    return this.page.evaluate((a) => window.tryOutSheet.goTo(a), at(where));
  }

  value(where: string): Promise<string | number | boolean | undefined> {
    return this.page.evaluate((a) => window.tryOutSheet.valueAt(a), at(where));
  }

  async selected(): Promise<string> {
    return addressText((await this.page.evaluate(() => window.tryOutSheet.selection())) as CellAddress);
  }

  /** Selects a cell and lets the keys go there. */
  async enter(where: string): Promise<void> {
    await this.select(where);
    await this.page.evaluate(() => window.tryOutSheet.focus());
  }

  /** Selects a cell, types as a person does, and leaves the cell. */
  async type(where: string, text: string): Promise<void> {
    await this.enter(where);
    await this.page.keyboard.type(text);
    await this.leave(where);
  }

  /** The cell is left when the selection stands below it; a list of names that opens late takes the first Enter for itself. */
  async leave(where: string): Promise<void> {
    await expect
      .poll(async () => {
        if ((await this.selected()) === where) await this.page.keyboard.press("Enter");
        return this.selected();
      }, SOON)
      .not.toBe(where);
  }

  /** Selects so many cells of a row from the left. */
  async enterRow(where: string, columns: number): Promise<void> {
    await this.enter(where);
    for (let i = 1; i < columns; i++) await this.page.keyboard.press("Shift+ArrowRight");
  }

  /** The rows that a name of the workbook stands for. */
  async named(name: string): Promise<NamedRows> {
    const rows = await this.page.evaluate((n) => window.tryOutSheet.readName(n), name);
    if (rows === undefined) throw new Error(`The workbook has no name ${name}`);
    return rows;
  }

  /** The first cell of the row of a named table that begins with these words; "" finds the first free row. */
  async rowOf(name: string, begins: string): Promise<string> {
    const { first, rows } = await this.named(name);
    const row = rows.findIndex(([cell]) => cell === begins);
    if (row < 0) throw new Error(`${name} has no row ${begins}`);
    return addressText({ ...first, row: first.row + row });
  }

  /** Every cell of the workbook that shows an error. */
  async errors(): Promise<string[]> {
    const { cells } = await this.page.evaluate(() => window.tryOutSheet.scan());
    return cells.filter(({ error }) => error !== "").map(({ address, error }) => `${addressText(address)} ${error}`);
  }

  /** Brings a view of the pane into sight. */
  async view(id: "working" | "cautions" | "functions" | "templates" | "site"): Promise<void> {
    await this.page.locator(`#sw-tab-${id}`).click();
    await this.page.locator(`#sw-panel-${id} > *`).first().waitFor();
  }

  /** The text of the view in sight. */
  async panel(): Promise<string> {
    return (await this.page.getByRole("tabpanel").textContent()) ?? "";
  }

  /** What the pane shows of a cell, once it shows that cell. */
  async paneOf(where: string): Promise<string> {
    await this.select(where);
    await this.view("working");
    await this.page.locator("#pane").getByText(where, { exact: true }).first().waitFor();
    return this.panel();
  }

  async said(): Promise<string> {
    return (await this.page.locator("#said").textContent()) ?? "";
  }

  /** Clicks a button that hands over a file; gives its name and its path. */
  async download(button: string): Promise<{ name: string; path: string }> {
    const [download] = await Promise.all([this.page.waitForEvent("download"), this.page.click(button)]);
    return { name: download.suggestedFilename(), path: await download.path() };
  }

  async openFile(name: string, buffer: Buffer): Promise<void> {
    await this.page.setInputFiles("#chooser", { name, mimeType: "", buffer });
    await expect.poll(() => this.said(), SOON).toContain(`${name} is open.`);
  }
}
