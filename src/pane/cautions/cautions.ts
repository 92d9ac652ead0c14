import { html, nothing, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import type { Said } from "../../core/kit/refusal.ts";
import { addressText, type Host } from "../../workbook/host.ts";
import type { CellAddress, LedgerEntry } from "../../workbook/ledger.ts";
import { type CellRun, runs } from "../parts/cells.ts";
import { ended } from "../parts/ended.ts";
import { inIdleSlices } from "../parts/idle.ts";
import type { PaneContext, View } from "../parts/view.ts";
import { BASIS_SHEET, basisRows, count, inputsOf } from "./basis-sheet.ts";
import { type Findings, type FoundSentence, familiesOf, Gathering } from "./findings.ts";
import { asksFormula, Survey } from "./survey.ts";
import { Ticks } from "./ticks.ts";
import { type Looked, look } from "./workbook-scan.ts";

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
  #looked: Looked | undefined;
  readonly #ticks: Ticks;
  #words = "";
  #hidesSeen = false;

  constructor(pane: PaneContext) {
    this.#pane = pane;
    this.#survey = new Survey(() => pane.functions);
    this.#ticks = new Ticks((sentence) => pane.announce(sentence));
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
    const looking = this.#look(host, turn);
    const reading = this.#ticks.read(host);
    const entries = host.ledger.entries();
    const formulas = await formulasOf(entries, (address) => host.formulaAt(address));
    if (turn !== this.#turn) return;
    this.#survey.start(entries, formulas);
    const gathering = new Gathering();
    this.#stop = inIdleSlices((mayGoOn) => {
      this.#survey.work(mayGoOn);
      for (const cell of this.#survey.cells.slice(gathering.cells)) gathering.add(cell);
      // What stood there before stays until the new list is whole, so that the lists do not jump.
      if (this.#survey.done) {
        this.#found = gathering.findings();
        void Promise.all([looking, reading]).then(() => this.#dropTicks(turn));
      }
      this.#pane.redraw();
      return this.#survey.done ? "done" : "more";
    });
  }

  /** Of cautions that changed; only where every cell has calculated, since a workbook that was just opened has told nothing yet. */
  async #dropTicks(turn: number): Promise<void> {
    if (turn !== this.#turn || this.#found === undefined || this.#looked?.coverage.waiting.length !== 0) return;
    await this.#ticks.drop(this.#found);
    this.#pane.redraw();
  }

  /** The worksheets themselves: what was calculated before plays no part in what they hold. */
  async #look(host: Host, turn: number): Promise<void> {
    try {
      const looked = await look(host);
      if (turn !== this.#turn) return;
      this.#looked = looked;
      this.#pane.redraw();
    } catch {
      // While a cell is being typed in the host refuses; the next change tries again.
      this.#looked = undefined;
    }
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
      ${found === undefined ? nothing : found.cells === 0 && this.#nothingThere() ? this.#empty() : this.#findings(found)}
    `;
  }

  #nothingThere(): boolean {
    return this.#looked === undefined || (this.#looked.coverage.ours === 0 && this.#looked.errors.length === 0);
  }

  /** A workbook that was just opened keeps its stored values and has told nothing yet. */
  #waiting(): TemplateResult | typeof nothing {
    const { host } = this.#pane;
    const covered = this.#looked?.coverage;
    if (host === undefined || covered === undefined || covered.waiting.length === 0) return nothing;
    const calculate = async () => {
      this.#pane.announce(`Calculating ${count(covered.waiting.length, "cell")}`);
      try {
        const refused = await host.calculate(covered.waiting);
        if (refused.length > 0) this.#pane.announce(`${count(refused.length, "cell")} could not be calculated`);
      } catch (error) {
        this.#pane.announce(error instanceof Error ? error.message : String(error));
      }
      this.refresh();
    };
    return html`<div class="sw-note">
      <p class="sw-what">${covered.says}</p>
      <p>The others keep the values that they were saved with, and their cautions are not in these lists.</p>
      <p><button type="button" @click=${() => void calculate()}>Calculate the rest</button></p>
    </div>`;
  }

  #empty(): TemplateResult {
    return html`<div class="sw-note">
      <p class="sw-what">No cell of this workbook uses a Sillwork function yet.</p>
      <p>Insert one from Functions, or recalculate the workbook if it holds some already.</p>
    </div>`;
  }

  #findings(found: Findings): TemplateResult {
    const errors = this.#looked?.errors ?? [];
    return html`
      ${this.#waiting()}
      <dl class="sw-counts">
        ${counted("cells", Math.max(found.cells, this.#looked?.coverage.ours ?? 0))}
        ${counted("errors", found.errors.length + errors.length, "sw-bad")}
        ${counted("cautions", found.inputCautions.length + found.standingCautions.length + found.mixed.length, "sw-warn")}
        ${counted("assumptions", found.assumptions.length)}
      </dl>
      ${this.#filter()}
      <p><button type="button" class="sw-main" @click=${() => this.#write(found)}>Write to a worksheet</button></p>
      ${this.#section("errors", "Errors", found.errors, (e) => this.#error(e.address, `${e.code} · ${e.fn.name}`, e.said))}
      ${this.#section("sheet-errors", "Errors of the spreadsheet", errors, (e) => this.#error(e.address, e.error, e.said))}
      ${this.#sentences("mixed", "Mixed editions", found.mixed, "sw-warn")}
      ${this.#sentences("inputs", "Cautions for particular cells", found.inputCautions, "sw-warn")}
      ${this.#sentences("standing", "Cautions for every use", found.standingCautions, "sw-warn")}
      ${this.#assumptions(found.assumptions)}
    `;
  }

  #error(address: CellAddress, tag: string, { what, why, todo }: Said): TemplateResult {
    return html`<li class="sw-found sw-bad">
      <p class="sw-place">${this.#place(address, addressText(address))} <span class="sw-quiet">${tag}</span></p>
      <p class="sw-what">${ended(what)}</p>
      <p>${ended(why)} ${ended(todo)}</p>
    </li>`;
  }

  /** Words that a sentence must hold to stay in the lists, and whether those that were ticked leave them. */
  #filter(): TemplateResult {
    const words = (event: Event) => {
      this.#words = (event.target as HTMLInputElement).value;
      this.#pane.redraw();
    };
    const hide = (event: Event) => {
      this.#hidesSeen = (event.target as HTMLInputElement).checked;
      this.#pane.redraw();
    };
    return html`<div class="sw-filter">
      <label for="sw-filter-words">Only with the words</label>
      <input id="sw-filter-words" type="search" autocomplete="off" .value=${live(this.#words)} @input=${words}>
      <label><input type="checkbox" .checked=${live(this.#hidesSeen)} @change=${hide}> Hide what is ticked as seen</label>
    </div>`;
  }

  #isShown(found: FoundSentence): boolean {
    const { sentence, functions } = found;
    if (this.#hidesSeen && this.#ticks.has(found)) return false;
    const text = `${sentence} ${functions.join(" ")}`.toLowerCase();
    return this.#words
      .toLowerCase()
      .split(/\s+/)
      .every((word) => text.includes(word));
  }

  #sentences(id: string, title: string, all: readonly FoundSentence[], look: string) {
    const list = all.filter((f) => this.#isShown(f));
    return this.#section(id, title, list, (f) => this.#sentence(id, f, look));
  }

  #sentence(id: string, f: FoundSentence, look: string): TemplateResult {
    const places = this.#places(f);
    const key = `${id}\u0000${f.sentence}`;
    const drawn = this.#drawn.get(key) ?? PLACES;
    return html`<li class="sw-found ${look}">
      <p>${f.sentence}</p>
      <label class="sw-quiet"><input type="checkbox" .checked=${live(this.#ticks.has(f))} @change=${() => this.#tick(f)}> seen</label>
      <p class="sw-quiet">${f.functions.join(", ")} · ${count(f.cells.length, "cell")}</p>
      <ul class="sw-places" aria-label="Cells">
        ${places.slice(0, drawn).map((p) => html`<li>${this.#place(p.first, p.text)}</li>`)}
        ${places.length > drawn ? html`<li>${this.#more(key, drawn, places.length, 100)}</li>` : nothing}
      </ul>
    </li>`;
  }

  /** By family, folded until they are asked for or looked for: what goes without saying is the longest of the lists. */
  #assumptions(all: readonly FoundSentence[]): TemplateResult | typeof nothing {
    const list = all.filter((f) => this.#isShown(f));
    if (list.length === 0) return nothing;
    return html`<section class="sw-part" aria-labelledby="sw-assumptions">
      <h3 id="sw-assumptions">Assumptions that no cell states <span class="sw-quiet">${list.length.toLocaleString("en-US")}</span></h3>
      ${familiesOf(list, this.#pane.functions).map(([family, own]) => {
        const id = `assumptions ${family}`;
        const drawn = this.#drawn.get(id) ?? ENTRIES;
        return html`<details class="sw-optional" ?open=${this.#words !== ""}>
          <summary>${family} <span class="sw-quiet">${own.length}</span></summary>
          <ul class="sw-list">${own.slice(0, drawn).map((f) => this.#sentence(id, f, ""))}</ul>
          ${own.length > drawn ? this.#more(id, drawn, own.length, 100) : nothing}
        </details>`;
      })}
    </section>`;
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

  #tick(found: FoundSentence): void {
    void this.#ticks.tick(found).then(() => this.#pane.redraw());
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
      const inputs = await inputsOf(this.#pane.host);
      const report = { found, cells: this.#survey.cells, looked: this.#looked, ...inputs };
      const name = await this.#pane.host?.writeSheet(BASIS_SHEET, basisRows(report));
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
