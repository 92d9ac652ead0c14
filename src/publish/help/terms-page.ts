import type { Defaulted, Entry } from "../../functions/basis/glossary/entry.ts";
import { GROUPS } from "../../functions/basis/glossary/index.ts";
import { hintOf } from "../../functions/declare/describe.ts";
import { type Html, html } from "./html.ts";

type Term = Entry<unknown, unknown> & Partial<Defaulted<unknown, unknown>>;

/** The terms of a basis, group by group. */
export function termsBody(): Html {
  return html`<h1>Terms of the basis</h1>
<p>A basis is a range of rows: name, value, unit. Write <code>Basis</code> in its first cell, always. A name is read without regard to capitals, and by its other names too. A unit in the third column counts for a bare number; a unit in the value wins.
A blank, an empty text and a 0 are no row; <code>none</code> writes nothing. A term given twice is refused; a name that no function knows is left alone.</p>
${Object.entries(GROUPS).map(
  ([group, terms]) => html`<h2>${group}</h2>
<div class="table" role="group" aria-label="${group}" tabindex="0">
<table>
<thead><tr><th scope="col">Term</th><th scope="col">Also</th><th scope="col">What it is</th><th scope="col">Left out</th></tr></thead>
<tbody>
${Object.entries(terms as Readonly<Record<string, Term>>).map(
  ([name, term]) =>
    html`<tr><th scope="row">${name}</th><td>${term.aliases.join(", ")}</td><td>${hintOf(term.param)}</td><td>${term.omitted}</td></tr>\n`,
)}</tbody>
</table>
</div>
`,
)}`;
}
