import { html, nothing, type TemplateResult } from "lit-html";
import type { TermName } from "../../functions/basis/glossary/index.ts";
import type { PaneContext } from "../parts/view.ts";
import { type Offers, offersFor } from "./offers.ts";
import type { TermState } from "./terms.ts";

/** What the county and its state bring, as buttons: nothing is taken until one is pressed, and then it is a change like one that is typed. */
export class OfferPart {
  readonly #pane: PaneContext;
  readonly #take: (term: TermName, text: string) => void;
  #asked = "";
  #offers: Offers | undefined;

  constructor(pane: PaneContext, take: (term: TermName, text: string) => void) {
    this.#pane = pane;
    this.#take = take;
  }

  template(states: ReadonlyMap<TermName, TermState>): TemplateResult | typeof nothing {
    const text = (term: TermName) => states.get(term)?.chosen.trim() ?? "";
    const [county, state] = [text("county"), text("state")];
    if (county === "" || state === "") return nothing;
    this.#ask({ county, state, energyCode: text("energy code") });
    const offers = this.#offers;
    if (offers === undefined) return html`<p class="sw-quiet" role="status">Looking up ${county} …</p>`;
    const { zone, stations } = offers;
    return html`<section class="sw-part sw-offers" aria-label="From the county">
      <h3>From the county: ${county}, ${state}</h3>
      ${offers.refused.map(({ what, why, todo }) => html`<p class="sw-blank">${what}</p><p class="sw-hint">${why}. ${todo}.</p>`)}
      ${offers.cautions.map((sentence) => html`<p class="sw-hint">${sentence}</p>`)}
      ${zone === undefined ? nothing : this.#offer("climate zone", zone, text("climate zone"), `Climate zone ${zone}`)}
      ${stations.length === 0 ? nothing : this.#stations(stations, text("climate station"))}
    </section>`;
  }

  #stations(stations: Offers["stations"], now: string): TemplateResult {
    // A station goes by the first words of its name too.
    const taken = stations.find((s) => now !== "" && s.place.toLowerCase().startsWith(now.toLowerCase()));
    return html`<details ?open=${now === ""}>
      <summary>${taken === undefined ? "Climate stations of the state" : `Climate station ${taken.place}: taken`}</summary>
      <p class="sw-hint">The nearest to the site is yours to pick.</p>
      ${stations.map((s) => this.#offer("climate station", s.place, s === taken ? s.place : now, `${s.place}, zone ${s.zone}`))}
    </details>`;
  }

  #offer(term: TermName, value: string, now: string, says: string): TemplateResult {
    if (now === value) return html`<p>${says}: taken</p>`;
    return html`<p>${says} <button type="button" class="sw-plain" aria-label="Take ${says}" @click=${() => this.#take(term, value)}>Take</button>${
      now === "" ? nothing : html` <span class="sw-quiet">in place of ${now}</span>`
    }</p>`;
  }

  /** Asks once for each place; the view is drawn again when the answer is there. */
  #ask(place: Parameters<typeof offersFor>[0]): void {
    const key = JSON.stringify(place);
    if (key === this.#asked) return;
    this.#asked = key;
    this.#offers = undefined;
    void offersFor(place, this.#pane.functions, this.#pane.explain).then((offers) => {
      if (key !== this.#asked) return;
      this.#offers = offers;
      this.#pane.redraw();
    });
  }
}
