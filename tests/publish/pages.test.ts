import { expect, test } from "vitest";
import { cellFunction, quantityOf } from "../../src/functions/declare/cell-function.ts";
import { number } from "../../src/functions/declare/scalar.ts";
import { registry } from "../../src/functions/registry.ts";
import { escaped, html } from "../../src/publish/help/html.ts";
import { helpPages } from "../../src/publish/help/pages.ts";
import { helpPath } from "../../src/publish/metadata.ts";

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
