import { html, nothing, type TemplateResult } from "lit-html";
import type { PictureBase } from "../../core/kit/picture.ts";
import type { Said } from "../../core/kit/refusal.ts";
import type { Cell, Step } from "../../core/kit/tape.ts";
import type { CellFunction } from "../../functions/declare/cell-function.ts";
import { isBlank, isCellError, isRange, type RawArgument } from "../../functions/declare/raw.ts";
import type { ShownArgument } from "../../functions/run/arguments.ts";
import type { Outcome, Working } from "../../functions/run/invoke.ts";
import { hasHeadings } from "../../functions/run/present.ts";
import { fitted } from "../drawings/fitted.ts";
import { isDrawn } from "../drawings/index.ts";
import { ended } from "../parts/ended.ts";
import { words } from "../parts/notation.ts";
import { isTable, shownCell, shownUnit } from "../parts/numbers.ts";
import { formulaLine, onTheTape, sentenceList, shownValue, tableOf } from "../parts/values.ts";

/** An error in its three parts. */
export function errorBox(label: string, said: Said): TemplateResult {
  return html`<div class="sw-error">
    <p class="sw-tag">${label}</p>
    <p class="sw-what">${ended(said.what)}</p>
    ${said.why === "" ? nothing : html`<p>${ended(said.why)}</p>`}
    ${said.todo === "" ? nothing : html`<p class="sw-todo"><span class="sw-lead">To do:</span> ${ended(said.todo)}</p>`}
  </div>`;
}

/** The result of a call, large, or its error. */
export function result(fn: CellFunction, outcome: Outcome, working?: Working): TemplateResult {
  if (!outcome.ok) return errorBox(`Error ${outcome.code}`, outcome.said);
  const { value } = outcome;
  const unit = resultUnit(fn, working);
  if (isTable(value)) {
    const headed = hasHeadings(fn, value);
    return tableOf(headed ? value.slice(1) : value, `Result of ${fn.name}`, fn.returns.columns);
  }
  const tape = onTheTape(value, unit);
  return html`<p class="sw-result">${shownValue(value, unit, "Result")}${
    tape === undefined ? nothing : html` <span class="sw-quiet sw-tape">${tape}</span>`
  }</p>`;
}

/** The declared unit; where it depends on the arguments the last step knows it. */
function resultUnit(fn: CellFunction, working: Working | undefined): string {
  return fn.returns.unit !== "" ? fn.returns.unit : (working?.steps.at(-1)?.unit ?? "");
}

/** Places a picture of a working in the sheet; `number` tells it from the other pictures of the same working. */
export type PlacePicture = (picture: PictureBase, number: number) => void;

/** All that stands under the result. */
export function workingBody(
  fn: CellFunction,
  working: Working,
  given: readonly RawArgument[],
  place?: PlacePicture,
): TemplateResult {
  return html`
    ${cautions(fn, working.cautions)}
    ${working.pictures.map((p, i) => picture(p, place === undefined ? undefined : () => place(p, i)))}
    ${argumentList(working.arguments, given)}
    ${steps(working.steps)}
    ${sentenceList("Assumptions", working.assumptions)}
    ${sentenceList("Sources", working.sources, "sw-sources")}
  `;
}

/** What these inputs brought up, and smaller what holds for every use of the function. */
function cautions(fn: CellFunction, all: readonly string[]): TemplateResult | typeof nothing {
  if (all.length === 0) return nothing;
  const line = (s: string) => html`<li class=${fn.cautions.includes(s) ? "sw-standing" : ""}>${s}</li>`;
  const sorted = [...all].sort((a, b) => Number(fn.cautions.includes(a)) - Number(fn.cautions.includes(b)));
  return html`<section class="sw-part sw-caution">
    <h4>${all.length === 1 ? "Caution" : "Cautions"}</h4>
    <ul>${sorted.map(line)}</ul>
  </section>`;
}

function argumentList(args: readonly ShownArgument[], given: readonly RawArgument[]): TemplateResult | typeof nothing {
  // What is left out and assumes nothing says nothing of the number.
  const shown = args.filter((a) => !a.omitted || a.shown !== "");
  if (shown.length === 0) return nothing;
  return html`<section class="sw-part">
    <h4>Arguments as read</h4>
    <dl class="sw-args">${shown.map(
      (a) => html`<div>
        <dt>${words(a.name)}</dt>
        <dd>${argument(a, given[args.indexOf(a)])}${a.from === "" ? nothing : html` <span class="sw-quiet">from the ${a.from}</span>`}<span class="sw-says">${a.says}</span></dd>
      </div>`,
    )}</dl>
  </section>`;
}

function argument(a: ShownArgument, raw: RawArgument): TemplateResult {
  if (a.omitted) {
    return a.shown === ""
      ? html`<span class="sw-quiet">left out</span>`
      : html`<span class="sw-assumed">assumed</span> ${a.shown}`;
  }
  if (!isRange(raw) || a.from !== "") return html`<span class="sw-read">${a.shown}</span>`;
  const rows = raw.map((row) =>
    row.map((cell) => (isBlank(cell) ? "" : isCellError(cell) ? cell.error : (cell as Cell))),
  );
  return html`<details>
    <summary>${a.shown === "" ? "as given" : a.shown}</summary>
    ${tableOf(rows, `${words(a.name)} as given`)}
  </details>`;
}

function steps(list: readonly Step[]): TemplateResult | typeof nothing {
  if (list.length === 0) return nothing;
  return html`<section class="sw-part">
    <h4>Working</h4>
    <ol class="sw-steps">${list.map(step)}</ol>
  </section>`;
}

function step(s: Step): TemplateResult {
  const clause = s.clause === "" ? nothing : html`<p class="sw-clause">${s.clause}</p>`;
  const symbol = html`<span class="sw-symbol">${formulaLine(s.symbol)}</span>`;
  if (isTable(s.value)) {
    const unit = s.unit === "" ? "" : `, ${shownUnit(s.unit)}`;
    return html`<li>
      <p class="sw-line">${symbol}${unit} <span class="sw-expression">${formulaLine(s.expression)}</span></p>
      ${tableOf(s.value, `Table of ${s.symbol}`)}${clause}
    </li>`;
  }
  const same = s.expression === "" || s.expression === shownCell(s.value) || s.expression === s.symbol;
  return html`<li>
    <p class="sw-line">${symbol} <span class="sw-equals">=</span> ${
      same
        ? nothing
        : html`<span class="sw-expression">${formulaLine(s.expression)}</span> <span class="sw-equals">=</span> `
    }<span class="sw-answer">${shownValue(s.value, s.unit, s.symbol)}</span></p>${clause}
  </li>`;
}

function picture(p: PictureBase, place: (() => void) | undefined): TemplateResult {
  if (!isDrawn(p)) return html`<p class="sw-picture">${p.alt}</p>`;
  return html`<figure class="sw-picture">
    <div class="sw-drawing" aria-hidden="true" ${fitted(p)}></div>
    <figcaption>${p.alt}</figcaption>
    ${place === undefined ? nothing : html`<button type="button" class="sw-plain" @click=${place}>Place picture in the sheet</button>`}
  </figure>`;
}
