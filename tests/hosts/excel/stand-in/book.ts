import { vi } from "vitest";
import type { ExcelFunction } from "../../../../src/hosts/excel/functions.ts";
import { columnLetters, parseAddress } from "../../../../src/workbook/host.ts";
import { Calculation } from "./calculate.ts";
import { Context } from "./context.ts";
import { RichError } from "./loadable.ts";

export type Held = string | number | boolean;

/** A cell of the stand-in: what was entered, and what it shows. */
export interface FakeCell {
  formula: Held;
  value: Held;
  /** entered as text, so that a sign in front makes no formula */
  text?: true;
  /** size of the table that a formula spills, from this cell on */
  spill?: readonly [rows: number, columns: number];
}

interface Event<T> {
  handlers: Set<(args: T) => unknown>;
  add(handler: (args: T) => unknown): { remove(): void; context: Context };
}

/** What goes wrong on purpose: the n-th request from now, once or from then on. */
export interface Fault {
  readonly at: number;
  readonly lasts: boolean;
  readonly code: string;
  /** how much of the request was done before it failed */
  readonly done: "nothing" | "half" | "all";
}

/** How a workbook stands, for comparisons and for undo. */
export type State = ReturnType<FakeWorkbook["state"]>;

/**
 * A workbook that behaves as Excel is documented to (no Excel was there to compare it with): what is read must have been loaded and synced before, requests go in batches of which
 * a failed one may have done a part, missing things are null objects, errors carry codes, a run is refused while a cell is edited, a protected sheet takes
 * nothing, no request carries more than 5 MB, members of a requirement set that is not there fail, undo groups take no deletion. With functions given it
 * calculates; without, a formula shows "calculated", or the host's word for #NAME? where no function has its name.
 */
export class FakeWorkbook {
  sheets: FakeSheet[] = [];
  /** what the names of the workbook stand for, such as "=Site!$A$1:$C$9" */
  names = new Map<string, string>();
  settings = new Map<string, string>();
  active = { sheet: "", row: 0, column: 0 };
  /** no worksheet may be added, copied or deleted */
  isProtected = false;
  /** how many runs Excel will refuse because a cell is being edited */
  refusals = 0;
  runs = 0;
  requests = 0;
  /** the largest request so far, in characters */
  largest = 0;
  nameError = "#NAME?";
  /** what a blank cell is handed over as: desktop 0, web null */
  blank: 0 | null | "" = 0;
  /** the newest requirement set ExcelApi 1.x */
  api = 20;
  /** opened where the add-in is not */
  withoutAddIn = false;
  fault: Fault | undefined;
  /** what is still under way: answers of functions, handlers of events */
  readonly pending: Promise<unknown>[] = [];
  /** what one step back leads to, newest last */
  readonly steps: State[] = [];
  /** cells that were entered and not calculated yet */
  touched: { sheet: FakeSheet; row: number; column: number }[] = [];
  readonly calculation: Calculation | undefined;
  readonly events = {
    selection: this.event<undefined>(),
    activated: this.event<undefined>(),
    changed: this.event<{ worksheetId: string; address: string; changeType: string }>(),
    deleted: this.event<{ worksheetId: string }>(),
    renamed: this.event<{ nameBefore: string; nameAfter: string }>(),
  };

  constructor(
    sheets: Readonly<Record<string, Readonly<Record<string, Held | FakeCell>>>>,
    functions?: ReadonlyMap<string, ExcelFunction>,
  ) {
    for (const [name, cells] of Object.entries(sheets)) {
      const sheet = this.addSheet(name);
      for (const [address, cell] of Object.entries(cells)) sheet.put(address, cell);
    }
    this.active.sheet = this.sheets[0]?.name ?? "";
    this.calculation = functions === undefined ? undefined : new Calculation(this, functions);
    this.front();
  }

  /** Makes this workbook the one that the page runs in. */
  front(): void {
    type Work = (context: Context) => Promise<unknown>;
    vi.stubGlobal("Excel", {
      run: (first: Work | { mergeUndoGroup?: boolean }, second?: Work) =>
        typeof first === "function" ? this.run(first) : this.run(second as Work, first.mergeUndoGroup === true),
    });
    const isSetSupported = (_: string, version: string) => Number(version.split(".")[1]) <= this.api;
    vi.stubGlobal("Office", { context: { requirements: { isSetSupported } } });
  }

  addSheet(name: string): FakeSheet {
    if (this.sheet(name) !== undefined)
      throw new RichError("ItemAlreadyExists", `There is a worksheet ${name} already`);
    if (name.length > 31 || /[\\/?*[\]:]/.test(name) || name === "") throw new RichError("InvalidArgument");
    const sheet = new FakeSheet(name, `id of ${name}`);
    this.sheets.push(sheet);
    return sheet;
  }

  sheet(key: string): FakeSheet | undefined {
    return this.sheets.find(({ name, id }) => name.toLowerCase() === key.toLowerCase() || id === key);
  }

  async run<T>(work: (context: Context) => Promise<T>, group = false): Promise<T> {
    this.runs++;
    if (this.refusals > 0) {
      this.refusals--;
      throw new RichError("InvalidOperationInCellEditMode", "cell edit");
    }
    const before = this.state();
    const context = new Context(this, group && this.api >= 20);
    const result = await work(context);
    if (context.waiting.length > 0) await context.sync();
    if (context.group) this.steps.push(before);
    return result;
  }

  /** Whether this request is the one that fails. */
  failing(): Fault | undefined {
    this.requests++;
    if (this.fault === undefined) return undefined;
    const { at, lasts } = this.fault;
    return this.requests === at || (lasts && this.requests > at) ? this.fault : undefined;
  }

  /** Calculates what was entered and tells the handlers of changes. */
  entered(): void {
    const touched = this.touched.splice(0);
    if (touched.length === 0) return;
    this.calculation?.run(touched);
    for (const sheet of new Set(touched.map((place) => place.sheet))) {
      const places = touched.filter((place) => place.sheet === sheet);
      const [rows, columns] = [places.map(({ row }) => row), places.map(({ column }) => column)];
      const corner = (row: number, column: number) => `${columnLetters(column)}${row + 1}`;
      const address = `${corner(Math.min(...rows), Math.min(...columns))}:${corner(Math.max(...rows), Math.max(...columns))}`;
      this.tell("changed", { worksheetId: sheet.id, address, changeType: "RangeEdited" });
    }
  }

  tell<K extends keyof FakeWorkbook["events"]>(
    event: K,
    args: Parameters<Parameters<FakeWorkbook["events"][K]["add"]>[0]>[0],
  ): void {
    const handlers = this.events[event].handlers as Set<(args: unknown) => unknown>;
    for (const handler of handlers) this.pending.push(Promise.resolve(handler(args)).catch(() => {}));
  }

  /** The user types into a cell: a formula, a number, a text. */
  type(sheetName: string, address: string, content: Held): void {
    this.paste(sheetName, address, [[content]]);
  }

  /** The user puts rows in from a cell on. */
  paste(sheetName: string, address: string, rows: readonly (readonly Held[])[]): void {
    const sheet = this.sheet(sheetName);
    const at = parseAddress(`x!${address}`);
    if (sheet === undefined || at === undefined) throw new Error(`no cell ${sheetName}!${address}`);
    rows.forEach((line, r) => {
      line.forEach((content, c) => {
        sheet.enter(at.row + r, at.column + c, content);
        this.touched.push({ sheet, row: at.row + r, column: at.column + c });
      });
    });
    this.entered();
  }

  select(sheet: string, address: string): void {
    const at = parseAddress(`x!${address}`);
    this.active = { sheet, row: at?.row ?? 0, column: at?.column ?? 0 };
    this.tell("selection", undefined);
  }

  /** Waits until nothing is under way any more. */
  async settled(): Promise<void> {
    while (this.pending.length > 0) await Promise.all(this.pending.splice(0));
  }

  /** What a cell or the part of a spilled table shows. */
  shown(sheetName: string, address: string): Held | undefined {
    return this.sheet(sheetName)?.shown(address);
  }

  /** The cells of a sheet that show an error. */
  errors(): string[] {
    return this.sheets.flatMap((sheet) =>
      [...sheet.cells].flatMap(([key, { formula, value }]) => {
        const [row = 0, column = 0] = key.split(",").map(Number);
        const bad =
          typeof value === "string" && typeof formula === "string" && formula.startsWith("=") && /^#[A-Z]/.test(value);
        return bad ? [`${sheet.name}!${columnLetters(column)}${row + 1} ${value} ${formula}`] : [];
      }),
    );
  }

  undo(): void {
    const step = this.steps.pop();
    if (step !== undefined) this.restore(step);
  }

  state() {
    return {
      sheets: this.sheets.map((sheet) => sheet.state()),
      names: [...this.names],
      settings: [...this.settings],
    };
  }

  restore(state: State): void {
    this.names = new Map(state.names);
    this.settings = new Map(state.settings);
    this.sheets = state.sheets.map((held) => FakeSheet.from(held));
  }

  event<T>(): Event<T> {
    const handlers = new Set<(args: T) => unknown>();
    return {
      handlers,
      add: (handler) => {
        handlers.add(handler);
        return { remove: () => handlers.delete(handler), context: new Context(this) };
      },
    };
  }
}

/** How a cell looks: number format, fill, font, validation; by what was set. */
export type FakeLook = Record<string, unknown>;

/** The cells of a worksheet by "row,column". */
export class FakeSheet {
  name: string;
  readonly id: string;
  readonly cells = new Map<string, FakeCell>();
  /** what formulas have spilled into cells, with the formula's own cell */
  readonly spilled = new Map<string, { from: string; value: Held }>();
  readonly looks = new Map<string, FakeLook>();
  readonly widths = new Map<number, number>();
  readonly properties = new Map<string, string>();
  readonly print: FakeLook = {};
  readonly shapes: FakeLook[] = [];
  isProtected = false;

  constructor(name: string, id: string) {
    this.name = name;
    this.id = id;
  }

  put(address: string, cell: Held | FakeCell): void {
    const at = parseAddress(`x!${address}`);
    this.cells.set(`${at?.row},${at?.column}`, typeof cell === "object" ? cell : { formula: cell, value: cell });
  }

  at(address: string): FakeCell | undefined {
    const at = parseAddress(`x!${address}`);
    return this.cells.get(`${at?.row},${at?.column}`);
  }

  look(address: string): FakeLook {
    const at = parseAddress(`x!${address}`);
    return this.looks.get(`${at?.row},${at?.column}`) ?? {};
  }

  shown(address: string): Held | undefined {
    const at = parseAddress(`x!${address}`);
    const key = `${at?.row},${at?.column}`;
    return this.cells.get(key)?.value ?? this.spilled.get(key)?.value;
  }

  /** As by hand: an apostrophe makes a text, an equals sign a formula, nothing clears the cell. */
  enter(row: number, column: number, content: Held): void {
    const key = `${row},${column}`;
    for (const [place, held] of this.spilled) if (held.from === key) this.spilled.delete(place);
    if (content === "") {
      this.cells.delete(key);
      return;
    }
    const quoted = typeof content === "string" && content.startsWith("'");
    const formula = quoted ? content.slice(1) : content;
    // The format for text keeps what is entered from then on as text.
    const text = quoted || this.looks.get(key)?.numberFormat === "@";
    this.cells.set(key, { formula, value: formula, ...(text ? { text: true as const } : {}) });
  }

  state() {
    return {
      name: this.name,
      id: this.id,
      cells: [...this.cells].map(([key, cell]) => [key, { ...cell }] as const),
      spilled: [...this.spilled],
      looks: [...this.looks].map(([key, look]) => [key, { ...look }] as const),
      widths: [...this.widths],
      properties: [...this.properties],
      isProtected: this.isProtected,
    };
  }

  static from(state: ReturnType<FakeSheet["state"]>): FakeSheet {
    const sheet = new FakeSheet(state.name, state.id);
    for (const [key, cell] of state.cells) sheet.cells.set(key, { ...cell });
    for (const [key, held] of state.spilled) sheet.spilled.set(key, held);
    for (const [key, look] of state.looks) sheet.looks.set(key, { ...look });
    for (const [key, width] of state.widths) sheet.widths.set(key, width);
    for (const [key, value] of state.properties) sheet.properties.set(key, value);
    sheet.isProtected = state.isProtected;
    return sheet;
  }
}
