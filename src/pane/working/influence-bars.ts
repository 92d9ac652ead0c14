import { html, nothing, type TemplateResult } from "lit-html";
import { type Influence, reach } from "../../functions/run/influence.ts";
import { words } from "../parts/notation.ts";

/** How many arguments are shown. */
const SHOWN = 6;

/** What moves a number: a bar for each argument, a tenth down to the left of its name's line, a tenth up below. */
export function influenceBars(list: readonly Influence[]): TemplateResult | typeof nothing {
  const [first] = list;
  if (first === undefined) return nothing;
  const most = reach(first);
  return html`<details class="sw-part">
    <summary>What moves this number</summary>
    <p class="sw-quiet">Each argument a tenth lower and a tenth higher, the others as they are.</p>
    <dl class="sw-moves">${list.slice(0, SHOWN).map(
      (i) => html`<div><dt>${words(i.name)}</dt>
        <dd>${bar(i.down, most, "lower")}</dd><dd>${bar(i.up, most, "higher")}</dd></div>`,
    )}</dl>
  </details>`;
}

function bar(move: number | undefined, most: number, side: string): TemplateResult {
  if (move === undefined) return html`<span class="sw-quiet">${side}: outside what the method covers</span>`;
  const percent = `${move > 0 ? "+" : ""}${(move * 100).toFixed(1)} %`;
  return html`<meter min="0" max=${most} value=${Math.abs(move)} aria-label="a tenth ${side}">${percent}</meter> <span>${side}: ${percent}</span>`;
}
