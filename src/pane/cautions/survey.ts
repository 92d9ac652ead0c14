import type { CellFunction } from "../../functions/declare/cell-function.ts";
import { isOptional, isTerm } from "../../functions/declare/param.ts";
import { asRead, explain, type Outcome } from "../../functions/run/invoke.ts";
import type { CellAddress, LedgerCall, LedgerEntry } from "../../workbook/ledger.ts";
import { type Call, callsOf, latestCalls } from "../working/calls.ts";

/** What is kept of one call. */
export interface Finding {
  readonly outcome: Outcome;
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
  /** the editions of standards that it went by, as [standard, edition] */
  readonly editions: readonly (readonly [string, string])[];
}

/** One cell with its calls, outermost first. */
export interface SurveyedCell {
  readonly address: CellAddress;
  readonly calls: readonly (Finding & { readonly fn: CellFunction })[];
}

/** Terms that name an edition: two of one in a workbook are a caution. */
const EDITIONS: ReadonlySet<string> = new Set(["ASCE 7 edition", "energy code", "residential code", "wood standard"]);

/** Longest list of remembered findings; past it the oldest leaves. */
const REMEMBERED = 20_000;

/**
 * Works out every cell of the ledger again, a slice at a time, so that the page stays alive with thousands of cells. What was worked out for the same
 * function and arguments is remembered.
 */
export class Survey {
  readonly #functions: () => readonly CellFunction[];
  readonly #findings = new Map<string, Finding>();
  readonly #ofCall = new WeakMap<LedgerCall, Finding>();
  #entries: readonly LedgerEntry[] = [];
  #formulas: ReadonlyMap<LedgerEntry, string> = new Map();
  #cells: SurveyedCell[] = [];

  constructor(functions: () => readonly CellFunction[]) {
    this.#functions = functions;
  }

  /** Starts over with these cells. `formulas` may hold the formula of those for which it matters (`asksFormula`). */
  start(entries: readonly LedgerEntry[], formulas: ReadonlyMap<LedgerEntry, string> = new Map()): void {
    this.#entries = entries;
    this.#formulas = formulas;
    this.#cells = [];
  }

  get total(): number {
    return this.#entries.length;
  }

  get done(): boolean {
    return this.#cells.length === this.#entries.length;
  }

  /** The cells worked out so far, in the order of the ledger. */
  get cells(): readonly SurveyedCell[] {
    return this.#cells;
  }

  /** Works on while `mayGoOn` says so, one cell at least. */
  work(mayGoOn: () => boolean): void {
    while (!this.done) {
      const entry = this.#entries[this.#cells.length];
      if (entry === undefined) return;
      const formula = this.#formulas.get(entry);
      const calls =
        formula === undefined
          ? latestCalls(entry.calls, this.#functions())
          : callsOf(formula, entry.calls, this.#functions());
      this.#cells.push({ address: entry.address, calls: calls.map((c) => ({ ...this.#find(c), fn: c.fn })) });
      if (!mayGoOn()) return;
    }
  }

  #find({ fn, call }: Call): Finding {
    const known = this.#ofCall.get(call);
    if (known !== undefined) return known;
    const key = `${call.id}\u0000${JSON.stringify(call.args)}`;
    const finding = this.#findings.get(key) ?? findingOf(fn, call);
    this.#findings.delete(key);
    this.#findings.set(key, finding);
    if (this.#findings.size > REMEMBERED) this.#findings.delete(this.#findings.keys().next().value as string);
    this.#ofCall.set(call, finding);
    return finding;
  }
}

/** A search is not run again to list its cautions: its outcome stands in the ledger, and its arguments are read again for what they bring up. */
function findingOf(fn: CellFunction, call: LedgerCall): Finding {
  const found = fn.heavy ? { outcome: call.outcome, ...asRead(fn, call.args) } : explain(fn, call.args);
  const { outcome, assumptions, cautions, arguments: shown } = found;
  const editions = [...fn.params, ...fn.named].flatMap(({ name, param }) => {
    if (!isTerm(param) || !EDITIONS.has(param.term)) return [];
    const used = shown.find((a) => a.name === name);
    const edition = used?.omitted === false ? used.shown : String(isOptional(param) ? param.standIn : "");
    return [[param.term, edition] as const];
  });
  return { outcome, assumptions, cautions, editions };
}

/** True where the ledger alone cannot tell which calls are current: a function was called more than once in the cell. */
export function asksFormula(entry: LedgerEntry): boolean {
  return new Set(entry.calls.map((c) => c.id)).size < entry.calls.length;
}
