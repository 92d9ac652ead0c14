import { html, nothing, type TemplateResult } from "lit-html";
import { type CellFunction, NAMESPACE } from "../../functions/declare/cell-function.ts";
import { formulaOf } from "../../functions/declare/formula.ts";
import type { ColumnFacts } from "../../functions/declare/param.ts";
import { words } from "../parts/notation.ts";
import { isTable } from "../parts/numbers.ts";
import { sentenceList, single, tableOf } from "../parts/values.ts";

/** What the form does not say of a function. */
export function functionHelp(fn: CellFunction): TemplateResult {
  const columns = fn.returns.columns;
  return html`
    <section class="sw-part">
      <h3>Gives</h3>
      <p>${fn.returns.says}${fn.returns.unit === "" ? "" : `, ${fn.returns.unit}`}</p>
      ${
        columns === undefined
          ? nothing
          : html`<ol class="sw-columns">${columns.map((c) => html`<li>${words(c.name)}${c.unit === "" ? nothing : html` <span class="sw-unit">${c.unit}</span>`}</li>`)}</ol>`
      }
    </section>
    ${sentenceList("Cautions", fn.cautions, "sw-caution")}
    ${sentenceList("Assumptions", fn.assumptions)}
    ${sentenceList("Sources", fn.sources, "sw-sources")}
    <section class="sw-part">
      <h4>Example</h4>
      <p class="sw-formula">${formulaOf(fn, fn.example.args, NAMESPACE)}</p>
      <p>gives ${isTable(fn.example.gives) ? nothing : single(fn.example.gives, fn.returns.unit)}</p>
      ${isTable(fn.example.gives) ? tableOf(fn.example.gives, "Result of the example", columns) : nothing}
      <p class="sw-quiet">${fn.example.source}</p>
    </section>
  `;
}

/** The columns of a table argument: their names at a glance, all about them when opened. */
export function columnHelp(columns: readonly ColumnFacts[]): TemplateResult {
  const names = columns.map((c) => (c.optional ? `[${words(c.name)}]` : words(c.name))).join(", ");
  return html`<details class="sw-hint">
    <summary>Columns: ${names}</summary>
    <ol class="sw-columns">${columns.map(
      (c) => html`<li>${words(c.name)}${c.unit === "" ? nothing : html` <span class="sw-unit">${c.unit}</span>`}
      <span class="sw-quiet">${c.optional ? "optional, " : ""}${c.says}${c.choices === undefined ? "" : `: ${c.choices.join(", ")}`}</span></li>`,
    )}</ol>
  </details>`;
}
