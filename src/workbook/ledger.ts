import type { RawArgument } from "../functions/declare/param.ts";
import type { Outcome } from "../functions/run/invoke.ts";
import { SharedRanges } from "./shared-ranges.ts";

/** A cell of the workbook; row and column count from 0. */
export interface CellAddress {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** One call that a cell has made. */
export interface LedgerCall {
  /** function id, as in the registry */
  readonly id: string;
  readonly args: readonly RawArgument[];
  readonly outcome: Outcome;
}

export interface LedgerEntry {
  readonly address: CellAddress;
  /** the calls of the cell's last calculation, oldest first */
  readonly calls: readonly LedgerCall[];
}

/** A cell may hold several calls, nested or side by side; more than this many in one cell are not kept. */
const CALLS_A_CELL = 16;
/**
 * A host does not say when a calculation of a cell begins. The calls of one follow each other by half a second a level at most; a call that begins
 * later than this after the cell's last answer belongs to the next calculation, in milliseconds.
 */
const NEXT_CALCULATION_MS = 2_000;

/** The place of a call among all calls, and when it began. */
export interface Turn {
  readonly order: number;
  readonly began: number;
}

interface CellRecord {
  readonly address: CellAddress;
  readonly calls: LedgerCall[];
  /** when the last of the calls was answered */
  answered: number;
}

/**
 * What the cells have calculated: address, arguments and outcome of each call. The working itself is not kept; the pane makes it again when it is
 * looked at. Bounded: past `capacity` cells the one that calculated longest ago leaves, and equal ranges are held once.
 */
export class Ledger {
  readonly capacity: number;
  readonly #clock: () => number;
  /** in the order of the latest calculation, oldest first */
  readonly #cells = new Map<string, CellRecord>();
  readonly #orders = new WeakMap<LedgerCall, number>();
  readonly #ranges = new SharedRanges();
  readonly #listeners = new Set<() => void>();
  #order = 0;

  /** @param clock milliseconds from any start */
  constructor(capacity = 50_000, clock: () => number = () => performance.now()) {
    this.capacity = capacity;
    this.#clock = clock;
  }

  get size(): number {
    return this.#cells.size;
  }

  /** The place of a call that begins now, for one whose answer comes later than that of calls which began after it. */
  turn(): Turn {
    return { order: ++this.#order, began: this.#clock() };
  }

  /** @param turn when the call began, from `turn()`; now unless told */
  record(address: CellAddress, given: LedgerCall, turn: Turn = this.turn()): void {
    const key = keyOf(address);
    const before = this.#cells.get(key);
    const goesOn = before !== undefined && turn.began - before.answered <= NEXT_CALCULATION_MS;
    const calls = goesOn ? before.calls : [];
    const call = { ...given, args: given.args.map((argument) => this.#ranges.share(argument)) };
    const same = calls.findIndex((c) => c.id === call.id && sameArguments(c.args, call.args));
    if (same >= 0) calls.splice(same, 1);
    this.#orders.set(call, turn.order);
    const later = calls.findIndex((c) => (this.#orders.get(c) ?? 0) > turn.order);
    calls.splice(later < 0 ? calls.length : later, 0, call);
    if (calls.length > CALLS_A_CELL) calls.shift();
    this.#cells.delete(key);
    this.#cells.set(key, { address, calls, answered: this.#clock() });
    if (this.#cells.size > this.capacity) this.#cells.delete(this.#cells.keys().next().value as string);
    this.#tell();
  }

  at(address: CellAddress): LedgerEntry | undefined {
    const found = this.#cells.get(keyOf(address));
    return found === undefined ? undefined : entryOf(found);
  }

  /** All cells, sheet by sheet, row by row. */
  entries(): LedgerEntry[] {
    return [...this.#cells.values()]
      .map(entryOf)
      .sort(
        (a, b) =>
          a.address.sheet.localeCompare(b.address.sheet) ||
          a.address.row - b.address.row ||
          a.address.column - b.address.column,
      );
  }

  /** A cell that was cleared or no longer calls a function of ours. */
  forget(address: CellAddress): void {
    if (this.#cells.delete(keyOf(address))) this.#tell();
  }

  /** Forgets the cells that `keeps` says no to. */
  retain(keeps: (address: CellAddress) => boolean): void {
    let changed = false;
    for (const [key, { address }] of this.#cells) {
      if (!keeps(address)) changed = this.#cells.delete(key) || changed;
    }
    if (changed) this.#tell();
  }

  /** Calls `listener` after every change; returns the function that stops it. Listeners should wait for a pause themselves. */
  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

function entryOf({ address, calls }: CellRecord): LedgerEntry {
  return { address, calls };
}

function keyOf({ sheet, row, column }: CellAddress): string {
  return `${sheet}\u0000${row}\u0000${column}`;
}

function sameArguments(a: readonly RawArgument[], b: readonly RawArgument[]): boolean {
  // Ranges are shared, so equal ones are the same.
  return a.length === b.length && a.every((argument, i) => Object.is(argument, b[i]));
}
