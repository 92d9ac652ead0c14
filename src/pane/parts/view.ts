import type { TemplateResult } from "lit-html";
import type { CellFunction } from "../../functions/declare/cell-function.ts";
import type { Explainer } from "../../functions/run/tables-on-demand.ts";
import type { Host } from "../../workbook/host.ts";
import type { CellAddress } from "../../workbook/ledger.ts";

/** One tab of the pane. */
export interface View {
  readonly id: string;
  readonly label: string;
  /** What the panel shows now. */
  template(): TemplateResult;
  /** The view has come into sight, or while it was in sight the selection, the ledger or the host changed. */
  refresh(): void;
  /** The view has gone out of sight: stop what runs. */
  rest?(): void;
}

/** What a view may ask of the pane. */
export interface PaneContext {
  /** the name of every function */
  readonly names: readonly string[];
  /** whether `functions` are all of them */
  readonly whole: boolean;
  /** Loads those that are not there yet; the view in sight is refreshed when they are. */
  loadAll(): void;
  /** the functions that are loaded, among them each that a cell here has called */
  readonly functions: readonly CellFunction[];
  readonly host: Host | undefined;
  readonly selection: CellAddress | undefined;
  /** Works out a call; by a promise where that takes a while. */
  readonly explain: Explainer;
  /** Draws the view in sight again. */
  redraw(): void;
  /** Says a sentence to a screen reader and shows it for a while. */
  announce(sentence: string): void;
  /** Selects a cell in the spreadsheet; with `show`, then shows its working. */
  goTo(address: CellAddress, show?: "working"): void;
  /** Address of a function's place in the help pages; undefined where the host has none. */
  helpOf(fn: CellFunction): string | undefined;
  /** Opens the Functions view at a function. */
  openFunction(name: string): void;
}
