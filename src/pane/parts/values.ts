import { html, nothing, type TemplateResult } from "lit-html";
import type { Cell, Table } from "../../core/kit/tape.ts";
import { formatLength } from "../../core/units/length.ts";
import type { ResultColumn } from "../../functions/declare/cell-function.ts";
import { pieces, words } from "./notation.ts";
import { fullText, isTable, shownCell } from "./numbers.ts";

/** Rows of a table drawn at once; the rest is named, not drawn. */
const ROWS_DRAWN = 200;

/** A single value with its unit; the full number stands in the title. */
export function single(value: Cell, unit: string): TemplateResult {
  const shown = shownCell(value);
  const full = fullText(value);
  const title = typeof value === "number" && full !== shown ? full : nothing;
  return html`<span class="sw-value" title=${title}>${shown}</span>${
    unit === "" || typeof value !== "number" ? nothing : html`<span class="sw-unit"> ${unit}</span>`
  }`;
}

/** A number of feet or inches also as a tape measure reads it, to the sixteenth. */
export function onTheTape(value: Cell | Table, unit: string): string | undefined {
  if (typeof value !== "number" || (unit !== "ft" && unit !== "in") || Math.abs(value) > 1e5) return undefined;
  return formatLength(unit === "ft" ? value * 12 : value, 16);
}

/** A table that scrolls by itself, reachable by keyboard. @param most rows that are drawn */
export function tableOf(
  rows: Table,
  label: string,
  columns?: readonly ResultColumn[],
  most = ROWS_DRAWN,
): TemplateResult {
  const drawn = rows.slice(0, most);
  const more = rows.length - drawn.length;
  return html`<div class="sw-scroll" role="region" tabindex="0" aria-label=${label}>
    <table class="sw-table">
      ${
        columns === undefined
          ? nothing
          : html`<thead><tr>${columns.map(
              (c, i) =>
                html`<th scope="col" class=${typeof rows[0]?.[i] === "number" ? "sw-num" : "sw-text"}>${words(c.name)}${c.unit === "" ? nothing : html`<span class="sw-unit">${c.unit}</span>`}</th>`,
            )}</tr></thead>`
      }
      <tbody>${drawn.map((row) => html`<tr>${row.map(tableCell)}</tr>`)}</tbody>
    </table>
    ${more > 0 ? html`<p class="sw-quiet">and ${more.toLocaleString("en-US")} more rows in the sheet</p>` : nothing}
  </div>`;
}

function tableCell(cell: Cell): TemplateResult {
  const number = typeof cell === "number";
  const full = fullText(cell);
  const shown = shownCell(cell);
  return html`<td class=${number ? "sw-num" : "sw-text"} title=${number && shown !== full ? full : nothing}>${shown}</td>`;
}

/** Any value of a step or a result. */
export function shownValue(
  value: Cell | Table,
  unit: string,
  label: string,
  columns?: readonly ResultColumn[],
): TemplateResult {
  return isTable(value) ? tableOf(value, label, columns) : single(value, unit);
}

/** A formula line with lowered and raised parts. */
export function formulaLine(line: string): TemplateResult {
  return html`${pieces(line).map(({ text, place }) =>
    place === "sub" ? html`<sub>${text}</sub>` : place === "sup" ? html`<sup>${text}</sup>` : text,
  )}`;
}

/** A titled list of sentences, or nothing. */
export function sentenceList(title: string, sentences: readonly string[], look = ""): TemplateResult | typeof nothing {
  if (sentences.length === 0) return nothing;
  return html`<section class="sw-part ${look}">
    <h4>${title}</h4>
    <ul>${sentences.map((s) => html`<li>${s}</li>`)}</ul>
  </section>`;
}
