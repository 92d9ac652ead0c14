import { html, nothing, type TemplateResult } from "lit-html";
import { addressText } from "../../workbook/host.ts";
import type { CellAddress, LedgerEntry } from "../../workbook/ledger.ts";
import { type CellRun, runs } from "../parts/cells.ts";
import { ended } from "../parts/ended.ts";
import { inIdleSlices } from "../parts/idle.ts";
import type { PaneContext, View } from "../parts/view.ts";
import { BASIS_SHEET, basisRows, count } from "./basis-sheet.ts";
import { type Findings, type FoundSentence, Gathering } from "./findings.ts";
import { asksFormula, Survey } from "./survey.ts";

/** How many entries of a list, and places of an entry, are drawn until more are asked for. */
const ENTRIES = 20;
const PLACES = 12;

/** The workbook: errors, cautions and assumptions of every cell that uses the functions. */
export class CautionsView implements View {
  readonly id = "cautions";
  readonly label = "Cautions";
  readonly #pane: PaneContext;
  readonly #survey: Survey;
  /** how many are drawn, by list */
  readonly #drawn = new Map<string, number>();
  readonly #runs = new WeakMap<FoundSentence, readonly CellRun[]>();
  #stop: (() => void) | undefined;
  #turn = 0;
  #found: Findings | undefined;

  constructor(pane: PaneContext) {
    this.#pane = pane;
    this.#survey = new Survey(pane.functions);
  }

  refresh(): void {
    void this.#start();
  }

  rest(): void {
    this.#turn++;
    this.#stop?.();
  }

  async #start(): Promise<void> {
    this.#stop?.();
    const turn = ++this.#turn;
    const { host } = this.#pane;
    if (host === undefined) return;
    const entries = host.ledger.entries();
    const formulas = await formulasOf(entries, (address) => host.formulaAt(address));
    if (turn !== this.#turn) return;
    this.#survey.start(entries, formulas);
    const gathering = new Gathering();
    this.#stop = inIdleSlices((mayGoOn) => {
      this.#survey.work(mayGoOn);
      for (const cell of this.#survey.cells.slice(gathering.cells)) gathering.add(cell);
      // What stood there before stays until the new list is whole, so that the lists do not jump.
      if (this.#survey.done) this.#found = gathering.findings();
      this.#pane.redraw();
      return this.#survey.done ? "done" : "more";
    });
  }

  template(): TemplateResult {
    if (this.#pane.host === undefined) {
      return html`<div class="sw-note"><p class="sw-what">No spreadsheet is connected yet.</p></div>`;
    }
    const found = this.#found;
    const { done, total, cells } = this.#survey;
    return html`
      <h2 class="sw-hidden">Cautions of the workbook</h2>
      ${done ? nothing : html`<p class="sw-quiet">Working through ${count(total, "cell")} <progress max=${total} value=${cells.length} aria-label="Cells looked at"></progress></p>`}
      ${found === undefined ? nothing : found.cells === 0 ? this.#empty() : this.#findings(found)}
    `;
  }

  #empty(): TemplateResult {
    return html`<div class="sw-note">
      <p class="sw-what">No cell of this workbook has used a Sillwork function yet.</p>
      <p>Insert one from Functions, or recalculate the workbook if it holds some already.</p>
    </div>`;
  }

  #findings(found: Findings): TemplateResult {
    return html`
      <dl class="sw-counts">
        ${counted("cells", found.cells)}
        ${counted("errors", found.errors.length, "sw-bad")}
        ${counted("cautions", found.inputCautions.length + found.standingCautions.length, "sw-warn")}
        ${counted("assumptions", found.assumptions.length)}
      </dl>
      <p><button type="button" class="sw-main" @click=${() => this.#write(found)}>Write to a worksheet</button></p>
      ${this.#section("errors", "Errors", found.errors, (e) => {
        const { said } = e;
        return html`<li class="sw-found sw-bad">
          <p class="sw-place">${this.#place(e.address, addressText(e.address))} <span class="sw-quiet">${e.code} · ${e.fn.name}</span></p>
          <p class="sw-what">${ended(said.what)}</p>
          <p>${ended(said.why)} ${ended(said.todo)}</p>
        </li>`;
      })}
      ${this.#sentences("inputs", "Cautions for particular cells", found.inputCautions, "sw-warn")}
      ${this.#sentences("standing", "Cautions for every use", found.standingCautions, "sw-warn")}
      ${this.#sentences("assumptions", "Assumptions that no cell states", found.assumptions, "")}
    `;
  }

  #sentences(id: string, title: string, list: readonly FoundSentence[], look: string) {
    return this.#section(id, title, list, (f) => {
      const places = this.#places(f);
      const key = `${id}\u0000${f.sentence}`;
      const drawn = this.#drawn.get(key) ?? PLACES;
      return html`<li class="sw-found ${look}">
        <p>${f.sentence}</p>
        <p class="sw-quiet">${f.functions.join(", ")} · ${count(f.cells.length, "cell")}</p>
        <ul class="sw-places" aria-label="Cells">
          ${places.slice(0, drawn).map((p) => html`<li>${this.#place(p.first, p.text)}</li>`)}
          ${places.length > drawn ? html`<li>${this.#more(key, drawn, places.length, 100)}</li>` : nothing}
        </ul>
      </li>`;
    });
  }

  #section<T>(id: string, title: string, list: readonly T[], item: (entry: T) => TemplateResult) {
    if (list.length === 0) return nothing;
    const drawn = this.#drawn.get(id) ?? ENTRIES;
    return html`<section class="sw-part" aria-labelledby="sw-${id}">
      <h3 id="sw-${id}">${title} <span class="sw-quiet">${list.length.toLocaleString("en-US")}</span></h3>
      <ul class="sw-list">${list.slice(0, drawn).map(item)}</ul>
      ${list.length > drawn ? this.#more(id, drawn, list.length, 100) : nothing}
    </section>`;
  }

  /** A list is drawn again after every message; its places are gathered once. */
  #places(found: FoundSentence): readonly CellRun[] {
    const known = this.#runs.get(found) ?? runs(found.cells);
    this.#runs.set(found, known);
    return known;
  }

  #place(address: CellAddress, text: string): TemplateResult {
    return html`<button type="button" class="sw-goto" @click=${() => this.#pane.goTo(address)}>${text}</button>`;
  }

  #more(key: string, drawn: number, total: number, step: number): TemplateResult {
    const next = Math.min(step, total - drawn);
    const show = () => {
      this.#drawn.set(key, drawn + next);
      this.#pane.redraw();
    };
    return html`<button type="button" class="sw-plain" @click=${show}>Show ${next} more of ${(total - drawn).toLocaleString("en-US")}</button>`;
  }

  async #write(found: Findings): Promise<void> {
    try {
      const name = await this.#pane.host?.writeSheet(BASIS_SHEET, basisRows(found));
      if (name !== undefined) this.#pane.announce(`Written to worksheet ${name}`);
    } catch (error) {
      this.#pane.announce(`The worksheet could not be written: ${error instanceof Error ? error.message : error}`);
    }
  }
}

function counted(label: string, value: number, look = ""): TemplateResult {
  return html`<div class=${value > 0 ? look : ""}><dt>${label}</dt><dd>${value.toLocaleString("en-US")}</dd></div>`;
}

/** How many formulas are asked for at once. */
const AT_ONCE = 50;

/** Formulas of the cells for which the ledger alone cannot tell which calls are current. */
async function formulasOf(entries: readonly LedgerEntry[], formulaAt: (address: CellAddress) => Promise<string>) {
  const asked = entries.filter(asksFormula);
  const formulas = new Map<LedgerEntry, string>();
  for (let i = 0; i < asked.length; i += AT_ONCE) {
    await Promise.all(
      asked.slice(i, i + AT_ONCE).map(async (entry) => {
        try {
          formulas.set(entry, await formulaAt(entry.address));
        } catch {
          // Its sheet is gone or a cell is being typed in: the latest call of each function stands in.
        }
      }),
    );
  }
  return formulas;
}
