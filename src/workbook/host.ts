import type { Cell, Table } from "../core/kit/tape.ts";
import type { CellAddress, Ledger } from "./ledger.ts";
import type { Scan } from "./scan.ts";

/** What the pane needs of a spreadsheet. Both hosts give it. */
export interface Host {
  /** name of the host in sentences: "Excel", "the try-out sheet" */
  readonly name: string;
  readonly ledger: Ledger;

  /** The active cell, or undefined when nothing is selected. */
  selection(): Promise<CellAddress | undefined>;
  /** Tells of every new selection; returns the function that stops it. */
  onSelection(listener: (address: CellAddress | undefined) => void): () => void;

  /** Formula of a cell with its "=", or "" where it holds none. */
  formulaAt(address: CellAddress): Promise<string>;
  /** What the cell shows. */
  valueAt(address: CellAddress): Promise<Cell | undefined>;

  /** Selects a cell and brings it into view. */
  goTo(address: CellAddress): Promise<void>;
  /** Writes a formula into the active cell; returns where it went. */
  insertFormula(formula: string): Promise<CellAddress>;
  /** Looks at every worksheet for formulas of ours and for errors of any kind; what was calculated before plays no part. */
  scan(): Promise<Scan>;
  /** Has cells calculate again; returns those that refused. */
  calculate(cells: readonly CellAddress[]): Promise<readonly CellAddress[]>;
  /**
   * Makes a worksheet and fills it from A1; returns its name. One that was made so before is replaced, a user's own of that name is left alone and the new
   * one gets a number. Texts are written as texts, never as formulas. It is ready to print: see `reportLook`.
   */
  writeSheet(name: string, rows: Table): Promise<string>;
  /** The first cell of a name of the workbook; undefined where there is no such name. */
  cellOfName?(name: string): Promise<CellAddress | undefined>;
  /** The cells of a name of the workbook; undefined where there is no such name, or where it stands for no cells. */
  readName?(name: string): Promise<NamedRows | undefined>;
  /** Every name of the workbook that stands for one cell. */
  namedCells?(): Promise<readonly NamedCell[]>;
  /**
   * Has the name Basis hold these rows. Where it stands for cells, those that differ are written, and rows beyond its last are put in below it;
   * else a worksheet `Site basis` is made and the name given to its first three columns. Texts are written as texts, never as formulas.
   */
  writeBasis?(rows: Table): Promise<void>;
  /** Values of a reference such as `B2:D9` or `'Wall 1'!B4`, seen from a worksheet; undefined where it is none, or is too large to look at. */
  readRange?(reference: string, sheet: string): Promise<Table | undefined>;
  /** Tells what is being typed into a cell, with every key, and undefined when the cell is left; where the host lets it be seen. */
  onTyping?(listener: (typed: Typed | undefined) => void): () => void;
  /** Puts an image beside the cells of a worksheet, at the height of `near`, or in the place of the one that has its name. */
  placeImage?(near: CellAddress, image: PlacedImage): Promise<void>;
  /** The workbooks to start from, which `insertTemplate` takes; they load when they are asked for. */
  templates?(): Promise<readonly TemplateSummary[]>;
  /**
   * Puts the worksheets of a template into the workbook as new ones; no worksheet and no name that is there is ever written over. A sheet whose names all
   * stand for cells already is not written again: the others use what is there. The whole goes in or nothing of it.
   * @param name as in `templates`
   */
  insertTemplate?(name: string): Promise<InsertedTemplate>;
  /** Writes a template into a file of its own, with its values; returns what to tell the user. */
  templateFile?(name: string): Promise<string>;
  /** A text of ours that is kept in the workbook itself and travels with it; undefined where there is none. */
  kept?(key: string): Promise<string | undefined>;
  /** Keeps a text in the workbook; "" takes it out. */
  keep?(key: string, text: string): Promise<void>;
}

/** A workbook to start from. */
export interface TemplateSummary {
  readonly name: string;
  readonly sheets: readonly { readonly name: string; readonly says: string }[];
}

/** What came of putting a template in. */
export interface InsertedTemplate {
  /** the new worksheets, by the names that they got */
  readonly sheets: readonly string[];
  /** worksheets of the template that were there already and are used, by the names that they have there */
  readonly used: readonly string[];
  /** what to tell the user: what was put in, what was used, and how to undo it */
  readonly says: string;
}

/** What stands in a cell while it is being typed in. */
export interface Typed {
  readonly address: CellAddress;
  readonly text: string;
  /** how many characters stand before the caret */
  readonly caret: number;
}

/** Most cells of a reference that `Host.readRange` reads. */
export const MOST_READ = 20_000;

/** The cells of a name of the workbook. */
export interface NamedRows {
  readonly first: CellAddress;
  /** values row by row, "" for a blank cell */
  readonly rows: Table;
  /** formulas with their "=", "" where there is none */
  readonly formulas: readonly (readonly string[])[];
}

/** A cell with a name of its own. */
export interface NamedCell {
  readonly name: string;
  readonly address: CellAddress;
  readonly value: Cell;
  /** with its "=", "" where the value is typed */
  readonly formula: string;
  /** the text in the cell before it, which says what it is; "" where there is none */
  readonly label: string;
  /** the short text in the cell behind it, its unit; "" where there is none */
  readonly unit: string;
}

/** An image for a worksheet; its size in pixels of a screen at its usual scale, 96 to an inch. */
export interface PlacedImage {
  readonly name: string;
  /** what it shows, in words */
  readonly alt: string;
  /** a PNG file in base 64 */
  readonly png: string;
  readonly width: number;
  readonly height: number;
}

/** `Wall!B4`, quoted where the sheet's name asks for it. */
export function addressText({ sheet, row, column }: CellAddress): string {
  const plain = /^[A-Za-z_][A-Za-z0-9_.]*$/.test(sheet);
  return `${plain ? sheet : `'${sheet.replaceAll("'", "''")}'`}!${columnLetters(column)}${row + 1}`;
}

/** 0 -> A, 26 -> AA */
export function columnLetters(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnLetters(Math.floor(column / 26) - 1) + letter;
}

/** Reads `'Wall 1'!$B$4` or `Wall!B4`; undefined when it is no single cell. */
export function parseAddress(text: string): CellAddress | undefined {
  const match = /^(?:'((?:[^']|'')+)'|([^'!]+))!\$?([A-Z]{1,3})\$?(\d+)$/i.exec(text);
  if (match === null) return undefined;
  const sheet = match[1]?.replaceAll("''", "'") ?? match[2] ?? "";
  const letters = (match[3] ?? "").toUpperCase();
  let column = 0;
  for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64;
  return { sheet, row: Number(match[4]) - 1, column: column - 1 };
}
