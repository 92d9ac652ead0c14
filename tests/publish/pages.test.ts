import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { sentence } from "../../src/core/kit/refusal.ts";
import { cellFunction, NAMESPACE, quantityOf } from "../../src/functions/declare/cell-function.ts";
import { formulaOf, positional, refusedArguments } from "../../src/functions/declare/formula.ts";
import { number } from "../../src/functions/declare/scalar.ts";
import { FILLERS } from "../../src/functions/find/trade-words.ts";
import { registry } from "../../src/functions/registry.ts";
import { invoke } from "../../src/functions/run/invoke.ts";
import found from "../../src/publish/help/how-close.json" with { type: "json" };
import type { HowClose } from "../../src/publish/help/how-close.ts";
import { escaped, html } from "../../src/publish/help/html.ts";
import { helpPages } from "../../src/publish/help/pages.ts";
import { helpPath } from "../../src/publish/metadata.ts";

const FOUND = found as Readonly<Record<string, HowClose>>;
const pages = helpPages(registry, "1.2.3");
const contentOf = (path: string) => pages.find((page) => page.path === path)?.content ?? "";

test("every function has the anchor that its help address names, and an entry in the contents", () => {
  for (const fn of registry) {
    const [path = "", anchor = ""] = helpPath(fn).split("#");
    expect(contentOf(path).split(`id="${anchor}"`), fn.name).toHaveLength(2);
    expect(contentOf(path)).toContain(`<a href="#${anchor}">`);
    for (const source of fn.sources) expect(contentOf(path)).toContain(escaped(source));
  }
});

describe.each(registry.map((fn) => [fn.name, fn] as const))("the help of %s shows", (name, fn) => {
  const [path = ""] = helpPath(fn).split("#");
  const [, article = ""] = new RegExp(`<article id="${name}"([\\s\\S]*?)</article>`).exec(contentOf(path)) ?? [];

  test("each refused call with the whole sentence of its cell", () => {
    for (const refused of fn.refuses) {
      const args = refusedArguments(fn, refused);
      const outcome = invoke(fn, positional(fn, args));
      expect(outcome.ok).toBe(false);
      expect(article).toContain(escaped(formulaOf(fn, args, NAMESPACE)));
      if (!outcome.ok) expect(article).toContain(escaped(sentence(outcome.said)));
    }
  });

  test("when to go elsewhere, since when it is there and what has changed", () => {
    expect(article).toContain(escaped(fn.notFor));
    expect(article).toContain(`Since version ${fn.since}.`);
    for (const { since, what } of fn.changed) expect(article).toContain(escaped(`Changed in ${since}: ${what}.`));
  });

  test("how close it comes, on the page for that", () => {
    const [row] = contentOf("help/close.html").match(new RegExp(`<tr>(?:(?!</tr>).)*>${name}<.*?</tr>`, "s")) ?? [];
    expect(row).toContain(`${FOUND[name]?.printed}`);
    const worst = FOUND[name]?.worst;
    if (worst) expect(row).toContain(escaped(worst.row));
  });
});

test("no help text sends the reader to a function that is not there", () => {
  const known = new Set(registry.map((fn) => fn.name));
  const named = new Set(pages.flatMap((page) => page.content.match(/\b[A-Z]{3,}_[A-Z]{2,}\b/g) ?? []));
  expect([...named].filter((name) => !known.has(name))).toEqual([]);
});

test.each(pages.map((page) => [page.path, page.content] as const))(
  "%s is sound markup without script",
  (path, content) => {
    expect(content.startsWith("<!doctype html>")).toBe(true);
    const start = path === "help/index.html";
    // Nothing inline, and a script on the start page alone.
    expect(/Content-Security-Policy" content="([^"]*)"/.exec(content)?.[1]?.replaceAll("&#39;", "'")).toBe(
      `default-src 'none'; style-src 'self'${start ? "; script-src 'self'" : ""}`,
    );
    const text = start ? content.replace('<script src="search.js"></script>', "") : content;
    expect(text).not.toMatch(/<script|\son\w+=|style=|undefined|\[object/i);
    const ids = [...content.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
    expect(new Set(ids).size).toBe(ids.length);
    expect(unclosed(content)).toEqual([]);
    for (const [, href = ""] of content.matchAll(/ href="([^"]+)"/g)) {
      const [file = "", anchor] = href.split("#");
      if (file === "pages.css") continue;
      const target = file === "" ? content : contentOf(`help/${file}`);
      expect(target, `${path} links to ${href}`).not.toBe("");
      if (anchor !== undefined) expect(target, `${path} links to ${href}`).toContain(`id="${anchor}"`);
    }
  },
);

test("texts of a declaration never become markup", () => {
  const sly = cellFunction({
    name: "SLY",
    family: "Wind",
    summary: `<script>alert("x")</script> & more`,
    params: { value: number({ says: `"><img src=x onerror='x'>` }) },
    returns: quantityOf("<b>", "nothing"),
    sources: ["<i>"],
    example: { args: { value: 1 }, gives: 1, within: 0, source: "</p>" },
    refuses: [{ args: {}, says: ">a<i>" }],
    notFor: "none, because it is for tests.",
    run: () => 1,
  });
  const content = helpPages([sly], "1.0.0")
    .map((page) => page.content)
    .join("")
    .replace('<script src="search.js"></script>', "");
  expect(content).not.toMatch(/<script|<img|<b>|<i>/);
  expect(content).toContain("&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; more");
  expect(unclosed(content)).toEqual([]);
});

test("the template escapes text and lets markup of its own through", () => {
  expect(html`<p title="${`"<&'`}">${html`<b>${"<"}</b>`}${[1, html`<br>`]}</p>`.markup).toBe(
    '<p title="&quot;&lt;&amp;&#39;"><b>&lt;</b>1<br></p>',
  );
});

/** Tags that are opened and not closed, or closed and not opened. */
function unclosed(content: string): string[] {
  const open: string[] = [];
  const wrong: string[] = [];
  for (const [, close, tag = ""] of content.matchAll(/<(\/?)([a-z][a-z0-9]*)\b[^>]*>/g)) {
    if (["meta", "link", "br", "input"].includes(tag)) continue;
    if (close === "") open.push(tag);
    else if (open.at(-1) === tag) open.pop();
    else wrong.push(`/${tag}`);
  }
  return [...open, ...wrong];
}

test("a question finds its function on the page as it does in the pane: words that say nothing are left out of it", () => {
  const start = contentOf("help/index.html");
  const fillers = /data-fillers="([^"]*)"/.exec(start)?.[1]?.split(" ") ?? [];
  expect(fillers).toEqual([...FILLERS]);
  const words = "how many sheets".split(" ").filter((word) => !fillers.includes(word));
  const entries = [...start.matchAll(/<li data-words="([^"]*)"><a href="[^"]*#(\w+)"/g)];
  const found = entries.filter(([, own = ""]) => words.every((word) => own.includes(word))).map(([, , name]) => name);
  expect(found).toContain("SHEETS_NEEDED");
});

test("the pages print: without the way round, tables whole, headings with what they head", () => {
  const paper = /@media print \{([\s\S]*)\n\}/.exec(readFileSync("src/publish/help/pages.css", "utf8"))?.[1] ?? "";
  expect(paper).toMatch(/header nav[\s\S]*?display: none/);
  expect(paper).toMatch(/overflow-x: visible/);
  expect(paper).toMatch(/break-after: avoid/);
});
