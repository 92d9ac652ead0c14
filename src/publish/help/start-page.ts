import type { FunctionText } from "../../functions/declare/describe.ts";
import { pageOf } from "../../functions/find/help-place.ts";
import { FILLERS, TRADE_WORDS } from "../../functions/find/trade-words.ts";
import { type Html, html } from "./html.ts";

/** Getting started in ten minutes, and every function with a field to find it by. */
export function startBody(functions: readonly FunctionText[]): Html {
  return html`<h1>Sillwork in ten minutes</h1>
<ol class="start">
<li><strong>Type a function.</strong> In any cell: <code>=SILL.WIND_AREA(8, 4)</code>. A word is enough to find one: <code>=dew</code>. While you type, the spreadsheet lists the arguments; the pane's Functions view has a form for each, with its result before it stands in a cell.</li>
<li><strong>Select the cell.</strong> The pane's Working view shows the picture, the result, each step with its clause, the arguments as read and where they came from, and what to be careful about.</li>
<li><strong>Or start from a template.</strong> The pane's Templates view puts ready worksheets beside yours; change the marked cells.</li>
<li><strong>Make a basis.</strong> A range of three columns whose first cell says <code>Basis</code>: name, value, unit. Give it the name Basis. It holds what most formulas share: wind speed, exposure, roof slope, waste, saw cut, wages. The <a href="terms.html">terms</a> are listed here.</li>
<li><strong>End your formulas with it.</strong> <code>=SILL.WIND_CLADDING("wall", 5, 32, Basis)</code>. What the call leaves out comes from the basis; what stands in the call wins.</li>
<li><strong>Write lengths as you say them.</strong> <code>12'-6 1/2"</code>, <code>3.8 m</code>; slopes as <code>6:12</code>; shares as <code>10%</code>. Where a formula stands around such a text, double its inch mark.</li>
<li><strong>Point at tables.</strong> Walls, openings, layers, parts and stock are ranges with a row each; a row of headings may stand on top. What one function gives as a table, the next one takes.</li>
<li><strong>Read the cautions.</strong> The Cautions view goes through the whole workbook: errors, cautions, assumptions, mixed editions. Write it to a sheet for the file or the engineer.</li>
<li><strong>Share.</strong> A colleague without the add-in gets a copy with values only.</li>
</ol>
<h2>Find a function</h2>
<p><label for="search">Words of the trade or of the function</label> <input id="search" type="search" autocomplete="off" data-fillers="${[...FILLERS].join(" ")}"> <span id="found" role="status"></span></p>
<ul id="all">
${functions.map(
  (fn) =>
    html`<li data-words="${words(fn)}"><a href="${pageOf(fn)}#${fn.name}"><code>${fn.name}</code></a> ${fn.summary}</li>\n`,
)}</ul>
<script src="search.js"></script>`;
}

/** What finds a function: its own words, and those of the trade that stand for them. */
function words(fn: FunctionText): string {
  const own = [fn.name.replaceAll("_", " "), fn.summary, fn.family, ...fn.parameters.map((p) => `${p.name} ${p.what}`)]
    .join(" ")
    .toLowerCase();
  const trade = Object.entries(TRADE_WORDS).flatMap(([word, means]) =>
    means.some((m) => own.includes(m)) ? [word] : [],
  );
  return `${own} ${trade.join(" ")}`;
}
