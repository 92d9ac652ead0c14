import { html, nothing, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import type { TermName } from "../../functions/basis/glossary/index.ts";
import { type CellFunction, NAMESPACE } from "../../functions/declare/cell-function.ts";
import { addressText } from "../../workbook/host.ts";
import { BASIS_NAME, SITE_SHEET } from "../../workbook/named-rows.ts";
import type { PaneContext, View } from "../parts/view.ts";
import { composed } from "./compose.ts";
import { type FieldFacts, termField } from "./field.ts";
import { OfferPart } from "./offer-part.ts";
import { entryOf, type Group, type Held, heldIn, SITE_GROUPS, stateOf, type TermState } from "./terms.ts";
import { assumedOf, usesOf } from "./use.ts";

/** The basis of the workbook: every term of the glossary as a control, written into the named range on demand. */
export class SiteView implements View {
  readonly id = "site";
  readonly label = "Site";
  readonly #pane: PaneContext;
  readonly #drafts = new Map<TermName, string>();
  #assumed: ReadonlyMap<TermName, string> | undefined;
  readonly #offers: OfferPart;
  readonly #open = new Map<string, boolean>();
  #uses: ReadonlyMap<TermName, number> = new Map();
  #held: Held | undefined;
  #words = "";
  #turn = 0;

  constructor(pane: PaneContext) {
    this.#pane = pane;
    this.#offers = new OfferPart(pane, (term, text) => this.#draft(term, text));
  }

  refresh(): void {
    this.#pane.loadAll();
    void this.#read();
  }

  async #read(): Promise<void> {
    const { host, functions, whole } = this.#pane;
    if (host?.readName === undefined || !whole) return;
    const turn = ++this.#turn;
    try {
      const held = heldIn(await host.readName(BASIS_NAME));
      if (turn !== this.#turn) return;
      this.#held = held;
      this.#assumed ??= assumedBy(functions);
      this.#uses = usesOf(host.ledger.entries(), functions);
    } catch {
      // While a cell is being typed in, the host refuses to be read; the next change tries again.
    }
    this.#pane.redraw();
  }

  template(): TemplateResult {
    const { host } = this.#pane;
    if (host?.readName === undefined)
      return html`<div class="sw-note"><p class="sw-what">No spreadsheet is connected yet.</p></div>`;
    const held = this.#held;
    if (held === undefined) return html`<p class="sw-quiet" role="status">Reading the basis …</p>`;
    if (!held.ok) {
      return html`<div class="sw-error"><p class="sw-what">${held.said.what}</p><p>${held.said.why}</p><p>${held.said.todo}</p></div>`;
    }
    const states = new Map(SITE_GROUPS.flatMap(({ terms }) => terms.map((t) => [t, stateOf(t, held, this.#drafts)])));
    return html`
      <h2 class="sw-hidden">Basis of the workbook</h2>
      ${held.at === undefined ? this.#beginning() : this.#unused(states)}
      ${this.#actions(held, states)}
      ${this.#offers.template(states)}
      <div class="sw-field">
        <label for="sw-term-find">Find a term</label>
        <input id="sw-term-find" type="search" autocomplete="off" .value=${live(this.#words)} @input=${(e: Event) => this.#find(e)}>
      </div>
      ${SITE_GROUPS.map((group) => this.#group(group, states, held))}
    `;
  }

  #beginning(): TemplateResult {
    return html`<div class="sw-note">
      <p class="sw-what">This workbook has no basis yet.</p>
      <p>Fill in what most formulas share, each figure once; functions then take it from one name: =${NAMESPACE}.WIND_PRESSURE(${BASIS_NAME})</p>
    </div>`;
  }

  #unused(states: ReadonlyMap<TermName, TermState>): TemplateResult | typeof nothing {
    const idle = [...states.values()].filter(({ term, rows }) => rows.length > 0 && !this.#uses.has(term));
    if (idle.length === 0) return nothing;
    return html`<details class="sw-part">
      <summary>${idle.length === 1 ? "1 term that no formula uses yet" : `${idle.length} terms that no formula uses yet`}</summary>
      <p>${idle.map(({ label }) => label).join(", ")}</p>
    </details>`;
  }

  #actions(held: Held & { ok: true }, states: ReadonlyMap<TermName, TermState>): TemplateResult {
    const count = this.#drafts.size;
    const refused = [...states.values()].filter((s) => s.drafted && s.refused !== undefined).length;
    const sound = count - refused;
    const write =
      sound === 0 ? "No change to write" : `Write ${sound === 1 ? "1 change" : `${sound} changes`} to ${BASIS_NAME}`;
    return html`<p class="sw-actions">
      <button type="button" class="sw-main" ?disabled=${count === refused} @click=${() => void this.#write(states)}>${
        held.at === undefined ? `Make the sheet ${SITE_SHEET}` : write
      }</button>
      ${count === 0 ? nothing : html`<button type="button" @click=${() => this.#discard()}>Discard</button>`}
      ${refused === 0 ? nothing : html`<span class="sw-blank">${refused} cannot be read: see below</span>`}
    </p>`;
  }

  #group(
    group: Group,
    states: ReadonlyMap<TermName, TermState>,
    held: Held & { ok: true },
  ): TemplateResult | typeof nothing {
    const all = group.terms.flatMap((term) => states.get(term) ?? []);
    const shown = all.filter((state) => fits(state, this.#words));
    if (shown.length === 0) return nothing;
    const filled = all.filter(({ text }) => text !== "").length;
    const open = this.#words !== "" || (this.#open.get(group.name) ?? group === SITE_GROUPS[0]);
    const folded = (event: Event) => {
      if (this.#words === "") this.#open.set(group.name, (event.target as HTMLDetailsElement).open);
    };
    return html`<details class="sw-optional" .open=${live(open)} @toggle=${folded}>
      <summary>${group.name} <span class="sw-quiet">${filled} of ${all.length} filled in</span></summary>
      ${shown.map((state) =>
        termField(state, {
          assumed: this.#assumed?.get(state.term) ?? "",
          uses: this.#uses.get(state.term) ?? 0,
          changed: (text) => this.#draft(state.term, text),
          cell: this.#cellOf(state, held),
        }),
      )}
    </details>`;
  }

  /** The cell that holds a term's value. */
  #cellOf({ rows: [row] }: TermState, { at }: Held): FieldFacts["cell"] {
    if (row === undefined || at === undefined) return undefined;
    const address = { ...at.first, row: at.first.row + row - 1, column: at.first.column + 1 };
    return { text: addressText(address), go: () => this.#pane.goTo(address) };
  }

  #find(event: Event): void {
    this.#words = (event.target as HTMLInputElement).value.trim().toLowerCase();
    this.#pane.redraw();
  }

  /** Keeps what was typed until it is written; typed back to what the sheet holds, it is no change. */
  #draft(term: TermName, text: string): void {
    const held = this.#held;
    const before = held === undefined ? "" : stateOf(term, held, new Map());
    if (before !== "" && (text === before.text || text === before.chosen)) this.#drafts.delete(term);
    else this.#drafts.set(term, text);
    this.#pane.redraw();
  }

  #discard(): void {
    this.#drafts.clear();
    this.#pane.redraw();
  }

  /** What cannot be read stays in the view, with its sentence. */
  async #write(states: ReadonlyMap<TermName, TermState>): Promise<void> {
    const { host } = this.#pane;
    if (host?.readName === undefined || host.writeBasis === undefined) return;
    const sound = [...this.#drafts].filter(([term]) => states.get(term)?.refused === undefined);
    try {
      // What stands in the sheet now counts, not what stood there when the view was drawn.
      const held = heldIn(await host.readName(BASIS_NAME));
      if (held.ok) {
        await host.writeBasis(composed(held, new Map(sound)));
        for (const [term, text] of sound) if (this.#drafts.get(term) === text) this.#drafts.delete(term);
        this.#pane.announce(held.at === undefined ? `The name ${BASIS_NAME} is made` : `Written to ${BASIS_NAME}`);
      }
    } catch (error) {
      this.#pane.announce(`The basis could not be written: ${error instanceof Error ? error.message : error}`);
    }
    await this.#read();
  }
}

function fits({ term, hint }: TermState, words: string): boolean {
  const all = [term, hint, ...entryOf(term).aliases].join(" ").toLowerCase();
  return words.split(/\s+/).every((word) => all.includes(word));
}

/** What is taken for each term that a basis leaves out. */
function assumedBy(functions: readonly CellFunction[]): ReadonlyMap<TermName, string> {
  const terms = SITE_GROUPS.flatMap((group) => group.terms);
  return new Map(terms.map((term) => [term, assumedOf(term, entryOf(term).omitted, functions)]));
}
