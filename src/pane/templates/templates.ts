import { html, nothing, type TemplateResult } from "lit-html";
import type { TemplateSummary } from "../../workbook/host.ts";
import type { PaneContext, View } from "../parts/view.ts";

/** The worksheets to start from: what each is for, into this workbook or into a file. */
export class TemplatesView implements View {
  readonly id = "templates";
  readonly label = "Templates";
  readonly #pane: PaneContext;
  #list: readonly TemplateSummary[] | undefined;
  /** the template that is being put in or written; others wait */
  #busy: string | undefined;
  /** what came of it, which stays in sight */
  #said: { readonly name: string; readonly sentence: string } | undefined;

  constructor(pane: PaneContext) {
    this.#pane = pane;
  }

  refresh(): void {
    if (this.#list === undefined) void this.#read();
  }

  async #read(): Promise<void> {
    this.#list = await this.#pane.host?.templates?.().catch(() => undefined);
    this.#pane.redraw();
  }

  template(): TemplateResult {
    const { host } = this.#pane;
    if (host?.templates === undefined)
      return html`<div class="sw-note"><p class="sw-what">No spreadsheet is connected yet.</p></div>`;
    if (this.#list === undefined) return html`<p class="sw-quiet" role="status">Reading the templates …</p>`;
    return html`
      <h2 class="sw-hidden">Templates</h2>
      <p>Worksheets ready to fill, with the figures of an invented building in them: change the marked cells to yours. They go in as new sheets; nothing of yours is written over.</p>
      <ul class="sw-list sw-templates">${this.#list.map((template) => this.#one(template))}</ul>
    `;
  }

  #one({ name, sheets }: TemplateSummary): TemplateResult {
    const { host } = this.#pane;
    const file = host?.templateFile?.bind(host);
    const said = this.#said?.name === name ? this.#said.sentence : "";
    const waits = this.#busy !== undefined;
    return html`<li>
      <h3>${name}</h3>
      <p>${sheets.at(-1)?.says}</p>
      <p class="sw-quiet">${sheets.length === 1 ? "Sheet" : "Sheets"}: ${sheets.map((sheet) => sheet.name).join(", ")}</p>
      <p class="sw-actions">
        <button type="button" aria-label="Insert ${name}" ?disabled=${waits} @click=${() => void this.#insert(name)}>Insert</button>
        ${file === undefined ? nothing : html`<button type="button" class="sw-plain" aria-label="Save as .xlsx: ${name}" ?disabled=${waits} @click=${() => void this.#do(name, () => file(name))}>Save as .xlsx</button>`}
      </p>
      ${this.#busy === name ? html`<p class="sw-quiet" role="status">Working on it …</p>` : nothing}
      ${said === "" ? nothing : html`<p role="status">${said}</p>`}
    </li>`;
  }

  async #insert(name: string): Promise<void> {
    const { host } = this.#pane;
    await this.#do(name, async () => (await host?.insertTemplate?.(name))?.says ?? "");
  }

  async #do(name: string, work: () => Promise<string>): Promise<void> {
    this.#busy = name;
    this.#pane.redraw();
    try {
      this.#said = { name, sentence: await work() };
    } catch (error) {
      this.#said = { name, sentence: `Not done: ${error instanceof Error ? error.message : error}` };
    }
    this.#busy = undefined;
    this.#pane.redraw();
  }
}
