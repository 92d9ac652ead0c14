import { NAMESPACE } from "../../../../src/functions/declare/cell-function.ts";
import { registry } from "../../../../src/functions/registry.ts";
import type { ExcelFunction } from "../../../../src/hosts/excel/functions.ts";
import { excelMetadata } from "../../../../src/publish/metadata.ts";
import { addressText, parseAddress } from "../../../../src/workbook/host.ts";
import { parseRange } from "../../../../src/workbook/named-rows.ts";
import type { FakeSheet, FakeWorkbook } from "./book.ts";
import { type Node, nodesOf, parse } from "./formula.ts";
import {
  chosen,
  combine,
  error,
  type Grid,
  gridOf,
  hundredth,
  isError,
  isGrid,
  mapped,
  NATIVES,
  negated,
  type Scalar,
  type Value,
} from "./natives.ts";

/** Cells of one worksheet. */
interface Area {
  readonly sheet: FakeSheet;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

interface Place {
  readonly sheet: FakeSheet;
  readonly row: number;
  readonly column: number;
}

const byName = new Map(
  excelMetadata(registry, "https://example.com").functions.map((fn) => [fn.name.toUpperCase(), fn]),
);
const PREFIX = `${NAMESPACE}.`;
const MOST_PASSES = 60;

/**
 * Calculates the formulas of a stand-in workbook as the host does: only what an edit touched and what depends on it, our functions by their ids with an
 * invocation object behind the arguments, blank cells as 0 or null, errors handed in as objects, a promise as #BUSY! until it is kept, tables spilled into
 * free cells, #SPILL! where one stands in the way.
 */
export class Calculation {
  readonly #book: FakeWorkbook;
  readonly #functions: ReadonlyMap<string, ExcelFunction>;
  readonly #parsed = new Map<string, Node | undefined>();
  /** how many calls of ours were made */
  calls = 0;

  constructor(book: FakeWorkbook, functions: ReadonlyMap<string, ExcelFunction>) {
    this.#book = book;
    this.#functions = functions;
  }

  /** Calculates the cells given and all that depends on them. */
  run(edited: readonly Place[]): void {
    // A cell that was just entered is calculated whatever it depends on.
    this.#follow(
      edited,
      edited.filter((place) => this.#formulaAt(place) !== undefined),
    );
  }

  /** Calculates what depends on cells that show something else now. */
  #follow(from: readonly Place[], first: readonly Place[] = []): void {
    let changed = from;
    let dirty = new Map(first.map((place) => [keyOf(place), place]));
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      for (const place of this.#dependents(changed)) dirty.set(keyOf(place), place);
      if (dirty.size === 0) return;
      changed = this.#calculated(dirty);
      dirty = new Map();
    }
    throw new Error("The stand-in's formulas go round in a circle");
  }

  #calculated(dirty: ReadonlyMap<string, Place>): Place[] {
    const changed: Place[] = [];
    const done = new Set<string>();
    const settle = (place: Place): void => {
      const key = keyOf(place);
      if (done.has(key)) return;
      done.add(key);
      for (const area of this.#readBy(place)) {
        for (const other of dirty.values()) if (other !== place && inside(other, area)) settle(other);
      }
      changed.push(...this.#enter(place, this.#evaluate(place)));
    };
    for (const place of dirty.values()) settle(place);
    return changed;
  }

  /** Formulas that read one of the cells. */
  #dependents(changed: readonly Place[]): Place[] {
    if (changed.length === 0) return [];
    const found: Place[] = [];
    for (const sheet of this.#book.sheets) {
      for (const [key, cell] of sheet.cells) {
        if (typeof cell.formula !== "string" || !cell.formula.startsWith("=")) continue;
        const [row = 0, column = 0] = key.split(",").map(Number);
        const place = { sheet, row, column };
        const areas = this.#readBy(place);
        if (changed.some((other) => areas.some((area) => inside(other, area)))) found.push(place);
      }
    }
    return found;
  }

  #formulaAt({ sheet, row, column }: Place): string | undefined {
    const cell = sheet.cells.get(`${row},${column}`);
    return typeof cell?.formula === "string" && cell.formula.startsWith("=") && cell.text !== true
      ? cell.formula
      : undefined;
  }

  #nodeAt(place: Place): Node | undefined {
    const formula = this.#formulaAt(place);
    if (formula === undefined) return undefined;
    if (!this.#parsed.has(formula)) {
      try {
        this.#parsed.set(formula, parse(formula));
      } catch {
        this.#parsed.set(formula, undefined);
      }
    }
    return this.#parsed.get(formula);
  }

  #readBy(place: Place): Area[] {
    const node = this.#nodeAt(place);
    if (node === undefined) return [];
    return nodesOf(node).flatMap((part) => {
      const area = part.is === "cells" || part.is === "name" ? this.#areaOf(part, place.sheet) : undefined;
      return area === undefined ? [] : [area];
    });
  }

  #areaOf(node: Node, home: FakeSheet): Area | undefined {
    if (node.is === "name") {
      const known = [...this.#book.names].find(([name]) => name.toLowerCase() === node.name.toLowerCase());
      const range = parseRange(known?.[1] ?? "");
      const sheet = range && this.#book.sheet(range.first.sheet);
      return range && sheet ? { ...range.first, sheet, rows: range.rows, columns: range.columns } : undefined;
    }
    if (node.is !== "cells") return undefined;
    const sheet = node.sheet === undefined ? home : this.#book.sheet(node.sheet);
    const first = parseAddress(`x!${node.first}`);
    const last = parseAddress(`x!${node.last ?? node.first}`);
    if (sheet === undefined || first === undefined || last === undefined) return undefined;
    const { row, column } = first;
    const spill = node.spill === true ? sheet.cells.get(`${row},${column}`)?.spill : undefined;
    const [rows, columns] = spill ?? [last.row - row + 1, last.column - column + 1];
    return { sheet, row, column, rows, columns };
  }

  #evaluate(place: Place): Value | Promise<unknown> {
    const node = this.#nodeAt(place);
    if (node === undefined) return error("#NAME?");
    try {
      const value = this.#value(node, place);
      return Array.isArray(value) && value.length === 0 ? error("#CALC!") : value;
    } catch (failure) {
      if (failure instanceof Promise) return failure;
      throw failure;
    }
  }

  #value(node: Node, place: Place): Value {
    switch (node.is) {
      case "value":
        return node.value;
      case "error":
        return error(node.error);
      case "array":
        return node.rows.map((row) => row.map((cell) => this.#value(cell, place) as Scalar));
      case "unary":
        return mapped(this.#value(node.of, place), { "-": negated, "%": hundredth }[node.sign] ?? ((cell) => cell));
      case "binary":
        return combine(node.sign, this.#value(node.left, place), this.#value(node.right, place));
      case "cells":
      case "name":
        return this.#cells(node, place);
      default:
        return this.#call(node, place);
    }
  }

  #cells(node: Node, place: Place): Value {
    const area = this.#areaOf(node, place.sheet);
    if (area === undefined) return error(node.is === "name" ? "#NAME?" : "#REF!");
    const rows = Array.from({ length: area.rows }, (_, r) =>
      Array.from({ length: area.columns }, (_, c) => shown(area.sheet, area.row + r, area.column + c)),
    );
    return area.rows === 1 && area.columns === 1 ? (rows[0]?.[0] ?? null) : rows;
  }

  #call(node: Node & { is: "call" }, place: Place): Value {
    if (node.name.startsWith(PREFIX)) return this.#ours(node, place);
    const arg = (i: number): Value => {
      const given = node.args[i];
      return given === undefined ? null : this.#value(given, place);
    };
    if (node.name === "IF") {
      const test = arg(0);
      if (isError(test)) return test;
      if (isGrid(test)) return chosen(test, arg(1), node.args.length > 2 ? arg(2) : false);
      return test === true || (typeof test === "number" && test !== 0) ? arg(1) : node.args.length > 2 ? arg(2) : false;
    }
    if (node.name === "IFERROR") {
      const value = arg(0);
      const otherwise = isGrid(value) ? arg(1) : null;
      if (isGrid(value)) return mapped(value, (cell) => (isError(cell) && !isGrid(otherwise) ? otherwise : cell));
      return isError(value) ? arg(1) : value;
    }
    const native = NATIVES[node.name];
    return native === undefined ? error("#NAME?") : native(...node.args.map((_, i) => arg(i)));
  }

  /** A function of ours, called as the host calls it. */
  #ours(node: Node & { is: "call" }, place: Place): Value {
    const declared = byName.get(node.name.slice(PREFIX.length));
    const fn = declared === undefined ? undefined : this.#functions.get(declared.id);
    if (declared === undefined || fn === undefined || this.#book.withoutAddIn) return error("#NAME?");
    const blank = this.#book.blank;
    const given = declared.parameters.map(({ dimensionality, type }, i) => {
      const arg = node.args[i];
      if (arg === undefined) return null;
      const value = this.#value(arg, place);
      if (dimensionality === "matrix") return gridOf(value).map((row) => row.map((cell) => handed(cell, blank)));
      const [first = null] = gridOf(value)[0] ?? [];
      const cell = handed(first, blank);
      return type === "string" && typeof cell === "number" ? String(cell) : cell;
    });
    this.calls++;
    const address = addressText({ sheet: place.sheet.name, row: place.row, column: place.column });
    try {
      const result: unknown = fn(...given, new Invocation(declared.id, address));
      // The whole cell waits for what comes later.
      if (result instanceof Promise) throw this.#later(place, result);
      return received(result);
    } catch (failure) {
      if (failure instanceof Promise) throw failure;
      return refused(failure);
    }
  }

  /** While the answer is awaited the cell is busy; then it is entered, unless the formula is another one by then. */
  #later(place: Place, answer: Promise<unknown>): Promise<void> {
    const formula = this.#formulaAt(place);
    return answer.then(received, refused).then((value) => {
      if (this.#formulaAt(place) === formula) this.#follow(this.#enter(place, value));
    });
  }

  /** Shows a result in its cell, spilled where it is a table; returns the cells that now show something else. */
  #enter(place: Place, value: Value | Promise<unknown>): Place[] {
    const { sheet, row, column } = place;
    const cell = sheet.cells.get(`${row},${column}`);
    if (cell === undefined) return [];
    const before = new Map<string, unknown>([[`${row},${column}`, cell.value]]);
    for (const [key, held] of sheet.spilled) {
      if (held.from !== `${row},${column}`) continue;
      before.set(key, held.value);
      sheet.spilled.delete(key);
    }
    delete cell.spill;
    if (value instanceof Promise) {
      cell.value = "#BUSY!";
      this.#book.pending.push(value);
    } else if (isGrid(value) && (value.length > 1 || (value[0]?.length ?? 0) > 1)) this.#spill(place, value);
    else cell.value = asShown(isGrid(value) ? (value[0]?.[0] ?? null) : value);
    const after = new Map<string, unknown>([[`${row},${column}`, cell.value]]);
    for (const [key, held] of sheet.spilled) if (held.from === `${row},${column}`) after.set(key, held.value);
    const keys = [...new Set([...before.keys(), ...after.keys()])].filter((key) => before.get(key) !== after.get(key));
    return keys.map((key) => {
      const [r = 0, c = 0] = key.split(",").map(Number);
      return { sheet, row: r, column: c };
    });
  }

  #spill({ sheet, row, column }: Place, table: Grid): void {
    const cell = sheet.cells.get(`${row},${column}`);
    if (cell === undefined) return;
    const columns = table[0]?.length ?? 0;
    const places = table
      .flatMap((line, r) => line.map((value, c) => ({ key: `${row + r},${column + c}`, value })))
      .slice(1);
    const inTheWay = places.some(({ key }) => {
      const there = sheet.cells.get(key);
      return (there !== undefined && there.formula !== "") || sheet.spilled.has(key);
    });
    if (inTheWay) {
      cell.value = "#SPILL!";
      return;
    }
    cell.value = asShown(table[0]?.[0] ?? null);
    cell.spill = [table.length, columns];
    for (const { key, value } of places) sheet.spilled.set(key, { from: `${row},${column}`, value: asShown(value) });
  }
}

/** As in Excel's runtime: getters on the class, not own members. */
class Invocation {
  readonly #id: string;
  readonly #address: string;
  constructor(id: string, address: string) {
    this.#id = id;
    this.#address = address;
  }
  get functionName(): string {
    return this.#id;
  }
  get address(): string {
    return this.#address;
  }
}

const keyOf = ({ sheet, row, column }: Place): string => `${sheet.id} ${row},${column}`;

function inside({ sheet, row, column }: Place, area: Area): boolean {
  const down = row - area.row;
  const along = column - area.column;
  return sheet === area.sheet && down >= 0 && down < area.rows && along >= 0 && along < area.columns;
}

function shown(sheet: FakeSheet, row: number, column: number): Scalar {
  const key = `${row},${column}`;
  const held = sheet.cells.get(key);
  // A cell without content shows what is spilled into it.
  const value = held === undefined || held.formula === "" ? sheet.spilled.get(key)?.value : held.value;
  if (value === undefined || (value === "" && held?.formula === "")) return null;
  return typeof value === "string" && held?.text !== true && /^#[A-Z/0-9]+[!?]?$/.test(value) ? error(value) : value;
}

/** A cell as the host hands it to a function. */
function handed(cell: Scalar, blank: FakeWorkbook["blank"]): unknown {
  if (cell === null) return blank;
  return isError(cell) ? { type: "Error", basicType: "Error", basicValue: cell.error } : cell;
}

function received(result: unknown): Value {
  return Array.isArray(result) ? (result as Grid) : (result as Scalar);
}

function refused(failure: unknown): Value {
  const code = typeof failure === "object" && failure !== null && "code" in failure ? failure.code : "#VALUE!";
  return error(String(code));
}

function asShown(value: Scalar): string | number | boolean {
  if (value === null) return 0;
  return isError(value) ? value.error : value;
}
