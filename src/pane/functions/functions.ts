import { html, nothing, type TemplateResult } from "lit-html";
import { keyed } from "lit-html/directives/keyed.js";
import { live } from "lit-html/directives/live.js";
import type { CellFunction } from "../../functions/declare/cell-function.ts";
import { byFamily, find } from "../../functions/find/find.ts";
import type { Working } from "../../functions/run/invoke.ts";
import { addressText } from "../../workbook/host.ts";
import type { CellAddress } from "../../workbook/ledger.ts";
import { words } from "../parts/notation.ts";
import type { PaneContext, View } from "../parts/view.ts";
import { type Preview, type PreviewPlace, previewOf } from "../typing/preview.ts";
import { callLine } from "../typing/strip.ts";
import { helpLink, result } from "../working/working-parts.ts";
import { exampleTexts, fieldValues, formulaFrom, missing } from "./form.ts";
import { type FormState, fieldId, formFields, newForm } from "./function-form.ts";
import { functionHelp } from "./function-help.ts";

/** Find a function, read about it, fill it in, insert it. */
export class FunctionsView implements View {
  readonly id = "functions";
  readonly label = "Functions";
  readonly #pane: PaneContext;
  readonly #forms = new Map<string, FormState>();
  /** the cell, and what it holds, that Insert would write over: asked once before it does */
  #asked: { readonly at: string; readonly holds: string } | undefined;
  #query = "";
  #open: CellFunction | undefined;
  /** the formula that the preview is of; the preview is undefined while it is being made */
  #tried: { readonly formula: string; readonly preview: Preview | undefined } | undefined;
  /** the argument whose field has the focus */
  #at: string | undefined;

  constructor(pane: PaneContext) {
    this.#pane = pane;
  }

  /** Cells that a preview has read may hold something else now. */
  refresh(): void {
    this.#pane.loadAll();
    const fn = this.#open;
    if (fn !== undefined && !fn.heavy && this.#tried !== undefined) void this.#try(this.#tried.formula, false);
    this.#pane.redraw();
  }

  /** Shows a function; undefined goes back to the list. */
  open(fn: CellFunction | undefined): void {
    this.#open = fn;
    this.#pane.redraw();
  }

  template(): TemplateResult {
    return this.#open === undefined ? this.#list() : html`${keyed(this.#open.id, this.#one(this.#open))}`;
  }

  #list(): TemplateResult {
    const found = find(this.#pane.functions, this.#query);
    const item = (fn: CellFunction) => html`<li>
      <button type="button" class="sw-entry" id="sw-entry-${fn.id}" @click=${() => this.#openFromList(fn)}>
        <span class="sw-name">${fn.name}</span><span class="sw-summary">${fn.summary}</span>
      </button>
    </li>`;
    return html`
      <h2 class="sw-hidden">Functions</h2>
      <label class="sw-hidden" for="sw-search">Find a function</label>
      <input id="sw-search" type="search" placeholder="Find: wind, dew point, sheets …" autocomplete="off"
        .value=${live(this.#query)} @input=${(e: Event) => this.#find((e.target as HTMLInputElement).value)}>
      ${this.#pane.whole ? nothing : html`<p class="sw-quiet">Loading the functions …</p>`}
      ${
        this.#query.trim() !== ""
          ? found.length === 0
            ? html`<div class="sw-note"><p class="sw-what">No function has these words.</p><p>Try fewer or other words.</p></div>`
            : html`<ul class="sw-list sw-entries" aria-label="Functions found">${found.map(item)}</ul>`
          : byFamily(found).map(
              ({ family, functions }) => html`<section class="sw-part">
                <h3>${family}</h3>
                <ul class="sw-list sw-entries">${functions.map(item)}</ul>
              </section>`,
            )
      }
    `;
  }

  #find(query: string): void {
    this.#query = query;
    this.#pane.redraw();
  }

  #openFromList(fn: CellFunction): void {
    this.open(fn);
    // The button that had the focus is gone: go on at the title, and come back to the entry.
    this.#focus("sw-function-title");
  }

  #back(fn: CellFunction): void {
    this.open(undefined);
    this.#focus(`sw-entry-${fn.id}`);
  }

  #focus(id: string): void {
    setTimeout(() => document.getElementById(id)?.focus(), 0);
  }

  #form(fn: CellFunction): FormState {
    const form = this.#forms.get(fn.id) ?? newForm(fn);
    this.#forms.set(fn.id, form);
    return form;
  }

  #one(fn: CellFunction): TemplateResult {
    const form = this.#form(fn);
    const { host, selection } = this.#pane;
    const values = fieldValues(fn, form.texts, form.cells);
    const formula = formulaFrom(fn, values);
    const changed = () => {
      this.#pane.redraw();
    };
    const submit = (event: Event) => {
      event.preventDefault();
      void this.#insert(fn, form);
    };
    return html`
      <p class="sw-back"><button type="button" class="sw-plain" @click=${() => this.#back(fn)}>All functions</button></p>
      <h2 id="sw-function-title" tabindex="-1" class="sw-name">${fn.name}</h2>
      <p>${fn.summary}</p>
      ${helpLink(fn, this.#pane.helpOf(fn))}
      ${callLine(fn, this.#at)}
      <form class="sw-form" @submit=${submit} @focusin=${(e: FocusEvent) => this.#mark(e)} novalidate>
        ${formFields(fn, form, changed)}
        <p class="sw-actions">
          <button type="button" class="sw-plain" @click=${() => this.#fill(fn, exampleTexts(fn))}>Fill in the example</button>
          <button type="button" class="sw-plain" @click=${() => this.#fill(fn, {})}>Clear</button>
        </p>
        <div class="sw-preview">
          <h3>Preview</h3>
          <p class="sw-formula">${formula}</p>
          ${this.#preview(fn, formula, values)}
        </div>
        <p class="sw-actions">
          <button type="submit" class="sw-main" ?disabled=${host === undefined}>${this.#insertWords(selection)}</button>
        </p>
      </form>
      ${functionHelp(fn)}
    `;
  }

  #preview(fn: CellFunction, formula: string, values: ReturnType<typeof fieldValues>): TemplateResult {
    const blank = missing(fn, values);
    if (blank.length > 0) return html`<p class="sw-quiet">Still to fill in: ${blank.map(words).join(", ")}</p>`;
    if (this.#tried?.formula !== formula) {
      // A search is tried only when asked for.
      if (fn.heavy) {
        const tryIt = () => {
          void this.#try(formula, true);
          this.#pane.redraw();
        };
        return html`<p><button type="button" @click=${tryIt}>Calculate the preview</button> <span class="sw-quiet">may take a while</span></p>`;
      }
      void this.#try(formula, false);
    }
    const preview = this.#tried?.preview;
    if (preview === undefined) return html`<p class="sw-quiet" role="status">Working it out …</p>`;
    return "waits" in preview ? html`<p class="sw-quiet">${preview.waits}</p>` : shownPreview(fn, preview.working);
  }

  async #try(formula: string, searches: boolean): Promise<void> {
    const before = this.#tried?.formula === formula ? this.#tried.preview : undefined;
    const tried = { formula, preview: before };
    this.#tried = tried;
    const { functions, explain, host, selection } = this.#pane;
    const place: PreviewPlace = { functions, explain, host, sheet: selection?.sheet ?? "", searches };
    const preview = await previewOf(formula, place);
    if (this.#tried !== tried) return;
    this.#tried = { formula, preview };
    this.#pane.redraw();
  }

  /** The argument that is being filled in is marked in the call. */
  #mark({ target }: FocusEvent): void {
    const field = (target as HTMLElement).closest<HTMLElement>("[data-argument]");
    this.#at = field?.dataset.argument;
    this.#pane.redraw();
  }

  #fill(fn: CellFunction, texts: Readonly<Record<string, string>>): void {
    this.#forms.set(fn.id, newForm(fn, texts));
    this.#pane.redraw();
  }

  #insertWords(selection: CellAddress | undefined): string {
    if (selection === undefined) return "Insert";
    const at = addressText(selection);
    return this.#asked?.at === at ? `Replace what ${at} holds` : `Insert in ${at}`;
  }

  /** A cell that holds something is written over only when asked a second time. */
  async #wouldWriteOver(): Promise<boolean> {
    const { host, selection } = this.#pane;
    if (host === undefined || selection === undefined) return false;
    const [formula, value] = await Promise.all([host.formulaAt(selection), host.valueAt(selection)]);
    const holds = formula !== "" ? formula : String(value ?? "");
    const at = addressText(selection);
    const known = this.#asked?.at === at && this.#asked.holds === holds;
    this.#asked = holds === "" || known ? undefined : { at, holds };
    if (this.#asked === undefined) return false;
    this.#pane.announce(
      `Not inserted: ${at} holds ${holds.slice(0, 60)}. Press again to replace it, or select another cell`,
    );
    return true;
  }

  async #insert(fn: CellFunction, form: FormState): Promise<void> {
    const values = fieldValues(fn, form.texts, form.cells);
    const blank = missing(fn, values);
    for (const name of blank) form.blank.add(name);
    if (blank[0] !== undefined) {
      this.#pane.announce(`Not inserted: fill in ${blank.map(words).join(", ")}`);
      this.#focus(fieldId(fn, blank[0]));
      return;
    }
    try {
      if (await this.#wouldWriteOver()) return;
      const address = await this.#pane.host?.insertFormula(formulaFrom(fn, values));
      if (address !== undefined) this.#pane.announce(`Inserted in ${addressText(address)}`);
    } catch (error) {
      this.#pane.announce(`Not inserted: ${error instanceof Error ? error.message : error}`);
    }
  }
}

function shownPreview(fn: CellFunction, working: Working): TemplateResult {
  const stated = working.arguments.filter((a) => a.omitted && a.shown !== "");
  return html`${result(fn, working.outcome, working)}
    ${working.outcome.ok && stated.length > 0 ? html`<p class="sw-quiet">Assumed: ${stated.map((a) => a.shown).join("; ")}</p>` : nothing}
    ${working.outcome.ok ? working.cautions.filter((c) => !fn.cautions.includes(c)).map((c) => html`<p class="sw-caution-line"><span class="sw-lead">Caution:</span> ${c}</p>`) : nothing}`;
}
