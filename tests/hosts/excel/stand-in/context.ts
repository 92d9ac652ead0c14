import { callsOurs } from "../../../../src/workbook/formula.ts";
import { parseRange } from "../../../../src/workbook/named-rows.ts";
import type { FakeSheet, FakeWorkbook } from "./book.ts";
import { Loadable, RichError } from "./loadable.ts";
import { Range } from "./range.ts";

/** Excel on the web refuses more at once, read or written. */
const LARGEST_REQUEST = 5_000_000;

/** One run's requests: what is asked for waits until it is sent with `sync`. */
export class Context {
  readonly book: FakeWorkbook;
  /** its changes are one step of undo */
  readonly group: boolean;
  readonly waiting: (() => void)[] = [];
  /** what the request carries until it is sent */
  sent = 0;
  received = 0;

  constructor(book: FakeWorkbook, group = false) {
    this.book = book;
    this.group = group;
  }

  async sync(): Promise<void> {
    await Promise.resolve();
    const { book } = this;
    const work = this.waiting.splice(0);
    const { sent } = this;
    this.sent = 0;
    this.received = 0;
    const fault = book.failing();
    if (sent > LARGEST_REQUEST) throw new RichError("RequestPayloadSizeLimitExceeded");
    const share = { nothing: 0, half: 0.5, all: 1 }[fault?.done ?? "all"];
    try {
      for (const step of work.slice(0, Math.ceil(work.length * share))) step();
    } finally {
      book.entered();
    }
    if (fault !== undefined) throw new RichError(fault.code);
    book.largest = Math.max(book.largest, sent, this.received);
    if (this.received > LARGEST_REQUEST) throw new RichError("ResponsePayloadSizeLimitExceeded");
  }

  /** Something of a requirement set ExcelApi 1.x. */
  needs(version: number): void {
    this.waiting.push(() => {
      if (this.book.api < version) throw new RichError("ApiNotFound");
    });
  }

  /** Something that Excel cannot undo. */
  outsideGroup(): void {
    if (this.group) throw new RichError("UndoNotSupported");
  }

  /** Something that a protected workbook refuses. */
  structure(): void {
    if (this.book.isProtected) throw new RichError("AccessDenied");
  }

  get workbook(): unknown {
    const { book } = this;
    return {
      onSelectionChanged: book.events.selection,
      getActiveCell: () => {
        const { sheet, row, column } = book.active;
        return new Range(this, () => book.sheet(sheet), [row, column, 1, 1]);
      },
      worksheets: new Worksheets(this),
      names: new Names(this),
      settings: {
        add: (key: string, value: string) => {
          this.needs(4);
          this.waiting.push(() => book.settings.set(key, value));
        },
        getItemOrNullObject: (key: string) => new Setting(this, key),
      },
    };
  }
}

class Setting extends Loadable {
  readonly #key: string;
  constructor(context: Context, key: string) {
    super(context);
    this.#key = key;
    context.needs(4);
  }
  missing(): boolean {
    return !this.context.book.settings.has(this.#key);
  }
  current(): unknown {
    return this.context.book.settings.get(this.#key);
  }
  get value(): string {
    return this.read("value");
  }
  delete(): void {
    this.context.waiting.push(() => this.context.book.settings.delete(this.#key));
  }
}

class Names extends Loadable {
  missing(): boolean {
    return false;
  }
  get items(): NamedItem[] {
    return this.read("items/name");
  }
  current(): NamedItem[] {
    return [...this.context.book.names.keys()].map((name) => new NamedItem(this.context, name).hold("name"));
  }
  add(name: string, reference: string | Range): void {
    const { book } = this.context;
    this.context.waiting.push(() => {
      const taken = [...book.names.keys()].some((known) => known.toLowerCase() === name.toLowerCase());
      if (taken) throw new RichError("ItemAlreadyExists");
      if (!/^[A-Za-z_\\][\w.\\]*$/.test(name) || /^([A-Z]{1,3}\d+|[RC]\d*)$/i.test(name))
        throw new RichError("InvalidArgument");
      book.names.set(name, typeof reference === "string" ? reference : `=${reference.reference()}`);
    });
  }
  getItem(name: string): NamedItem {
    return new NamedItem(this.context, name);
  }
  getItemOrNullObject(name: string): NamedItem {
    return new NamedItem(this.context, name);
  }
}

class NamedItem extends Loadable {
  readonly #key: string;
  constructor(context: Context, name: string) {
    super(context);
    this.#key = name;
  }
  #name(): string | undefined {
    return [...this.context.book.names.keys()].find((known) => known.toLowerCase() === this.#key.toLowerCase());
  }
  missing(): boolean {
    return this.#name() === undefined;
  }
  current(): unknown {
    return this.#name();
  }
  get name(): string {
    return this.read("name");
  }
  set formula(reference: string) {
    if (!reference.startsWith("=") || /![A-Z]/.test(reference)) throw new Error("a name of moving cells");
    this.context.waiting.push(() => {
      const name = this.#name();
      if (name === undefined) throw new RichError("ItemNotFound");
      this.context.book.names.set(name, reference);
    });
  }
  delete(): void {
    this.context.waiting.push(() => this.context.book.names.delete(this.#name() ?? ""));
  }
  getRangeOrNullObject(): Range {
    const { book } = this.context;
    const range = parseRange(book.names.get(this.#name() ?? "") ?? "");
    const sheet = range && book.sheet(range.first.sheet);
    if (!range || !sheet) return new Range(this.context, () => undefined, [0, 0, 0, 0]);
    const { row, column } = range.first;
    return new Range(this.context, () => sheet, [row, column, range.rows, range.columns]);
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
    this.context.needs(17);
    return this.context.book.events.renamed;
  }
  missing(): boolean {
    return false;
  }
  get items(): Worksheet[] {
    return this.read("items/name");
  }
  current(): Worksheet[] {
    return this.context.book.sheets.map((sheet) => new Worksheet(this.context, () => sheet).hold("name").hold("id"));
  }
  getItem(key: string): Worksheet {
    return new Worksheet(this.context, () => {
      const sheet = this.context.book.sheet(key);
      if (sheet === undefined) throw new RichError("ItemNotFound");
      return sheet;
    });
  }
  getItemOrNullObject(key: string): Worksheet {
    return new Worksheet(this.context, () => this.context.book.sheet(key));
  }
  getActiveWorksheet(): Worksheet {
    return this.getItemOrNullObject(this.context.book.active.sheet);
  }
  add(name: string): Worksheet {
    this.context.waiting.push(() => {
      this.context.structure();
      this.context.book.addSheet(name);
    });
    return this.getItem(name);
  }
}

class Protection extends Loadable {
  readonly #find: () => FakeSheet | undefined;
  constructor(context: Context, find: () => FakeSheet | undefined) {
    super(context);
    this.#find = find;
  }
  missing(): boolean {
    return false;
  }
  get protected(): boolean {
    return this.read("protected");
  }
  current(): unknown {
    return this.#find()?.isProtected ?? false;
  }
}

class Property extends Loadable {
  readonly #of: () => Map<string, string> | undefined;
  readonly #key: string;
  constructor(context: Context, of: () => Map<string, string> | undefined, key: string) {
    super(context);
    this.#of = of;
    this.#key = key;
  }
  missing(): boolean {
    return this.#of()?.has(this.#key) !== true;
  }
  current(): unknown {
    return this.#of()?.get(this.#key);
  }
  delete(): void {
    this.context.waiting.push(() => {
      if (this.#of()?.delete(this.#key) !== true) throw new RichError("ItemNotFound");
    });
  }
}

class Worksheet extends Loadable {
  readonly #find: () => FakeSheet | undefined;
  #protection: Protection | undefined;
  constructor(context: Context, find: () => FakeSheet | undefined) {
    super(context);
    // A sheet stays the same one when it gets another name.
    let found: FakeSheet | undefined;
    this.#find = () => {
      found ??= find();
      return found !== undefined && context.book.sheets.some(({ id }) => id === found?.id) ? found : undefined;
    };
  }
  missing(): boolean {
    return this.#find() === undefined;
  }
  get name(): string {
    return this.read("name");
  }
  set name(name: string) {
    this.context.waiting.push(() => {
      this.context.outsideGroup();
      const sheet = this.#find();
      if (sheet === undefined) throw new RichError("ItemNotFound");
      if (this.context.book.sheets.some((other) => other !== sheet && other.name.toLowerCase() === name.toLowerCase()))
        throw new RichError("ItemAlreadyExists");
      sheet.name = name;
    });
  }
  get id(): string {
    return this.read("id");
  }
  current(member: string): unknown {
    return member === "id" ? this.#find()?.id : this.#find()?.name;
  }
  get protection(): Protection {
    this.#protection ??= new Protection(this.context, this.#find);
    return this.#protection;
  }
  get customProperties() {
    const { context } = this;
    return {
      add: (key: string, value: string) => {
        context.needs(12);
        context.waiting.push(() => this.#find()?.properties.set(key, value));
      },
      getItem: (key: string) => {
        context.needs(12);
        return new Property(context, () => this.#find()?.properties, key);
      },
      getItemOrNullObject: (key: string) => {
        context.needs(12);
        return new Property(context, () => this.#find()?.properties, key);
      },
    };
  }
  get pageLayout(): unknown {
    this.context.needs(9);
    const set = (path: string): object =>
      new Proxy(
        {},
        {
          get: (_, key) => set(`${path}${String(key)}.`),
          set: (_, key, value: unknown) => {
            this.context.waiting.push(() => {
              const sheet = this.#find();
              if (sheet !== undefined) sheet.print[`${path}${String(key)}`] = value;
            });
            return true;
          },
        },
      );
    return set("");
  }
  /** As in Excel: the copy stands behind, protected like the first, and its formulas calculate again, so they show nothing yet. */
  copy(_place: string, _beside: Worksheet): Worksheet {
    const { context } = this;
    let made: FakeSheet | undefined;
    context.waiting.push(() => {
      context.outsideGroup();
      context.structure();
      const from = this.#find();
      let number = 2;
      while (context.book.sheet(`${from?.name} (${number})`) !== undefined) number++;
      const copy = context.book.addSheet(`${from?.name} (${number})`.slice(-31));
      for (const [place, cell] of from?.cells ?? []) {
        // What the spreadsheet works out by itself is there at once.
        const formula = callsOurs(cell.formula) && cell.text !== true;
        const { spill: _, ...rest } = cell;
        copy.cells.set(place, { ...rest, value: formula ? "#BUSY!" : cell.value });
      }
      copy.isProtected = from?.isProtected ?? false;
      made = copy;
    });
    return new Worksheet(context, () => made);
  }
  delete(): void {
    const { context } = this;
    context.waiting.push(() => {
      context.outsideGroup();
      context.structure();
      const { sheets } = context.book;
      const found = this.#find();
      const at = found === undefined ? -1 : sheets.indexOf(found);
      if (at < 0) throw new RichError("ItemNotFound");
      const [gone] = sheets.splice(at, 1);
      for (const [name, reference] of context.book.names) {
        if (parseRange(reference)?.first.sheet === gone?.name) context.book.names.set(name, "=#REF!");
      }
    });
  }
  activate(): void {
    this.context.waiting.push(() => {
      this.context.book.active = { sheet: this.#find()?.name ?? "", row: 0, column: 0 };
    });
  }
  getCell(row: number, column: number): Range {
    return this.getRangeByIndexes(row, column, 1, 1);
  }
  getRangeByIndexes(row: number, column: number, rows: number, columns: number): Range {
    return new Range(this.context, this.#find, [row, column, rows, columns]);
  }
  getRange(address = "A1:XFD1048576"): Range {
    const range = parseRange(`x!${address}`);
    if (range === undefined) throw new RichError("InvalidArgument");
    return this.getRangeByIndexes(range.first.row, range.first.column, range.rows, range.columns);
  }
  getUsedRange(): Range {
    return this.getRange().getUsedRangeOrNullObject();
  }
  getUsedRangeOrNullObject(): Range {
    return this.getRange().getUsedRangeOrNullObject();
  }
}
