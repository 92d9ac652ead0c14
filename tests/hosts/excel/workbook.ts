import { vi } from "vitest";
import { unknownName } from "../../../src/workbook/formula.ts";
import { columnLetters, parseAddress } from "../../../src/workbook/host.ts";
import { parseRange, rangeText } from "../../../src/workbook/named-rows.ts";
import { isErrorText } from "../../../src/workbook/scan.ts";

/** Excel on the web refuses more at once, read or written. */
const LARGEST_REQUEST = 5_000_000;

type Value = string | number | boolean;

/** A cell of the stand-in: what was entered, and what it shows. Nothing is calculated. */
export interface FakeCell {
  formula: Value;
  value: Value;
  /** size of the table that a formula spills, from this cell on */
  spill?: readonly [rows: number, columns: number];
}

interface Event<T> {
  handlers: Set<(args: T) => unknown>;
  add(handler: (args: T) => unknown): { remove(): void; context: Context };
}

/**
 * A workbook that keeps office.js's rules as far as the host's code meets them: what is read must have been loaded and synced before, missing things
 * are null objects, a run is refused while a cell is edited, a protected sheet takes nothing, and no request carries more than 5 MB. A formula with a
 * name that no function has shows the host's word for #NAME?, which is another one in another language.
 */
export class FakeWorkbook {
  readonly sheets: FakeSheet[] = [];
  /** what the names of the workbook stand for, such as "=Site!$A$1:$C$9" */
  readonly names = new Map<string, string>();
  active = { sheet: "", row: 0, column: 0 };
  /** how many runs Excel will refuse because a cell is being edited */
  refusals = 0;
  runs = 0;
  /** the largest request so far, in characters */
  largest = 0;
  nameError = "#NAME?";
  readonly events = {
    selection: this.event<undefined>(),
    activated: this.event<undefined>(),
    changed: this.event<{ worksheetId: string; address: string; changeType: string }>(),
    deleted: this.event<{ worksheetId: string }>(),
    renamed: this.event<{ nameBefore: string; nameAfter: string }>(),
  };

  constructor(sheets: Readonly<Record<string, Readonly<Record<string, Value | FakeCell>>>>) {
    for (const [name, cells] of Object.entries(sheets)) {
      const sheet = this.addSheet(name);
      for (const [address, cell] of Object.entries(cells)) sheet.put(address, cell);
    }
    this.active.sheet = this.sheets[0]?.name ?? "";
    vi.stubGlobal("Excel", { run: (work: (context: Context) => Promise<unknown>) => this.run(work) });
    vi.stubGlobal("Office", { context: { requirements: { isSetSupported: () => true } } });
  }

  addSheet(name: string): FakeSheet {
    if (this.sheet(name) !== undefined) throw new Error(`There is a worksheet ${name} already`);
    const sheet = new FakeSheet(name, `id of ${name}`);
    this.sheets.push(sheet);
    return sheet;
  }

  sheet(key: string): FakeSheet | undefined {
    return this.sheets.find(({ name, id }) => name.toLowerCase() === key.toLowerCase() || id === key);
  }

  async run<T>(work: (context: Context) => Promise<T>): Promise<T> {
    this.runs++;
    if (this.refusals > 0) {
      this.refusals--;
      throw Object.assign(new Error("cell edit"), { code: "InvalidOperationInCellEditMode" });
    }
    return work(new Context(this));
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

/** The cells of a worksheet by "row,column". */
export class FakeSheet {
  name: string;
  readonly id: string;
  readonly cells = new Map<string, FakeCell>();
  readonly properties = new Map<string, string>();
  isProtected = false;

  constructor(name: string, id: string) {
    this.name = name;
    this.id = id;
  }

  put(address: string, cell: Value | FakeCell): void {
    const at = parseAddress(`x!${address}`);
    this.cells.set(`${at?.row},${at?.column}`, typeof cell === "object" ? cell : { formula: cell, value: cell });
  }

  at(address: string): FakeCell | undefined {
    const at = parseAddress(`x!${address}`);
    return this.cells.get(`${at?.row},${at?.column}`);
  }
}

class Context {
  readonly book: FakeWorkbook;
  readonly waiting: (() => void)[] = [];
  /** what the request carries until it is sent */
  carried = 0;

  constructor(book: FakeWorkbook) {
    this.book = book;
  }

  async sync(): Promise<void> {
    this.carried = 0;
    for (const work of this.waiting.splice(0)) work();
    this.book.largest = Math.max(this.book.largest, this.carried);
    if (this.carried > LARGEST_REQUEST) throw new Error("ResponsePayloadSizeLimitExceeded");
  }

  get workbook(): unknown {
    const { book } = this;
    return {
      onSelectionChanged: book.events.selection,
      getActiveCell: () => {
        const { sheet, row, column } = book.active;
        return new Range(this, book.sheet(sheet), row, column, 1, 1);
      },
      worksheets: new Worksheets(this),
      names: {
        add: (name: string, reference: string) =>
          this.waiting.push(() => {
            if (book.names.has(name)) throw new Error("ItemAlreadyExists");
            book.names.set(name, reference);
          }),
        getItem: (name: string) => new NamedItem(this, name),
        getItemOrNullObject: (name: string) => new NamedItem(this, name),
      },
    };
  }
}

/** Members can be read once they were loaded and synced. */
abstract class Loadable {
  readonly context: Context;
  readonly #loaded = new Map<string, unknown>();

  constructor(context: Context) {
    this.context = context;
  }

  abstract current(member: string): unknown;

  load(members: string): void {
    this.context.waiting.push(() => {
      for (const member of members.split(",")) {
        const value = this.current(member);
        if (Array.isArray(value) && Array.isArray(value[0])) this.context.carried += JSON.stringify(value).length;
        this.#loaded.set(member, value);
      }
    });
  }

  read(member: string): never {
    if (!this.#loaded.has(member)) throw new Error(`${member} was not loaded and synced`);
    return this.#loaded.get(member) as never;
  }
}

class Worksheets extends Loadable {
  get onActivated() {
    return this.context.book.events.activated;
  }
  get onChanged() {
    return this.context.book.events.changed;
  }
  get onDeleted() {
    return this.context.book.events.deleted;
  }
  get onNameChanged() {
    return this.context.book.events.renamed;
  }
  get items(): Worksheet[] {
    return this.read("items/name");
  }
  current(): Worksheet[] {
    return this.context.book.sheets.map((sheet) => {
      const item = new Worksheet(this.context, sheet);
      item.load("name");
      for (const work of this.context.waiting.splice(-1)) work();
      return item;
    });
  }
  getItem(key: string): Worksheet {
    return this.getItemOrNullObject(key);
  }
  getItemOrNullObject(key: string): Worksheet {
    return new Worksheet(this.context, this.context.book.sheet(key));
  }
  getActiveWorksheet(): Worksheet {
    return this.getItemOrNullObject(this.context.book.active.sheet);
  }
  add(name: string): Worksheet {
    return new Worksheet(this.context, this.context.book.addSheet(name));
  }
}

class NamedItem {
  readonly #context: Context;
  readonly #name: string;
  constructor(context: Context, name: string) {
    this.#context = context;
    this.#name = name;
  }
  get isNullObject(): boolean {
    return !this.#context.book.names.has(this.#name);
  }
  set formula(reference: string) {
    if (!reference.startsWith("=") || /![A-Z]/.test(reference)) throw new Error("a name of moving cells");
    this.#context.waiting.push(() => this.#context.book.names.set(this.#name, reference));
  }
  getRangeOrNullObject(): Range {
    const { book } = this.#context;
    const range = parseRange(book.names.get(this.#name) ?? "");
    const sheet = range && book.sheet(range.first.sheet);
    if (!range || !sheet) return new Range(this.#context, undefined, 0, 0, 0, 0);
    return new Range(this.#context, sheet, range.first.row, range.first.column, range.rows, range.columns);
  }
}

class Protection extends Loadable {
  readonly #sheet: FakeSheet | undefined;
  constructor(context: Context, sheet: FakeSheet | undefined) {
    super(context);
    this.#sheet = sheet;
  }
  get protected(): boolean {
    return this.read("protected");
  }
  current(): unknown {
    return this.#sheet?.isProtected ?? false;
  }
}

class Worksheet extends Loadable {
  readonly sheet: FakeSheet | undefined;
  #protection: Protection | undefined;
  constructor(context: Context, sheet: FakeSheet | undefined) {
    super(context);
    this.sheet = sheet;
  }
  get isNullObject(): boolean {
    return this.sheet === undefined;
  }
  get name(): string {
    return this.read("name");
  }
  set name(name: string) {
    const { sheet, context } = this;
    context.waiting.push(() => {
      if (sheet !== undefined) sheet.name = name;
    });
  }
  current(): unknown {
    return this.sheet?.name;
  }
  get protection(): Protection {
    this.#protection ??= new Protection(this.context, this.sheet);
    return this.#protection;
  }
  get customProperties() {
    const { sheet, context } = this;
    return {
      add: (key: string, value: string) => context.waiting.push(() => sheet?.properties.set(key, value)),
      getItemOrNullObject: (key: string) => ({ isNullObject: sheet?.properties.has(key) !== true }),
    };
  }
  /** As in Excel: the copy stands behind, protected like the first, and its formulas calculate again, so they show nothing yet. */
  copy(_place: string, _beside: Worksheet): Worksheet {
    const copy = this.context.book.addSheet(`${this.sheet?.name} (2)`);
    for (const [place, cell] of this.sheet?.cells ?? []) {
      const formula = String(cell.formula).startsWith("=");
      copy.cells.set(place, { ...cell, value: formula ? "#BUSY!" : cell.value });
    }
    copy.isProtected = this.sheet?.isProtected ?? false;
    return new Worksheet(this.context, copy);
  }
  delete(): void {
    const { sheets } = this.context.book;
    this.context.waiting.push(() => sheets.splice(sheets.indexOf(this.sheet as FakeSheet), 1));
  }
  activate(): void {
    this.context.book.active = { sheet: this.sheet?.name ?? "", row: 0, column: 0 };
  }
  getCell(row: number, column: number): Range {
    return new Range(this.context, this.sheet, row, column, 1, 1);
  }
  getRangeByIndexes(row: number, column: number, rows: number, columns: number): Range {
    return new Range(this.context, this.sheet, row, column, rows, columns);
  }
  getRange(address = "A1:XFD1048576"): Range {
    const [first, last] = address.split(":").map((corner) => parseAddress(`x!${corner}`));
    const { row = 0, column = 0 } = first ?? {};
    return this.getRangeByIndexes(row, column, (last?.row ?? row) - row + 1, (last?.column ?? column) - column + 1);
  }
  getUsedRangeOrNullObject(): Range {
    return this.getRange().getUsedRangeOrNullObject();
  }
}

class Range extends Loadable {
  readonly sheet: FakeSheet | undefined;
  readonly #box: readonly [row: number, column: number, rows: number, columns: number];

  constructor(
    context: Context,
    sheet: FakeSheet | undefined,
    row: number,
    column: number,
    rows: number,
    columns: number,
  ) {
    super(context);
    this.sheet = sheet;
    this.#box = [row, column, rows, columns];
  }

  get isNullObject(): boolean {
    return this.#box[2] === 0;
  }
  get address(): string {
    return this.read("address");
  }
  get rowIndex(): number {
    return this.read("rowIndex");
  }
  get columnIndex(): number {
    return this.read("columnIndex");
  }
  get rowCount(): number {
    return this.read("rowCount");
  }
  get columnCount(): number {
    return this.read("columnCount");
  }
  get formulas(): Value[][] {
    return this.read("formulas");
  }
  get values(): Value[][] {
    return this.read("values");
  }
  get valueTypes(): string[][] {
    return this.read("valueTypes");
  }
  set formulas(rows: Value[][]) {
    this.#enter(rows);
  }
  set values(rows: Value[][]) {
    this.#enter(rows);
  }

  current(member: string): unknown {
    const [row, column, rows, columns] = this.#box;
    switch (member) {
      case "address":
        return `${this.sheet?.name}!${columnLetters(column)}${row + 1}`;
      case "formulas":
      case "values":
        return this.#rows(member === "formulas" ? "formula" : "value");
      case "valueTypes":
        return this.#rows("value").map((row) => row.map((value) => (isErrorText(value) ? "Error" : "Other")));
      default:
        return { rowIndex: row, columnIndex: column, rowCount: rows, columnCount: columns }[member];
    }
  }

  #rows(member: "formula" | "value"): Value[][] {
    const [row, column, rows, columns] = this.#box;
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => this.sheet?.cells.get(`${row + r},${column + c}`)?.[member] ?? ""),
    );
  }

  /** As by hand: an apostrophe makes a text, an equals sign a formula. */
  #enter(rows: Value[][]): void {
    const [row, column, height, width] = this.#box;
    if (rows.length !== height || rows.some((line) => line.length !== width)) throw new Error("size does not fit");
    this.context.waiting.push(() => {
      if (this.sheet?.isProtected) throw new Error("AccessDenied");
      this.context.carried += JSON.stringify(rows).length;
      rows.forEach((line, r) => {
        line.forEach((entered, c) => {
          const text = typeof entered === "string" && entered.startsWith("'") ? entered.slice(1) : entered;
          const value = text === entered && String(entered).startsWith("=") ? this.#calculated(String(text)) : text;
          this.sheet?.cells.set(`${row + r},${column + c}`, { formula: text, value });
        });
      });
    });
  }

  #calculated(formula: string): string {
    return unknownName(formula) === undefined ? "calculated" : this.context.book.nameError;
  }

  getCell(row: number, column: number): Range {
    return new Range(this.context, this.sheet, this.#box[0] + row, this.#box[1] + column, 1, 1);
  }
  getResizedRange(rows: number, columns: number): Range {
    const [row, column, height, width] = this.#box;
    return new Range(this.context, this.sheet, row, column, height + rows, width + columns);
  }
  getSpillingToRangeOrNullObject(): Range {
    const [row, column] = this.#box;
    const [rows, columns] = this.sheet?.cells.get(`${row},${column}`)?.spill ?? [0, 0];
    return new Range(this.context, this.sheet, row, column, rows, columns);
  }
  getUsedRangeOrNullObject(): Range {
    const [row, column, rows, columns] = this.#box;
    const inside = [...(this.sheet?.cells.keys() ?? [])]
      .map((key) => key.split(",").map(Number) as [number, number])
      .filter(([r, c]) => r >= row && r < row + rows && c >= column && c < column + columns);
    const first = [Math.min(...inside.map(([r]) => r)), Math.min(...inside.map(([, c]) => c))] as const;
    const last = [Math.max(...inside.map(([r]) => r)), Math.max(...inside.map(([, c]) => c))] as const;
    if (inside.length === 0) return new Range(this.context, this.sheet, 0, 0, 0, 0);
    return new Range(this.context, this.sheet, ...first, last[0] - first[0] + 1, last[1] - first[1] + 1);
  }
  numberFormat: string[][] = [];
  readonly format = { font: { bold: false }, fill: { color: "" }, autofitColumns: () => {} };
  getEntireRow(): Range {
    const [row, , rows] = this.#box;
    return new Range(this.context, this.sheet, row, 0, rows, 16_384);
  }
  /** Rows go down, and names that stand below with them. */
  insert(_shift: "Down"): void {
    const [row, , rows] = this.#box;
    const { names } = this.context.book;
    this.context.waiting.push(() => {
      const cells = [...(this.sheet?.cells ?? [])];
      this.sheet?.cells.clear();
      for (const [key, cell] of cells) {
        const [r = 0, c = 0] = key.split(",").map(Number);
        this.sheet?.cells.set(`${r < row ? r : r + rows},${c}`, cell);
      }
      for (const [name, reference] of names) {
        const range = parseRange(reference);
        if (range === undefined || range.first.sheet !== this.sheet?.name || range.first.row < row) continue;
        names.set(name, `=${rangeText({ ...range, first: { ...range.first, row: range.first.row + rows } })}`);
      }
    });
  }
  select(): void {
    this.context.book.active = { sheet: this.sheet?.name ?? "", row: this.#box[0], column: this.#box[1] };
  }
  clear(): void {
    this.context.waiting.push(() => this.sheet?.cells.clear());
  }
}
