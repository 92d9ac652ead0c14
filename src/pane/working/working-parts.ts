import { html, nothing, type TemplateResult } from "lit-html";
import type { PictureBase } from "../../core/kit/picture.ts";
import type { Said } from "../../core/kit/refusal.ts";
import type { Cell, Step, Table } from "../../core/kit/tape.ts";
import type { CellFunction } from "../../functions/declare/cell-function.ts";
import { isBlank, isCellError, isRange, type RawArgument } from "../../functions/declare/raw.ts";
import type { ShownArgument } from "../../functions/run/arguments.ts";
import { influences } from "../../functions/run/influence.ts";
import type { Outcome, Working } from "../../functions/run/invoke.ts";
import { hasHeadings } from "../../functions/run/present.ts";
import { fitted } from "../drawings/fitted.ts";
import { isDrawn } from "../drawings/index.ts";
import { ended } from "../parts/ended.ts";
import { words } from "../parts/notation.ts";
import { isTable, shownCell } from "../parts/numbers.ts";
import { formulaLine, onTheTape, sentenceList, shownValue, tableOf } from "../parts/values.ts";
import { enlarge } from "./enlarge.ts";
import { influenceBars } from "./influence-bars.ts";
import { numbersIn } from "./numbers-in.ts";

/** An error in its three parts. */
export function errorBox(label: string, said: Said): TemplateResult {
  return html`<div class="sw-error">
    <p class="sw-tag">${label}</p>
    <p class="sw-what">${ended(said.what)}</p>
    ${said.why === "" ? nothing : html`<p>${ended(said.why)}</p>`}
    ${said.todo === "" ? nothing : html`<p class="sw-todo"><span class="sw-lead">To do:</span> ${ended(said.todo)}</p>`}
  </div>`;
}

/** The result of a call, large, or its error. A table stands in the sheet already: it is counted, and unfolded when asked for. */
export function result(fn: CellFunction, outcome: Outcome, working?: Working): TemplateResult {
  if (!outcome.ok) return errorBox(`Error ${outcome.code}`, outcome.said);
  const { value } = outcome;
  const unit = resultUnit(fn, working);
  if (isTable(value)) {
    const rows = hasHeadings(fn, value) ? value.slice(1) : value;
    const table = tableOf(rows, `Result of ${fn.name}`, fn.returns.columns);
    if (rows.length === 1) return table;
    return html`<details class="sw-whole"><summary>${rows.length.toLocaleString("en-US")} rows: ${fn.returns.says}</summary>${table}</details>`;
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

/** A function's place in the help pages, where the host has them. */
export function helpLink(fn: CellFunction, address: string | undefined): TemplateResult | typeof nothing {
  if (address === undefined) return nothing;
  return html`<p class="sw-help-link"><a href=${address} target="_blank" rel="noopener">Help page of ${fn.name}</a></p>`;
}

/** What can be done with a picture of a working; `number` tells it from the other pictures of the same working. */
export interface PictureActions {
  /** undefined where the host takes no images */
  readonly place: ((picture: PictureBase, number: number) => void) | undefined;
  readonly copy: (picture: PictureBase) => void;
  readonly print: (picture: PictureBase) => void;
  /** into a file, where the host takes no images */
  readonly save: (picture: PictureBase) => void;
}

/** A place in the sheet that an argument came from. */
export interface ArgumentLink {
  readonly text: string;
  readonly go: () => void;
}

/** The pictures of a working, above its result: they say at a glance what the numbers say one by one. */
export function pictures(working: Working, actions: PictureActions): readonly TemplateResult[] {
  return working.pictures.map((p, i) => picture(p, i, actions));
}

/** All that stands under the result. `linkOf` names the cell that an argument came from. */
export function workingBody(
  fn: CellFunction,
  working: Working,
  given: readonly RawArgument[],
  linkOf: (argument: ShownArgument, place: number) => ArgumentLink | undefined,
): TemplateResult {
  const { outcome } = working;
  return html`
    ${cautions(fn, working.cautions)}
    ${steps(working.steps, outcome.ok ? outcome.value : undefined)}
    ${argumentList(fn, working.arguments, given, linkOf)}
    ${influenceBars(outcome.ok ? influences(fn, given) : [])}
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

function argumentList(
  fn: CellFunction,
  args: readonly ShownArgument[],
  given: readonly RawArgument[],
  linkOf: (argument: ShownArgument, place: number) => ArgumentLink | undefined,
): TemplateResult | typeof nothing {
  // What is left out and assumes nothing says nothing of the number.
  const shown = args.filter((a) => !a.omitted || a.shown !== "");
  if (shown.length === 0) return nothing;
  const place = (a: ShownArgument) => fn.params.findIndex((p) => p.name === a.name);
  return html`<section class="sw-part">
    <h4>Arguments as read</h4>
    <dl class="sw-args">${shown.map(
      (a) => html`<div>
        <dt>${words(a.name)}</dt>
        <dd>${argument(a, given[place(a)])} ${origin(a, linkOf(a, place(a)))}<span class="sw-says">${a.says}</span></dd>
      </div>`,
    )}</dl>
  </section>`;
}

function origin(a: ShownArgument, link: ArgumentLink | undefined): TemplateResult | typeof nothing {
  if (link !== undefined) {
    return html`<button type="button" class="sw-goto" @click=${link.go}>${link.text}</button>`;
  }
  return a.from === "" ? nothing : html`<span class="sw-quiet">from the ${a.from}</span>`;
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

function steps(list: readonly Step[], answer: Cell | Table | undefined): TemplateResult | typeof nothing {
  if (list.length === 0) return nothing;
  // The table of the last step is the result, which stands in the sheet and above.
  const shown = answer !== undefined && isTable(answer) && isTable(list.at(-1)?.value ?? "") ? list.slice(0, -1) : list;
  if (shown.length === 0) return nothing;
  return html`<section class="sw-part">
    <h4>Working</h4>
    <ol class="sw-steps">${shown.map((s, i) => step(s, list.slice(0, i)))}</ol>
  </section>`;
}

/** Symbol and value on a line; how it comes about, with its numbers put in, and where that stands below. */
function step(s: Step, before: readonly Step[]): TemplateResult {
  const numbers = numbersIn(s, before);
  const same =
    s.expression === "" || s.expression === s.symbol || (!isTable(s.value) && s.expression === shownCell(s.value));
  return html`<li>
    <p class="sw-line"><span class="sw-symbol">${formulaLine(s.symbol)}</span>${
      isTable(s.value)
        ? s.unit === ""
          ? nothing
          : html`<span class="sw-unit">${s.unit}</span>`
        : html`<span class="sw-answer">${shownValue(s.value, s.unit, s.symbol)}</span>`
    }</p>
    ${same ? nothing : html`<p class="sw-expression">${formulaLine(s.expression)}</p>`}
    ${numbers === undefined ? nothing : html`<p class="sw-expression sw-quiet">= ${formulaLine(numbers)}</p>`}
    ${isTable(s.value) ? tableOf(s.value, `Table of ${s.symbol}`) : nothing}
    ${s.clause === "" ? nothing : html`<p class="sw-clause">${s.clause}</p>`}
  </li>`;
}

function picture(p: PictureBase, number: number, { place, copy, print, save }: PictureActions): TemplateResult {
  if (!isDrawn(p)) return html`<p class="sw-picture">${p.alt}</p>`;
  return html`<figure class="sw-picture">
    <div class="sw-drawing" aria-hidden="true" ${fitted(p)}></div>
    <figcaption>${p.alt}</figcaption>
    <p class="sw-actions">
      <button type="button" class="sw-plain" @click=${(event: Event) => enlarge(event, p)}>Enlarge</button>
      <button type="button" class="sw-plain" @click=${() => copy(p)}>Copy picture</button>
      <button type="button" class="sw-plain" @click=${() => print(p)}>Print</button>
      ${
        place === undefined
          ? html`<button type="button" class="sw-plain" @click=${() => save(p)}>Save picture</button>`
          : html`<button type="button" class="sw-plain" @click=${() => place(p, number)}>Place picture in the sheet</button>`
      }
    </p>
  </figure>`;
}
