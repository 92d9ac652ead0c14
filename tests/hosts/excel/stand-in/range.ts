import { unknownName } from "../../../../src/workbook/formula.ts";
import { addressText, columnLetters } from "../../../../src/workbook/host.ts";
import { parseRange, rangeText } from "../../../../src/workbook/named-rows.ts";
import { isErrorText } from "../../../../src/workbook/scan.ts";
import type { FakeLook, FakeSheet, FakeWorkbook, Held } from "./book.ts";
import type { Context } from "./context.ts";
import { Loadable, RichError } from "./loadable.ts";

type Box = readonly [row: number, column: number, rows: number, columns: number];

/** Cells of a worksheet. */
export class Range extends Loadable {
  readonly #find: () => FakeSheet | undefined;
  readonly #box: Box | (() => Box);

  constructor(context: Context, find: () => FakeSheet | undefined, box: Box | (() => Box)) {
    super(context);
    this.#find = find;
    this.#box = box;
  }

  #at(): Box {
    return typeof this.#box === "function" ? this.#box() : this.#box;
  }

  missing(): boolean {
    return this.#at()[2] === 0 || this.#find() === undefined;
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
  get formulas(): Held[][] {
    return this.read("formulas");
  }
  get values(): Held[][] {
    return this.read("values");
  }
  get valueTypes(): string[][] {
    return this.read("valueTypes");
  }
  set formulas(rows: Held[][]) {
    this.#enter(rows);
  }
  set values(rows: Held[][]) {
    this.#enter(rows);
  }
  set numberFormat(rows: string[][]) {
    this.#fits(rows);
    this.context.sent += JSON.stringify(rows).length;
    this.#each((look, r, c) => {
      look.numberFormat = rows[r]?.[c];
    });
  }

  /** What a name would keep of it. */
  reference(): string {
    const sheet = this.#find();
    if (sheet === undefined) throw new RichError("ItemNotFound");
    const [row, column, rows, columns] = this.#at();
    return rangeText({ first: { sheet: sheet.name, row, column }, rows, columns });
  }

  current(member: string): unknown {
    const [row, column, rows, columns] = this.#at();
    const sheet = this.#find();
    switch (member) {
      case "address": {
        const first = addressText({ sheet: sheet?.name ?? "", row, column });
        return rows * columns === 1 ? first : `${first}:${columnLetters(column + columns - 1)}${row + rows}`;
      }
      case "formulas":
      case "values":
        return this.#rows(member === "formulas" ? "formula" : "value");
      case "valueTypes":
        return this.#rows("value").map((line) => line.map((value) => (isErrorText(value) ? "Error" : "Other")));
      default:
        return {
          ...{ rowIndex: row, columnIndex: column, rowCount: rows, columnCount: columns },
          ...{ top: row * 15, left: column * 48, width: columns * 48, height: rows * 15 },
        }[member];
    }
  }

  #rows(member: "formula" | "value"): Held[][] {
    const [row, column, rows, columns] = this.#at();
    const sheet = this.#find();
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => {
        const key = `${row + r},${column + c}`;
        return sheet?.cells.get(key)?.[member] ?? sheet?.spilled.get(key)?.value ?? "";
      }),
    );
  }

  #fits(rows: readonly (readonly unknown[])[]): void {
    const [, , height, width] = this.#at();
    if (rows.length !== height || rows.some((line) => line.length !== width)) {
      throw new RichError("InvalidArgument", "size does not fit");
    }
  }

  #writable(): FakeSheet {
    const sheet = this.#find();
    if (sheet === undefined) throw new RichError("ItemNotFound");
    if (sheet.isProtected) throw new RichError("AccessDenied");
    return sheet;
  }

  #enter(rows: Held[][]): void {
    const [row, column] = this.#at();
    this.#fits(rows);
    this.context.sent += JSON.stringify(rows).length;
    const { book } = this.context;
    this.context.waiting.push(() => {
      const sheet = this.#writable();
      rows.forEach((line, r) => {
        line.forEach((content, c) => {
          sheet.enter(row + r, column + c, content);
          book.touched.push({ sheet, row: row + r, column: column + c });
          const cell = sheet.cells.get(`${row + r},${column + c}`);
          if (book.calculation !== undefined || cell === undefined || cell.text) return;
          const { formula } = cell;
          if (typeof formula !== "string" || !formula.startsWith("=")) return;
          cell.value = unknownName(formula) === undefined ? "calculated" : book.nameError;
        });
      });
    });
  }

  #each(set: (look: FakeLook, row: number, column: number) => void): void {
    const [row, column, rows, columns] = this.#at();
    this.context.waiting.push(() => {
      const sheet = this.#writable();
      for (let r = 0; r < rows; r++) {
        for (let c = 0; c < columns; c++) {
          const key = `${row + r},${column + c}`;
          const look = sheet.looks.get(key) ?? {};
          sheet.looks.set(key, look);
          set(look, r, c);
        }
      }
    });
  }

  /** An object whose members are set for each cell. */
  #members(before = ""): object {
    return new Proxy(
      {},
      {
        set: (_, member, value: unknown) => {
          this.#each((look) => {
            look[`${before}${String(member)}`] = value;
          });
          return true;
        },
      },
    );
  }

  get format(): unknown {
    const [, column] = this.#at();
    const setWidth = (width: number) => {
      this.context.waiting.push(() => this.#writable().widths.set(column, width));
    };
    const own = this.#members("format ") as Record<string, unknown>;
    return {
      font: this.#members("font "),
      fill: this.#members("fill "),
      autofitColumns: () => {},
      autofitRows: () => {},
      set wrapText(wrap: boolean) {
        own.wrapText = wrap;
      },
      set verticalAlignment(where: string) {
        own.verticalAlignment = where;
      },
      set columnWidth(width: number) {
        setWidth(width);
      },
    };
  }
  get dataValidation(): object {
    this.context.needs(8);
    return this.#members("validation ");
  }

  getCell(row: number, column: number): Range {
    const [top, left] = this.#at();
    return new Range(this.context, this.#find, [top + row, left + column, 1, 1]);
  }
  getResizedRange(rows: number, columns: number): Range {
    const [row, column, height, width] = this.#at();
    return new Range(this.context, this.#find, [row, column, height + rows, width + columns]);
  }
  getSpillingToRangeOrNullObject(): Range {
    this.context.needs(12);
    const [row, column] = this.#at();
    return new Range(this.context, this.#find, () => {
      const [rows, columns] = this.#find()?.cells.get(`${row},${column}`)?.spill ?? [0, 0];
      return [row, column, rows, columns];
    });
  }
  getUsedRangeOrNullObject(): Range {
    return new Range(this.context, this.#find, () => {
      const [row, column, rows, columns] = this.#at();
      const sheet = this.#find();
      let [top, left, bottom, right] = [Infinity, Infinity, -1, -1];
      for (const key of [...(sheet?.cells.keys() ?? []), ...(sheet?.spilled.keys() ?? [])]) {
        const [r = 0, c = 0] = key.split(",").map(Number);
        if (r < row || r >= row + rows || c < column || c >= column + columns) continue;
        [top, left, bottom, right] = [Math.min(top, r), Math.min(left, c), Math.max(bottom, r), Math.max(right, c)];
      }
      return bottom < 0 ? [0, 0, 0, 0] : [top, left, bottom - top + 1, right - left + 1];
    });
  }
  getEntireRow(): Range {
    const [row, , rows] = this.#at();
    return new Range(this.context, this.#find, [row, 0, rows, 16_384]);
  }
  getEntireColumn(): Range {
    const [, column, , columns] = this.#at();
    return new Range(this.context, this.#find, [0, column, 1_048_576, columns]);
  }
  /** Rows go down, and names that stand below with them. */
  insert(_shift: "Down"): void {
    const [row, , rows] = this.#at();
    this.context.waiting.push(() => {
      const sheet = this.#writable();
      for (const map of [sheet.cells, sheet.looks] as Map<string, unknown>[]) {
        const held = [...map];
        map.clear();
        for (const [key, cell] of held) {
          const [r = 0, c = 0] = key.split(",").map(Number);
          map.set(`${r < row ? r : r + rows},${c}`, cell);
        }
      }
      moveNames(this.context.book, sheet, row, rows);
    });
  }
  select(): void {
    const [row, column] = this.#at();
    this.context.waiting.push(() => {
      this.context.book.active = { sheet: this.#find()?.name ?? "", row, column };
    });
  }
  clear(): void {
    this.context.waiting.push(() => {
      const sheet = this.#writable();
      sheet.cells.clear();
      sheet.spilled.clear();
      sheet.looks.clear();
    });
  }
}

/** Names that stand below rows that were put in go down with them. */
function moveNames(book: FakeWorkbook, sheet: FakeSheet, row: number, rows: number): void {
  for (const [name, reference] of book.names) {
    const range = parseRange(reference);
    if (range === undefined || range.first.sheet !== sheet.name || range.first.row < row) continue;
    book.names.set(name, `=${rangeText({ ...range, first: { ...range.first, row: range.first.row + rows } })}`);
  }
}
