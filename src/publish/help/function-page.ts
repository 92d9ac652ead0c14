import type { Cell, Table } from "../../core/kit/tape.ts";
import type { ColumnText, FunctionText, ParameterText, ValueText } from "../../functions/declare/describe.ts";
import { type Html, html } from "./html.ts";

/** The body of a family's page: its contents, then one section with an anchor for each function. */
export function familyBody(family: string, functions: readonly FunctionText[]): Html {
  return html`<h1>${family}</h1>
<p>Arguments in [brackets] may be left out. Where an argument names a unit, a bare number is taken in it; text with another unit is read too, such as <code>12'-6 1/2"</code> or <code>3.8 m</code>.</p>
<nav aria-label="Functions of this page">
<ul>
${functions.map(
  (fn) => html`<li><a href="#${fn.name}"><code>${fn.name}</code></a> ${fn.summary}</li>
`,
)}</ul>
</nav>
<section class="family" aria-label="${family}">
${functions.map(functionSection)}</section>
`;
}

function functionSection(fn: FunctionText): Html {
  return html`<article id="${fn.name}" aria-labelledby="${fn.name}-name">
<h2 id="${fn.name}-name">${fn.fullName}</h2>
<p>${fn.summary}</p>
<p class="syntax"><code>${fn.syntax}</code></p>
<h3>Arguments</h3>
<dl>
${fn.parameters.map(argument)}</dl>
${fn.terms.length === 0 ? "" : termList(fn)}<h3>Result</h3>
<p>${withUnit(fn.result.what, fn.result.unit)}</p>
${fn.result.columns.length === 0 ? "" : resultColumns(fn)}<h3>Example</h3>
<p class="syntax"><code>${fn.example.formula}</code></p>
${shownResult(fn.example.gives, fn)}<p class="source">Checked against: ${fn.example.source}</p>
<h3>Refused, and why</h3>
<ul>
${fn.refuses.map(
  ({ formula, says }) => html`<li><code>${formula}</code><br>${says}</li>
`,
)}</ul>
<h3>When to go elsewhere</h3>
<p>${fn.notFor}</p>
${sentences("Cautions", fn.cautions)}${sentences("Taken as given", fn.assumptions)}${sentences("Sources", fn.sources)}${since(fn)}</article>
`;
}

/** Since when a function is there, and every change of its answers. */
function since(fn: FunctionText): Html {
  return html`<p class="source">Since version ${fn.since}.${fn.changed.map((c) => ` Changed in ${c.since}: ${c.what}.`)}</p>
`;
}

function argument(p: ParameterText): Html {
  return html`<dt><code>${p.name}</code>${p.unit === "" ? "" : html` <span class="unit">[${p.unit}]</span>`}${p.required ? "" : html` <span class="optional">may be left out</span>`}</dt>
<dd>${p.what}${facts(p)}${p.assumption === "" ? "" : html`<br>Left out: ${p.assumption}.`}${p.columns.length === 0 ? "" : argumentColumns(p)}</dd>
`;
}

/** What a basis can give, in a table: a term without a place in the call is found here only. */
function termList(fn: FunctionText): Html {
  return table(
    "Terms that it takes from a basis",
    ["Term", "Unit", "What it is", "Left out"],
    fn.terms.map(
      (
        t,
      ) => html`<tr><th scope="row">${t.term}</th><td>${t.unit}</td><td>${t.what}${t.placed ? "" : "; from a basis only"}</td><td>${t.required ? "refused" : t.assumption}</td></tr>
`,
    ),
  );
}

/** Limits, usual range and choices, each on a line. */
function facts(value: ValueText): Html {
  const unit = value.unit === "" ? "" : ` ${value.unit}`;
  return html`${value.limits === null ? "" : html`<br>Limits: ${value.limits.text}${value.limits.source === undefined ? "" : ` (${value.limits.source})`}.`}${
    value.usual === null
      ? ""
      : html`<br>Usual: ${value.usual.min} to ${value.usual.max}${unit}. Outside it, a caution: ${value.usual.ask}`
  }${value.choices.length === 0 ? "" : html`<br>One of: ${value.choices.map(choice)}.`}`;
}

function choice({ value, means }: { readonly value: string; readonly means: string }, i: number): Html {
  return html`${i === 0 ? "" : ", "}<code>${value}</code>${means === "" ? "" : ` (${means})`}`;
}

function argumentColumns(p: ParameterText): Html {
  return table(
    `Columns of ${p.name}, in this order, or in any order under a header row`,
    ["Column", "Unit", "What it holds"],
    p.columns.map(columnRow),
  );
}

function columnRow(column: ColumnText): Html {
  return html`<tr><th scope="row">${column.name}</th><td>${column.unit}</td><td>${column.what}${column.required ? "" : "; may be blank"}${facts(column)}</td></tr>
`;
}

function resultColumns(fn: FunctionText): Html {
  return table(
    "Columns of the result",
    ["Column", "Unit"],
    fn.result.columns.map(({ name, unit }) => html`<tr><th scope="row">${name}</th><td>${unit}</td></tr>\n`),
  );
}

function shownResult(gives: Cell | Table, fn: FunctionText): Html {
  if (!Array.isArray(gives)) return html`<p>Gives <strong>${String(gives)}</strong>${unitAfter(fn.result.unit)}.</p>\n`;
  return table(
    "What the example gives",
    fn.result.columns.map(({ name }) => name),
    (gives as Table).map((row) => html`<tr>${row.map((cell) => html`<td>${String(cell)}</td>`)}</tr>\n`),
  );
}

/** A table in a frame that scrolls sideways where the page is narrow, with the keyboard too. */
function table(caption: string, heads: readonly string[], rows: readonly Html[]): Html {
  return html`<div class="table" role="group" aria-label="${caption}" tabindex="0">
<table>
<caption>${caption}</caption>
<thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>
${rows}</tbody>
</table>
</div>
`;
}

function unitAfter(unit: string): string {
  return unit === "" ? "" : ` ${unit}`;
}

function withUnit(what: string, unit: string): Html {
  return html`${what.charAt(0).toUpperCase()}${what.slice(1)}${unit === "" ? "" : `, in ${unit}`}.`;
}

function sentences(heading: string, lines: readonly string[]): Html | "" {
  if (lines.length === 0) return "";
  return html`<h3>${heading}</h3>
<ul>
${lines.map((line) => html`<li>${line}</li>\n`)}</ul>
`;
}
