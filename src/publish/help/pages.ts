import type { CellFunction } from "../../functions/declare/cell-function.ts";
import { describe } from "../../functions/declare/describe.ts";
import type { Asset } from "./asset.ts";
import { functionsBody } from "./function-page.ts";
import { type Html, html } from "./html.ts";
import { limitsBody } from "./limits-page.ts";
import { repairBody } from "./repair-page.ts";

const PAGES = [
  { file: "functions.html", title: "Functions" },
  { file: "limits.html", title: "Limits and cautions" },
  { file: "repair.html", title: "How to repair #NAME?" },
] as const;

/** The help pages: static, no script. */
export function helpPages(functions: readonly CellFunction[], version: string): Asset[] {
  const texts = functions.map(describe);
  const bodies: Readonly<Record<(typeof PAGES)[number]["file"], Html>> = {
    "functions.html": functionsBody(texts),
    "limits.html": limitsBody(texts),
    "repair.html": repairBody(),
  };
  return PAGES.map(({ file, title }) => ({
    path: `help/${file}`,
    content: page(file, title, bodies[file], version).markup,
  }));
}

function page(file: string, title: string, body: Html, version: string): Html {
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'">
<title>${title} - Sillwork</title>
<link rel="stylesheet" href="pages.css">
</head>
<body>
<header>
<p class="product">Sillwork</p>
<nav aria-label="Pages">
<ul>
${PAGES.map((p) => html`<li><a href="${p.file}"${p.file === file ? html` aria-current="page"` : ""}>${p.title}</a></li>\n`)}</ul>
</nav>
</header>
<main>
${body}</main>
<footer>
<p>Sillwork ${version}. Preliminary figures for planning: the adopted code with its local amendments and a licensed professional decide.</p>
</footer>
</body>
</html>
`;
}
