import { html, nothing, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import type { TermState } from "./terms.ts";

/** What the view knows of a term beside its state. */
export interface FieldFacts {
  readonly assumed: string;
  /** how many cells use it */
  readonly uses: number;
  readonly changed: (text: string) => void;
  /** the cell of its value, where a row gives it */
  readonly cell: { readonly text: string; readonly go: () => void } | undefined;
}

/** A term as a labelled control with its unit, its hint, what stands in for it and what is wrong with it. */
export function termField(state: TermState, facts: FieldFacts): TemplateResult {
  const id = `sw-term-${state.term.replaceAll(" ", "-")}`;
  const { refused } = state;
  return html`<div class="sw-field sw-term">
    <label for=${id}>${state.label}</label>
    <div class="sw-control">${control(id, state, facts)}</div>
    <p class="sw-hint" id="${id}-hint">${state.hint}${facts.assumed === "" ? nothing : ` · left out: ${facts.assumed}`}</p>
    <div id="${id}-said">
      ${state.drafted ? html`<p class="sw-hint sw-word">not written yet</p>` : nothing}
      ${state.read === "" ? nothing : html`<p class="sw-hint">read as ${state.read}</p>`}
      ${refused === undefined ? nothing : html`<p class="sw-blank">${refused.what}</p><p class="sw-hint">${refused.why}</p><p class="sw-hint">${refused.todo}</p>`}
      ${state.cautions.map((sentence) => html`<p class="sw-blank">${sentence}</p>`)}
      ${state.rows.length > 1 ? html`<p class="sw-blank">Rows ${state.rows.join(" and ")} of the range give it: keep one of them.</p>` : nothing}
    </div>
    ${place(state, facts)}
  </div>`;
}

function place({ term }: TermState, { uses, cell }: FieldFacts): TemplateResult | typeof nothing {
  if (cell === undefined) return nothing;
  const used = uses === 0 ? "no formula uses it yet" : uses === 1 ? "1 cell uses it" : `${uses} cells use it`;
  return html`<p class="sw-hint">${used} · <button type="button" class="sw-goto" aria-label="Go to ${cell.text}, ${term}" @click=${cell.go}>${cell.text}</button></p>`;
}

function control(id: string, state: TermState, { changed }: FieldFacts): TemplateResult {
  const choices = state.param.choices ?? [];
  const describedBy = `${id}-hint ${id}-said`;
  const invalid = state.refused === undefined ? nothing : "true";
  if (state.formula) {
    return html`<input id=${id} type="text" readonly aria-describedby=${describedBy} aria-invalid=${invalid} .value=${live(state.text)}>
      <span class="sw-unit">formula</span>`;
  }
  if (choices.length === 0) {
    return html`<input id=${id} type="text" autocomplete="off" spellcheck="false" aria-describedby=${describedBy} aria-invalid=${invalid}
        .value=${live(state.text)} @input=${(e: Event) => changed((e.target as HTMLInputElement).value)}>
      ${state.unit === "" ? nothing : html`<span class="sw-unit">${state.unit}</span>`}`;
  }
  // What the cell holds is shown even where it is none of the choices.
  const other = state.chosen === "" || choices.includes(state.chosen) ? [] : [state.chosen];
  const says = state.param.choicesSay ?? [];
  return html`<select id=${id} aria-describedby=${describedBy} aria-invalid=${invalid}
      @change=${(e: Event) => changed((e.target as HTMLSelectElement).value)}>
      <option value="" .selected=${live(state.chosen === "")}>left out</option>
      ${[...choices, ...other].map((c, i) => html`<option value=${c} .selected=${live(c === state.chosen)}>${says[i] ? `${c}: ${says[i]}` : c}</option>`)}
    </select>`;
}
