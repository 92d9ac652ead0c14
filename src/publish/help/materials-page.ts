import type { Table } from "../../core/kit/tape.ts";
import type { CellFunction } from "../../functions/declare/cell-function.ts";
import { invoke } from "../../functions/run/invoke.ts";
import { type Html, html } from "./html.ts";

/** The list of built-in materials, as MATERIALS gives it. */
export function materialsBody(functions: readonly CellFunction[]): Html {
  const fn = functions.find(({ name }) => name === "MATERIALS");
  const outcome = fn === undefined ? undefined : invoke(fn, []);
  const [heads = [], ...rows] = outcome?.ok === true ? (outcome.value as Table) : [];
  return html`<h1>Materials</h1>
<p>Generic figures, each with its source. An office's own row with its own figures wins over these. In a cell: <code>=SILL.MATERIALS("wool")</code>.</p>
<div class="table" role="group" aria-label="Materials" tabindex="0">
<table>
<thead><tr>${heads.map((head) => html`<th scope="col">${String(head)}</th>`)}</tr></thead>
<tbody>
${rows.map(([name, ...cells]) => html`<tr><th scope="row">${String(name)}</th>${cells.map((cell) => html`<td>${shown(cell)}</td>`)}</tr>\n`)}</tbody>
</table>
</div>`;
}

function shown(cell: unknown): string {
  return typeof cell === "number" ? String(Number(cell.toPrecision(3))) : String(cell);
}
