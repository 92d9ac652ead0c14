import { html, nothing, type TemplateResult } from "lit-html";
import { keyed } from "lit-html/directives/keyed.js";
import type { Cell } from "../../core/kit/tape.ts";
import { type CellFunction, NAMESPACE } from "../../functions/declare/cell-function.ts";
import type { ShownArgument } from "../../functions/run/arguments.ts";
import type { Working } from "../../functions/run/invoke.ts";
import { addressText, columnLetters, type Host } from "../../workbook/host.ts";
import type { CellAddress, LedgerCall } from "../../workbook/ledger.ts";
import { copyImage, imageOf } from "../drawings/image.ts";
import { copy } from "../parts/clipboard.ts";
import { saveFile } from "../parts/files.ts";
import { copyText, isTable, shownCell } from "../parts/numbers.ts";
import type { PaneContext, View } from "../parts/view.ts";
import { argumentTexts, isName, referenceStart } from "./argument-places.ts";
import { type Call, callsOf, namesIn, spillsOver } from "./calls.ts";
import { errorIn, noteFor } from "./cell-notes.ts";
import { printPicture } from "./print.ts";
import { type Sample, sampleOf } from "./sample.ts";
import {
  type ArgumentLink,
  errorBox,
  helpLink,
  type PictureActions,
  pictures,
  result,
  workingBody,
} from "./working-parts.ts";

interface CellState {
  readonly address: CellAddress;
  readonly formula: string;
  readonly value: Cell | undefined;
  readonly calls: readonly Call[];
  /** the cell whose table reaches over this one */
  readonly spilledFrom: CellAddress | undefined;
}

type State = { readonly kind: "none" } | { readonly kind: "unread" } | ({ readonly kind: "cell" } & CellState);

/** The selected cell: what its functions were given, how they came to their numbers, and what to know about them. */
export class WorkingView implements View {
  readonly id = "working";
  readonly label = "Working";
  readonly #pane: PaneContext;
  /** undefined while a working is being made */
  readonly #workings = new WeakMap<LedgerCall, Working | undefined>();
  #state: State = { kind: "none" };
  #sample: Sample | undefined;
  #turn = 0;

  constructor(pane: PaneContext) {
    this.#pane = pane;
  }

  refresh(): void {
    void this.#read();
  }

  async #read(): Promise<void> {
    const turn = ++this.#turn;
    const { host, selection } = this.#pane;
    let state: State = { kind: "none" };
    if (host !== undefined && selection !== undefined) {
      try {
        state = { kind: "cell", ...(await readCell(host, selection, this.#pane)) };
      } catch {
        // While a cell is being typed in, the host refuses to be read; the next selection or calculation tries again.
        state = { kind: "unread" };
      }
    }
    if (turn !== this.#turn) return;
    this.#state = state;
    const bare = host !== undefined && state.kind === "cell" && state.calls.length === 0;
    this.#sample = bare ? sampleOf(host.ledger.entries(), this.#pane.functions, this.#pane.explain) : undefined;
    this.#pane.redraw();
  }

  template(): TemplateResult {
    const { host } = this.#pane;
    if (host === undefined) return note("No spreadsheet is connected yet.", "The working appears when it is.");
    const state = this.#state;
    if (state.kind === "unread")
      return note("The cell cannot be read just now.", "Finish typing in it, then select it again.");
    if (state.kind === "none") return note("No cell is selected.", "Select a cell that holds a Sillwork function.");
    return html`
      <header class="sw-cell">
        <h2>${addressText(state.address)}</h2>
        ${state.formula === "" ? nothing : html`<p class="sw-formula">${state.formula}</p>`}
      </header>
      ${this.#content(state)}
    `;
  }

  #content(state: CellState): TemplateResult {
    if (state.calls.length === 0) return this.#nothingToShow(state);
    const error = errorIn(state.value);
    // An error of the spreadsheet around calls that went well.
    const around = error !== undefined && state.calls.every((c) => c.call.outcome.ok);
    return html`
      ${around ? errorBox("Spreadsheet error", noteFor({ ...state, names: [], known: [] })) : nothing}
      ${state.calls.length > 1 ? html`<p class="sw-quiet">${state.calls.length} calls, outermost first</p>` : nothing}
      ${state.calls.map(({ fn, call }, i) => keyed(call, this.#call({ fn, call }, i, state)))}
    `;
  }

  #nothingToShow(state: CellState): TemplateResult {
    const from = state.spilledFrom;
    if (from !== undefined) {
      return html`
        <p class="sw-result">${state.value === undefined ? nothing : shownCell(state.value)}</p>
        <p>This value belongs to the table that starts in ${addressText(from)}.</p>
        <p><button type="button" @click=${() => this.#pane.goTo(from)}>Go to ${addressText(from)}</button></p>
      `;
    }
    const said = noteFor({ ...state, names: namesIn(state.formula), known: this.#pane.names });
    if (said.tone === "error") return errorBox(errorIn(state.value) ?? "Error", said);
    return html`
      <div class="sw-note">
        <p class="sw-what">${said.what}</p>
        ${said.why === "" ? nothing : html`<p>${said.why}</p>`}
        <p>${said.todo}</p>
      </div>
      ${this.#sampleShown()}
    `;
  }

  #sampleShown(): TemplateResult | typeof nothing {
    if (this.#sample === undefined) return nothing;
    const { address, fn, working } = this.#sample;
    return html`<section class="sw-part">
      <h3>From this workbook: ${addressText(address)}</h3>
      ${pictures(working, this.#pictureActions(fn, working, 0, address))}
      <p class="sw-actions"><button type="button" class="sw-plain" @click=${() => this.#pane.goTo(address)}>See its working</button></p>
    </section>`;
  }

  #call({ fn, call }: Call, order: number, state: CellState): TemplateResult {
    const working = this.#working({ fn, call });
    const outcome = working?.outcome ?? call.outcome;
    const { calls } = state;
    // Calls are listed outermost first, and the outermost stands first in the text.
    const nth = calls.filter((c) => c.fn === fn).findIndex((c) => c.call === call);
    const texts = argumentTexts(state.formula, fn.name, nth) ?? [];
    return html`<article class="sw-call ${order === 0 ? "" : "sw-inner"}">
      <h3><span class="sw-name">${fn.name}</span></h3>
      <p class="sw-quiet">${fn.summary}</p>
      ${working === undefined ? nothing : pictures(working, this.#pictureActions(fn, working, order, state.address))}
      ${result(fn, outcome, working)}
      <p class="sw-actions">
        ${outcome.ok ? html`<button type="button" class="sw-plain" @click=${() => this.#copy(copyText(outcome.value))}>Copy ${isTable(outcome.value) ? "table" : "value"}</button>` : nothing}
        <button type="button" class="sw-plain" @click=${() => this.#pane.openFunction(fn.name)}>About ${fn.name}</button>
      </p>
      ${
        working === undefined
          ? html`<p class="sw-quiet" role="status">Working it out …</p>`
          : workingBody(fn, working, call.args, (a, place) =>
              this.#linkOf(fn.takesBasis, a, texts, place, state.address),
            )
      }
      ${helpLink(fn, this.#pane.helpOf(fn))}
    </article>`;
  }

  /** The cell that an argument came from: the reference in its place, or the row of the basis that stands in the call. */
  #linkOf(
    takesBasis: boolean,
    argument: ShownArgument,
    texts: readonly string[],
    place: number,
    { sheet }: CellAddress,
  ): ArgumentLink | undefined {
    const row = /row (\d+)$/.exec(argument.from)?.[1];
    if (row === undefined) {
      const text = argument.omitted ? "" : (texts[place] ?? "");
      return this.#link(text, text, 0, sheet);
    }
    const bases = takesBasis ? texts.filter((t) => isName(t) || t.includes(":")) : [];
    const nth = /^(first|second|third|fourth)/.exec(argument.from)?.[1];
    const text = nth === undefined ? bases.at(-1) : bases.slice(-2)[nth === "first" ? 0 : 1];
    return text === undefined ? undefined : this.#link(text, `from the ${argument.from}`, Number(row) - 1, sheet);
  }

  #link(reference: string, text: string, down: number, sheet: string): ArgumentLink | undefined {
    const { host } = this.#pane;
    const start = referenceStart(reference, sheet);
    const below = (at: CellAddress): CellAddress => ({ ...at, row: at.row + down });
    if (start !== undefined) return { text, go: () => this.#pane.goTo(below(start)) };
    if (!isName(reference) || host?.cellOfName === undefined) return undefined;
    const go = async () => {
      try {
        const at = await host.cellOfName?.(reference);
        if (at === undefined) this.#pane.announce(`There is no name ${reference} in this workbook: make it in Site`);
        else this.#pane.goTo(below(at));
      } catch (error) {
        this.#pane.announce(error instanceof Error ? error.message : String(error));
      }
    };
    return { text, go: () => void go() };
  }

  /** The working of a call; undefined while it is being made, and the view is drawn again when it is there. */
  #working({ fn, call }: Call): Working | undefined {
    if (this.#workings.has(call)) return this.#workings.get(call);
    const found = this.#pane.explain(fn, call.args);
    this.#workings.set(call, found instanceof Promise ? undefined : found);
    if (!(found instanceof Promise)) return found;
    found.then((working) => {
      this.#workings.set(call, working);
      this.#pane.redraw();
    });
    return undefined;
  }

  #pictureActions(fn: CellFunction, working: Working, order: number, address: CellAddress): PictureActions {
    const { host } = this.#pane;
    const { name } = fn;
    const place = host?.placeImage?.bind(host);
    const cell = `${columnLetters(address.column)}${address.row + 1}`;
    return {
      copy: async (picture) => {
        const copied = await copyImage(picture, name);
        this.#pane.announce(copied ? "Picture copied" : "The clipboard takes no pictures here");
      },
      print: (picture) => printPicture(fn, working, picture, addressText(address)),
      save: async (picture) => {
        const { png } = await imageOf(picture, name);
        saveFile(`${name} ${cell}.png`, `data:image/png;base64,${png}`);
        this.#pane.announce("The picture is saved as a file");
      },
      place:
        place &&
        (async (picture, number) => {
          const which = [order, number].some((n) => n > 0) ? ` ${order + 1}.${number + 1}` : "";
          try {
            await place(address, await imageOf(picture, `Sillwork ${name} ${cell}${which}`));
            this.#pane.announce("The picture stands beside the cells; placed again, it takes the place of this one");
          } catch {
            this.#pane.announce("The picture could not be placed just now: finish typing in the sheet and try again");
          }
        }),
    };
  }

  async #copy(text: string): Promise<void> {
    this.#pane.announce((await copy(text)) ? "Copied with all digits" : "The clipboard is not open to the pane here");
  }
}

function note(what: string, todo: string): TemplateResult {
  return html`<div class="sw-note"><p class="sw-what">${what}</p><p>${todo}</p></div>`;
}

async function readCell(host: Host, address: CellAddress, pane: PaneContext): Promise<CellState> {
  const [formula, value] = await Promise.all([host.formulaAt(address), host.valueAt(address)]);
  const entry = host.ledger.at(address);
  const calls = entry === undefined ? [] : callsOf(formula, entry.calls, pane.functions);
  // An empty cell is in no table, and looking for one goes through the whole ledger.
  const looks = calls.length === 0 && value !== undefined && value !== "" && entry === undefined;
  return { address, formula, value, calls, spilledFrom: looks ? await spillOf(host, address) : undefined };
}

/** A formula that is a call of ours from its start. */
const STARTS_WITH_OURS = new RegExp(String.raw`^=\s*${NAMESPACE}\.`, "i");

/** The nearest cell whose table covers `address` and whose formula is a call of ours and nothing else around it. */
async function spillOf(host: Host, address: CellAddress): Promise<CellAddress | undefined> {
  for (const from of spillsOver(address, host.ledger.entries())) {
    const formula = await host.formulaAt(from);
    if (namesIn(formula).length > 0 && STARTS_WITH_OURS.test(formula)) return from;
  }
  return undefined;
}
