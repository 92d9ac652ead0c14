import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, test, vi } from "vitest";
import { excelHost } from "../src/hosts/excel/host.ts";
import { copyText } from "../src/pane/parts/numbers.ts";
import { placeKey, type WorkbookFile } from "../src/workbook/file/model.ts";
import { readWorkbook } from "../src/workbook/file/read.ts";
import { writeWorkbook } from "../src/workbook/file/write.ts";
import { Ledger } from "../src/workbook/ledger.ts";
import { FakeWorkbook } from "./hosts/excel/stand-in/book.ts";

/** What DEVELOPERS.md says under "Threats", held by tests. */

const top = fileURLToPath(new URL("..", import.meta.url));

function files(folder: string): string[] {
  return readdirSync(join(top, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return files(path);
    return /\.(ts|js|mjs)$/.test(entry.name) ? [path] : [];
  });
}

/** Text of the sources without comments. */
const sources = files("src").map((path) => ({
  path,
  text: readFileSync(join(top, path), "utf8").replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, ""),
}));

afterEach(() => vi.unstubAllGlobals());

describe("no source", () => {
  test.each([
    [
      "makes markup of text",
      /\.(?:inner|outer)HTML\b|insertAdjacentHTML|document\.write|unsafe(?:HTML|SVG|Static)|srcdoc/,
    ],
    ["runs text as code", /\beval\s*\(|new Function\b|set(?:Timeout|Interval)\(\s*["'`]|javascript:/],
  ])("%s", (_, pattern) => {
    expect(sources.filter(({ text }) => pattern.test(text)).map(({ path }) => path)).toEqual([]);
  });

  test("that a page loads asks any address for anything", () => {
    const pages = sources.filter(
      ({ path }) => /^src\/(core|functions|workbook|templates|pane|hosts)\//.test(path) && !path.endsWith(".mjs"),
    );
    const asks = /\bfetch\s*\(|XMLHttpRequest|sendBeacon|WebSocket|EventSource|importScripts/;
    expect(pages.filter(({ text }) => asks.test(text)).map(({ path }) => path)).toEqual([]);
    const addresses = pages.flatMap(({ path, text }) =>
      (text.match(/https?:\/\/[^\s"'`)]+/g) ?? []).map((address) => `${path} ${address}`),
    );
    // The names of SVG's own vocabulary are addresses that nobody asks.
    expect(addresses.filter((address) => !address.includes("http://www.w3.org/"))).toEqual([]);
  });
});

describe("the policy of", () => {
  const policy = (path: string) => {
    const [, content = ""] =
      /Content-Security-Policy"\s+content="([^"]*)"/.exec(readFileSync(join(top, path), "utf8")) ?? [];
    return new Map(
      content.split(";").map((part) => {
        const [name = "", ...values] = part.trim().split(/\s+/);
        return [name, values.join(" ")] as const;
      }),
    );
  };

  test.each(["src/hosts/excel/taskpane.html", "src/hosts/tryout/sheet/tryout.html"])(
    "%s lets no text run and nothing leave",
    (path) => {
      const rules = policy(path);
      const scripts = rules.get("script-src") ?? rules.get("default-src") ?? "";
      expect(scripts).not.toMatch(/unsafe|data:|blob:|\*|https?:/);
      expect(rules.get("connect-src")?.replace("<%= officeOrigin %>", "").trim()).toBe("'self'");
      expect(rules.get("base-uri")).toBe("'none'");
      expect(rules.get("form-action")).toBe("'none'");
      expect([...rules.values()].join(" ")).not.toContain("unsafe-eval");
      // Office on the web and the embedded spreadsheet put styles into the page; nothing else may be inline.
      expect([...rules].filter(([, values]) => values.includes("unsafe-inline")).map(([name]) => name)).toEqual([
        "style-src",
      ]);
    },
  );
});

const SIGNS = ["=1+1", "+1", "-1", "@SUM(A1)", "=cmd|' /C calc'!A0", "\t=1+1", "'=1+1"];

describe("a text that begins like a formula stays a text", () => {
  test("in worksheets that the add-in writes", async () => {
    const book = new FakeWorkbook({ Start: {} });
    const host = excelHost(new Ledger());
    await host.writeSheet(
      "Report",
      SIGNS.map((text) => [text]),
    );
    await host.writeBasis?.([["Basis", "Value", "Unit"], ...SIGNS.map((text) => ["Project", text, ""])]);
    SIGNS.forEach((text, i) => {
      expect(book.sheet("Report")?.at(`A${i + 1}`)).toMatchObject({ value: text, text: true });
      expect(book.sheet("Site basis")?.at(`B${i + 2}`)).toMatchObject({ value: text, text: true });
    });
  });

  test("in what the pane copies", () => {
    for (const text of SIGNS.filter((text) => !text.startsWith("'"))) {
      expect(copyText(text)).toMatch(/^'\s*[=+\-@]/);
      expect(copyText([["a", text]])).toMatch(/^a\t'\s*[=+\-@]/);
    }
    expect(copyText([[-1, "6:12", "-"]])).toBe("-1\t6:12\t'-");
  });

  test("in files", async () => {
    const cells = new Map(SIGNS.map((value, row) => [placeKey(row, 0), { value }] as const));
    const file: WorkbookFile = { title: "Signs", sheets: [{ name: "A", cells, widths: [] }], names: [] };
    const { file: back } = await readWorkbook(await writeWorkbook(file, { version: "0.1.0" }), "Signs");
    SIGNS.forEach((value, row) => {
      expect(back.sheets[0]?.cells.get(placeKey(row, 0))).toEqual({ value });
    });
  });
});
