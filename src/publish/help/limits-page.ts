import type { FunctionText } from "../../functions/declare/describe.ts";
import { pageOf } from "../../functions/find/help-place.ts";
import { type Html, html } from "./html.ts";

/** The page of limits and cautions: what holds for all functions, then what each one says. */
export function limitsBody(functions: readonly FunctionText[]): Html {
  return html`<h1>Limits and cautions</h1>
<h2>What the results are</h2>
<ul>
<li>Structural, moisture, thermal and lifting results are preliminary: for planning, budgets and questions to ask. The adopted code with its local amendments and a licensed professional decide.</li>
<li>A result is as good as its cells. Read the assumptions and cautions of a cell in the pane, or write them all to a worksheet from the Cautions view.</li>
<li>A value outside what a method or table covers is refused with <code>#N/A</code>; an argument that cannot be read, with <code>#VALUE!</code>. Nothing is extrapolated. The pane gives the reason for the selected cell.</li>
<li>Editions of a standard differ. Where a function knows several, the edition is an argument, and the working names the one used.</li>
</ul>
<h2>How cells are read</h2>
<ul>
<li>A number is taken in the unit that the function's help states; text may carry its own unit, and that unit wins.</li>
<li>Excel may hand over an empty cell as 0. Where 0 cannot be, the function says so; in a table, rows without a name are skipped.</li>
<li>Text numbers use a point for decimals, whatever the language of Excel.</li>
<li>A code such as 7-16 typed into a cell may turn into a date: type it with an apostrophe in front.</li>
</ul>
<h2>What Excel does not do with add-in functions</h2>
<ul>
<li>They do not work in conditional formatting, data validation and what-if data tables: calculate in a cell and point the rule at that cell.</li>
<li>Evaluate Formula and F9 on a part of a formula do not run them: the pane shows the working instead.</li>
<li>They do not run on an iPad, nor in Office 2019 and older; volume-licensed Office 2021 may or may not run them.</li>
<li>Each level in a chain of add-in functions takes Excel a quarter to half a second: give one function a whole range rather than chain many cells.</li>
<li>A colleague without the add-in sees <code>#NAME?</code>: send a copy of the sheet with values only (Home tab, Sillwork group, Keep values only).</li>
<li>Excel starts the add-in from its web address. After some days without a network it may not start; the values in the cells stay.</li>
</ul>
<h2>Cautions by function</h2>
${functions.filter((fn) => fn.cautions.length + fn.assumptions.length > 0).map(functionCautions)}`;
}

function functionCautions(fn: FunctionText): Html {
  const lines = [...fn.cautions, ...fn.assumptions.map((line) => `Taken as given: ${line}`)];
  return html`<h3><a href="${pageOf(fn)}#${fn.name}">${fn.name}</a></h3>
<ul>
${lines.map((line) => html`<li>${line}</li>\n`)}</ul>
`;
}
