import { html, nothing, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import type { CellFunction, NamedParam } from "../../functions/declare/cell-function.ts";
import { hintOf } from "../../functions/declare/describe.ts";
import { isOptional } from "../../functions/declare/param.ts";
import { words } from "../parts/notation.ts";
import type { FormTexts } from "./form.ts";
import { columnHelp } from "./function-help.ts";

/** What the form of one function holds. */
export interface FormState {
  readonly texts: Record<string, string>;
  /** choices that are read from a cell */
  readonly cells: Set<string>;
  /** required fields that were blank when Insert was pressed */
  readonly blank: Set<string>;
  /** whether the optional fields are unfolded */
  open: boolean;
}

/** A form with these texts; the optional fields are unfolded when one of them holds something, or when there are no others. */
export function newForm(fn: CellFunction, texts: FormTexts = {}): FormState {
  const optional = fn.params.filter(({ param }) => isOptional(param));
  const used = optional.some(({ name }) => texts[name] !== undefined);
  return {
    texts: { ...texts },
    cells: new Set(),
    blank: new Set(),
    open: used || optional.length === fn.params.length,
  };
}

/** Stands among the choices for "read it from a cell". */
const FROM_CELL = "\u0000cell";

/** One native control for each parameter. `changed` is called after the state has taken an input. */
export function formFields(fn: CellFunction, form: FormState, changed: () => void): TemplateResult {
  const required = fn.params.filter(({ param }) => !isOptional(param));
  const rest = fn.params.filter(({ param }) => isOptional(param));
  const folded = (event: Event) => {
    form.open = (event.target as HTMLDetailsElement).open;
  };
  const fields = (list: readonly NamedParam[]) => list.map((p) => field(fn, p, form, changed));
  return html`${fields(required)}${
    rest.length === 0
      ? nothing
      : html`<details class="sw-optional" .open=${live(form.open)} @toggle=${folded}>
          <summary>Optional: ${rest.map(({ name }) => words(name)).join(", ")}</summary>
          ${fields(rest)}
        </details>`
  }`;
}

export function fieldId(fn: CellFunction, name: string): string {
  return `sw-field-${fn.id}-${name}`;
}

function field(fn: CellFunction, { name, param }: NamedParam, form: FormState, changed: () => void): TemplateResult {
  const id = fieldId(fn, name);
  const choices = param.kind === "list" ? undefined : param.choices;
  const fromCell = form.cells.has(name);
  const blank = form.blank.has(name);
  const set = (text: string) => {
    form.texts[name] = text;
    form.blank.delete(name);
    changed();
  };
  const picked = (value: string) => {
    if (value === FROM_CELL) form.cells.add(name);
    else form.cells.delete(name);
    set(value === FROM_CELL ? "" : value);
  };
  const describedBy = `${id}-hint${blank ? ` ${id}-blank` : ""}`;
  const input = (
    inputId: string,
    label: string | typeof nothing,
  ) => html`<input id=${inputId} type="text" autocomplete="off" spellcheck="false"
    aria-label=${label} aria-describedby=${describedBy} aria-invalid=${blank ? "true" : nothing} aria-required=${isOptional(param) ? nothing : "true"}
    placeholder=${fromCell || param.kind === "table" || param.kind === "list" ? "B2:D9" : nothing}
    .value=${live(form.texts[name] ?? "")} @input=${(e: Event) => set((e.target as HTMLInputElement).value)}>`;
  return html`<div class="sw-field" data-argument=${name}>
    <label for=${id}>${words(name)}</label>
    <div class="sw-control">
      ${
        choices === undefined
          ? html`${input(id, nothing)}${param.unit === "" ? nothing : html`<span class="sw-unit">${param.unit}</span>`}`
          : html`<select id=${id} aria-describedby=${describedBy} aria-invalid=${blank ? "true" : nothing} aria-required=${isOptional(param) ? nothing : "true"}
              .value=${live(fromCell ? FROM_CELL : (form.texts[name] ?? ""))} @change=${(e: Event) => picked((e.target as HTMLSelectElement).value)}>
              <option value="">${isOptional(param) ? "left out" : "choose"}</option>
              ${choices.map((c, i) => html`<option value=${c}>${param.choicesSay?.[i] ? `${c}: ${param.choicesSay[i]}` : c}</option>`)}
              <option value=${FROM_CELL}>from a cell …</option>
            </select>
            ${fromCell ? input(`${id}-cell`, `Cell for ${words(name)}`) : nothing}`
      }
    </div>
    <p class="sw-hint" id="${id}-hint">${hintOf(param)}${
      isOptional(param) && param.omitted !== "" ? ` · left out: ${param.omitted}` : nothing
    }</p>
    ${param.columns === undefined ? nothing : columnHelp(param.columns)}
    ${blank ? html`<p class="sw-blank" id="${id}-blank">Fill this in.</p>` : nothing}
  </div>`;
}
