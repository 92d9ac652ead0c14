import { html, nothing, type TemplateResult } from "lit-html";
import { type CellFunction, NAMESPACE } from "../../functions/declare/cell-function.ts";
import { formulaOf } from "../../functions/declare/formula.ts";
import { type ColumnFacts, isOptional, type Limits, type ParamFacts } from "../../functions/declare/param.ts";
import { words } from "../parts/notation.ts";
import { isTable, shownNumber, shownUnit } from "../parts/numbers.ts";
import { sentenceList, single, tableOf } from "../parts/values.ts";

/** `SILL.WIND_PRESSURE(speed, height, [kzt])` */
export function signature(fn: CellFunction): string {
  const names = fn.params.map(({ name, param }) => (isOptional(param) ? `[${name}]` : name));
  return `${NAMESPACE}.${fn.name}(${names.join(", ")})`;
}

/** "from 15 to 500 ft"; "" where any number will do */
export function limitWords(limits: Limits | undefined, unit: string): string {
  if (limits === undefined) return "";
  const { min, max, above, below } = limits;
  const u = unit === "" ? "" : ` ${shownUnit(unit)}`;
  if (min !== undefined && max !== undefined) return `from ${shownNumber(min)} to ${shownNumber(max)}${u}`;
  const parts = [
    min === undefined ? "" : `at least ${shownNumber(min)}${u}`,
    above === undefined ? "" : `above ${shownNumber(above)}${u}`,
    max === undefined ? "" : `at most ${shownNumber(max)}${u}`,
    below === undefined ? "" : `below ${shownNumber(below)}${u}`,
  ];
  return parts.filter((p) => p !== "").join(", ");
}

/** What a field takes, in a few words under its label. */
export function paramHint(param: ParamFacts): string {
  const limits = limitWords(param.limits, param.unit);
  const ways: Partial<Record<ParamFacts["kind"], string>> = {
    length: `${param.unit}, or text such as 12'-6 1/2"`,
    quantity: param.unit === "" ? "" : `${shownUnit(param.unit)}, or text with a unit`,
    list: "a range",
    table: "a range, one row each",
  };
  return [param.says, ways[param.kind] ?? "", limits].filter((p) => p !== "").join(" · ");
}

/** What the form does not say of a function. */
export function functionHelp(fn: CellFunction): TemplateResult {
  const columns = fn.returns.columns;
  return html`
    <section class="sw-part">
      <h3>Gives</h3>
      <p>${fn.returns.says}${fn.returns.unit === "" ? "" : `, ${shownUnit(fn.returns.unit)}`}</p>
      ${
        columns === undefined
          ? nothing
          : html`<ol class="sw-columns">${columns.map((c) => html`<li>${words(c.name)}${c.unit === "" ? nothing : html` <span class="sw-unit">${shownUnit(c.unit)}</span>`}</li>`)}</ol>`
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
      (
        c,
      ) => html`<li>${words(c.name)}${c.unit === "" ? nothing : html` <span class="sw-unit">${shownUnit(c.unit)}</span>`}
      <span class="sw-quiet">${c.optional ? "optional, " : ""}${c.says}${c.choices === undefined ? "" : `: ${c.choices.join(", ")}`}</span></li>`,
    )}</ol>
  </details>`;
}
