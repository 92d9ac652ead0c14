import { html, nothing, type TemplateResult } from "lit-html";
import { type CellFunction, NAMESPACE } from "../../functions/declare/cell-function.ts";
import { hintOf } from "../../functions/declare/describe.ts";
import { isOptional } from "../../functions/declare/param.ts";
import type { Typed } from "../../workbook/host.ts";
import { ended } from "../parts/ended.ts";
import { afterPause } from "../parts/idle.ts";
import { words } from "../parts/notation.ts";
import type { PaneContext } from "../parts/view.ts";
import { result } from "../working/working-parts.ts";
import { type AtCaret, atCaret } from "./at-caret.ts";
import { type Preview, previewOf } from "./preview.ts";

/** Typing must pause for this long before a result is worked out, in milliseconds. */
const PAUSE_MS = 150;

/** Above the views while a formula is typed: the function at the caret, its arguments with units, the one at the caret marked, and its result so far. */
export class TypingStrip {
  readonly #pane: PaneContext;
  readonly #pause = afterPause(PAUSE_MS, () => void this.#preview());
  #typed: Typed | undefined;
  #at: AtCaret | undefined;
  #shown: Preview | undefined;

  constructor(pane: PaneContext) {
    this.#pane = pane;
  }

  /** Whether there is something to show. */
  get busy(): boolean {
    return this.#at !== undefined;
  }

  /** @param typed undefined when no cell is being typed in any more */
  follow(typed: Typed | undefined): void {
    const before = this.#at;
    this.#typed = typed;
    this.#at = typed === undefined ? undefined : atCaret(typed.text, typed.caret, this.#pane.functions);
    if (before === undefined && this.#at === undefined) return;
    if (this.#at?.kind !== "call" || before?.kind !== "call" || before.fn !== this.#at.fn) this.#shown = undefined;
    this.#pause.touch();
    this.#pane.redraw();
  }

  stop(): void {
    this.#pause.stop();
  }

  async #preview(): Promise<void> {
    const [at, typed] = [this.#at, this.#typed];
    if (at?.kind !== "call" || typed === undefined) return;
    const { functions, explain, host } = this.#pane;
    const shown = await previewOf(at.call, { functions, explain, host, sheet: typed.address.sheet });
    if (this.#at !== at) return;
    this.#shown = shown;
    this.#pane.redraw();
  }

  template(): TemplateResult | typeof nothing {
    const at = this.#at;
    if (at === undefined) return nothing;
    return html`<section class="sw-typing" aria-label="Formula being typed">
      ${at.kind === "name" ? names(at.typed, at.found) : this.#call(at.fn, at.place)}
    </section>`;
  }

  #call(fn: CellFunction, place: number): TemplateResult {
    return html`<h2 class="sw-name">${NAMESPACE}.${fn.name}</h2>
      ${callLine(fn, fn.params[Math.min(place, fn.params.length - 1)]?.name)}
      ${argumentAt(fn, place)}
      ${this.#result()}`;
  }

  #result(): TemplateResult | typeof nothing {
    const shown = this.#shown;
    if (shown === undefined) return nothing;
    if ("waits" in shown) return html`<p class="sw-quiet">${shown.waits}</p>`;
    const { outcome } = shown.working;
    // What is still being typed is not wrong yet.
    if (!outcome.ok)
      return html`<p class="sw-quiet">So far: ${ended(outcome.said.what)} ${ended(outcome.said.todo)}</p>`;
    return html`<div class="sw-typing-result">${result(shown.fn, outcome, shown.working)}</div>`;
  }
}

/** The arguments of a call in their order, each with its unit, the one at the caret marked; those that may be left out in brackets. */
export function callLine(fn: CellFunction, at: string | undefined): TemplateResult {
  return html`<p class="sw-formula sw-call-line">${fn.params.map(({ name, param }, i) => {
    const unit = param.unit === "" ? nothing : html` <span class="sw-unit">${param.unit}</span>`;
    const piece = html`${words(name)}${unit}`;
    const shown = isOptional(param) ? html`[${piece}]` : piece;
    return html`${i === 0 ? nothing : ", "}${name === at ? html`<mark aria-current="true">${shown}</mark>` : html`<span>${shown}</span>`}`;
  })}</p>`;
}

function argumentAt(fn: CellFunction, place: number): TemplateResult {
  const at = fn.params[place];
  if (at === undefined)
    return html`<p class="sw-blank">It takes ${fn.params.length} arguments; this is number ${place + 1}.</p>`;
  const { name, param } = at;
  const left =
    isOptional(param) && param.omitted !== ""
      ? html` <span class="sw-quiet">Left out: ${param.omitted}</span>`
      : nothing;
  return html`<p><b>${words(name)}</b>: ${hintOf(param)}${left}</p>`;
}

function names(typed: string, found: readonly CellFunction[]): TemplateResult {
  return html`<h2 class="sw-quiet">Functions for ${typed}</h2>
    <ul class="sw-list">${found.map(
      (fn) =>
        html`<li><span class="sw-name">${NAMESPACE}.${fn.name}</span> <span class="sw-quiet">${fn.summary}</span></li>`,
    )}</ul>`;
}
