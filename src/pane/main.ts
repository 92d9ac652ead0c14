import { html, nothing, render } from "lit-html";
import type { FunctionList } from "../functions/families.ts";
import { pageOf } from "../functions/find/help-place.ts";
import { type Explainer, explained } from "../functions/run/tables-on-demand.ts";
import type { Host } from "../workbook/host.ts";
import type { CellAddress } from "../workbook/ledger.ts";
import { CautionsView } from "./cautions/cautions.ts";
import { FunctionsView } from "./functions/functions.ts";
import { afterPause } from "./parts/idle.ts";
import type { PaneContext, View } from "./parts/view.ts";
import { SiteView } from "./site/site.ts";
import { TemplatesView } from "./templates/templates.ts";
import { TypingStrip } from "./typing/strip.ts";
import { WorkingView } from "./working/working.ts";

export interface PaneOptions {
  /** functions to show */
  readonly functions: FunctionList;
  /** id of the view to start with: "working", "cautions", "functions", "templates" or "site" */
  readonly view?: string;
  /** address of the folder that holds the help pages, with its "/" at the end, where the host's page has one beside it */
  readonly help?: string;
  /** works out calls; in the page unless told, where a search makes it stand still */
  readonly explainer?: Explainer;
}

/** A pane that stands in a page. */
export interface Pane {
  /** Connects a spreadsheet, or another one. */
  attach(host: Host): void;
  /** Brings a view into sight. */
  show(view: string): void;
  /** Takes the pane out of the page and lets go of the host. */
  unmount(): void;
}

/** How long the ledger must be quiet before the view in sight is made anew, in milliseconds. */
const LEDGER_PAUSE_MS = 120;
const NOT_LOADED =
  "The functions could not be loaded: they are fetched from where the add-in came from. Check the connection, then open this view again.";
/** How long a message stays in sight, in milliseconds. */
const MESSAGE_MS = 6000;

/**
 * Puts the pane into `element`. The page brings `styles.css` along. A host may come later through `attach`.
 * Light and dark follow the system, or `data-theme="light"` or `"dark"` on `element` or above it.
 */
export function mountPane(element: HTMLElement, host: Host | undefined, options: PaneOptions): Pane {
  const list = options.functions;
  let current: Host | undefined;
  let selection: CellAddress | undefined;
  let drawing = false;
  let loading = false;
  let message = "";
  let letGo: (() => void)[] = [];

  const pane: PaneContext = {
    names: list.names,
    get functions() {
      return list.loaded;
    },
    get whole() {
      return list.whole;
    },
    loadAll,
    explain: options.explainer ?? explained,
    get host() {
      return current;
    },
    get selection() {
      return selection;
    },
    redraw,
    announce(sentence) {
      message = sentence;
      quiet.touch();
      draw();
    },
    goTo(address, view) {
      current?.goTo(address).catch(() => pane.announce("The spreadsheet could not go to that cell just now"));
      if (view !== undefined) show(view);
    },
    helpOf: (fn) => (options.help === undefined ? undefined : `${options.help}${pageOf(fn)}#${fn.name}`),
    openFunction(name) {
      functions.open(pane.functions.find((fn) => fn.name === name));
      show(functions.id);
    },
  };
  const typing = new TypingStrip(pane);
  const working = new WorkingView(pane);
  const functions = new FunctionsView(pane);
  const views: readonly View[] = [
    working,
    new CautionsView(pane),
    functions,
    new TemplatesView(pane),
    new SiteView(pane),
  ];
  let inSight: View = views.find((v) => v.id === options.view) ?? working;

  const ledgerPause = afterPause(LEDGER_PAUSE_MS, () => inSight.refresh());
  const quiet = afterPause(MESSAGE_MS, () => {
    message = "";
    draw();
  });

  element.classList.add("sw-pane");
  draw();
  if (host !== undefined) attach(host);

  return { attach, show, unmount };

  function attach(next: Host): void {
    for (const stop of letGo) stop();
    current = next;
    selection = undefined;
    const select = (address: CellAddress | undefined) => {
      if (current !== next) return;
      selection = address;
      inSight.refresh();
    };
    letGo = [next.onSelection(select), next.ledger.onChange(() => ledgerPause.touch())];
    const follow = next.onTyping?.((typed) => typing.follow(typed));
    if (follow !== undefined) letGo.push(follow);
    next.selection().then(select, () => select(undefined));
    inSight.refresh();
    redraw();
  }

  /** Each view that needs all functions asks for them; what arrives is drawn once. */
  function loadAll(): void {
    if (list.whole || loading) return;
    loading = true;
    list
      .loadAll()
      .then(
        () => inSight.refresh(),
        () => pane.announce(NOT_LOADED),
      )
      .finally(() => {
        loading = false;
      });
  }

  function show(id: string): void {
    const next = views.find((v) => v.id === id);
    if (next === undefined) return;
    if (next !== inSight) inSight.rest?.();
    inSight = next;
    draw();
    next.refresh();
  }

  function unmount(): void {
    for (const stop of letGo) stop();
    ledgerPause.stop();
    quiet.stop();
    typing.stop();
    inSight.rest?.();
    render(html``, element);
    element.classList.remove("sw-pane");
  }

  /** Draws soon, once for all that asked. */
  function redraw(): void {
    if (drawing) return;
    drawing = true;
    queueMicrotask(() => {
      drawing = false;
      draw();
    });
  }

  function draw(): void {
    render(
      html`
        <h1 class="sw-hidden">Sillwork</h1>
        <div class="sw-tabs" role="tablist" aria-label="Sillwork" @keydown=${onTabKey}>
          ${views.map(
            (v) => html`<button type="button" role="tab" id="sw-tab-${v.id}" aria-controls="sw-panel-${v.id}"
              aria-selected=${v === inSight ? "true" : "false"} tabindex=${v === inSight ? 0 : -1} @click=${() => show(v.id)}>${v.label}</button>`,
          )}
        </div>
        ${typing.template()}
        ${views.map(
          (
            v,
          ) => html`<div class="sw-panel" role="tabpanel" id="sw-panel-${v.id}" aria-labelledby="sw-tab-${v.id}" tabindex="0"
            ?hidden=${v !== inSight}></div>`,
        )}
        ${options.help === undefined ? nothing : html`<p class="sw-help"><a href="${options.help}index.html" target="_blank" rel="noopener">Help: getting started, functions, terms</a></p>`}
        <p class="sw-message" role="status">${message}</p>
      `,
      element,
    );
    const panel = element.querySelector<HTMLElement>(`#sw-panel-${inSight.id}`);
    // What the cell held before is of no use while a formula is typed into it.
    if (panel !== null) render(typing.busy && inSight === working ? html`` : inSight.template(), panel);
  }

  function onTabKey(event: KeyboardEvent): void {
    const at = views.indexOf(inSight);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: views.length - 1 }[event.key];
    const next = to === undefined ? undefined : views[(to + views.length) % views.length];
    if (next === undefined) return;
    event.preventDefault();
    show(next.id);
    element.querySelector<HTMLElement>(`#sw-tab-${next.id}`)?.focus();
  }
}
