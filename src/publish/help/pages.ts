import type { CellFunction } from "../../functions/declare/cell-function.ts";
import { describe } from "../../functions/declare/describe.ts";
import { pageOfFamily } from "../../functions/find/help-place.ts";
import type { Asset } from "./asset.ts";
import { closeBody } from "./close-page.ts";
import { familyBody } from "./function-page.ts";
import { type Html, html } from "./html.ts";
import { limitsBody } from "./limits-page.ts";
import { materialsBody } from "./materials-page.ts";
import { notHereBody } from "./not-here-page.ts";
import { refusals } from "./refusals.ts";
import { repairBody } from "./repair-page.ts";
import { startBody } from "./start-page.ts";
import { termsBody } from "./terms-page.ts";

interface Page {
  readonly file: string;
  readonly title: string;
  readonly body: Html;
}

/** The help pages: static, and without script but for the field that finds a function. */
export function helpPages(functions: readonly CellFunction[], version: string): Asset[] {
  const texts = functions.map((fn) => ({ ...describe(fn), refuses: refusals(fn) }));
  const families = [...new Set(texts.map((fn) => fn.family))];
  const pages: Page[] = [
    { file: "index.html", title: "Start", body: startBody(texts) },
    ...families.map((family) => ({
      file: pageOfFamily(family),
      title: family,
      body: familyBody(
        family,
        texts.filter((fn) => fn.family === family),
      ),
    })),
    { file: "terms.html", title: "Terms of the basis", body: termsBody() },
    { file: "materials.html", title: "Materials", body: materialsBody(functions) },
    { file: "close.html", title: "How close", body: closeBody(texts) },
    { file: "limits.html", title: "Limits and cautions", body: limitsBody(texts) },
    { file: "not-here.html", title: "What is not here", body: notHereBody() },
    { file: "repair.html", title: "How to repair #NAME?", body: repairBody() },
  ];
  return pages.map((page) => ({ path: `help/${page.file}`, content: whole(page, pages, version).markup }));
}

function whole({ file, title, body }: Page, pages: readonly Page[], version: string): Html {
  const script = file === "index.html" ? "; script-src 'self'" : "";
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'${script}">
<title>${title} - Sillwork</title>
<link rel="stylesheet" href="pages.css">
</head>
<body>
<header>
<p class="product">Sillwork</p>
<nav aria-label="Pages">
<ul>
${pages.map((p) => html`<li><a href="${p.file}"${p.file === file ? html` aria-current="page"` : ""}>${p.title}</a></li>\n`)}</ul>
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
