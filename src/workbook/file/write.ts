import type { DataValidation, Cell as LibraryCell, WriteSheet } from "hucre/xlsx";
import { asStored, callsOurs } from "../formula.ts";
import { columnLetters } from "../host.ts";
import { asProperties } from "./kept.ts";
import { checkFile } from "./limits.ts";
import { type FileCell, type FilePicture, type FileSheet, placeOf, type WorkbookFile } from "./model.ts";
import { asNewFunctions, maySpill } from "./new-functions.ts";
import { styleOf } from "./style.ts";

const USUAL_WIDTH = 13;

/** A picture as the library has it. */
export type LibraryImage = NonNullable<WriteSheet["images"]>[number];

export interface WriteOptions {
  /** values in the place of our formulas, for people without the add-in */
  readonly valuesOnly?: boolean;
  /** version of Sillwork, written into the file's properties */
  readonly version: string;
}

/**
 * A workbook as an .xlsx file: formulas of ours under the name that the host stores, each with the flag of a formula that spills and with its value.
 * @throws BadInput where a cell holds what a file cannot
 */
export async function writeWorkbook(file: WorkbookFile, options: WriteOptions): Promise<Uint8Array> {
  checkFile(file);
  const [{ writeXlsx }, { finished }] = await Promise.all([import("hucre/xlsx"), import("./finish.ts")]);
  const bytes = await writeXlsx({
    sheets: file.sheets.map((sheet) => sheetOf(sheet, options.valuesOnly === true)),
    namedRanges: file.names.map(([name, range]) => ({ name, range })),
    properties: {
      title: file.title,
      creator: "Sillwork",
      custom: { Sillwork: options.version, ...asProperties(file.kept) },
    },
  });
  return finished(bytes);
}

/** A worksheet of ours as the library writes it. */
export function sheetOf(sheet: FileSheet, valuesOnly: boolean): WriteSheet {
  const cells = new Map<string, Partial<LibraryCell>>();
  const dataValidations: DataValidation[] = [];
  for (const [key, cell] of sheet.cells) {
    const { row, column } = placeOf(key);
    cells.set(key, cellOf(cell, row, column, valuesOnly));
    const validation = validationOf(cell, row, column);
    if (validation !== undefined) dataValidations.push(validation);
  }
  return {
    name: sheet.name,
    cells,
    columns: Array.from(sheet.widths, (width) => ({ width: width ?? USUAL_WIDTH })),
    ...(dataValidations.length === 0 ? {} : { dataValidations }),
    ...(sheet.frozenRows === undefined ? {} : { freezePane: { rows: sheet.frozenRows } }),
    pageSetup: { paperSize: "letter", orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
    ...(sheet.pictures === undefined ? {} : { images: sheet.pictures.map(imageOf) }),
    headerFooter: { oddFooter: "&L&A&RPage &P of &N" },
  };
}

/** A picture as the library writes it. That it ends where it begins says that its size stands: see `finished`. */
export function imageOf({ name, alt, png, row, column, width, height }: FilePicture): LibraryImage {
  const corner = { row, col: column };
  const size = { width: Math.round(width), height: Math.round(height) };
  const data = Uint8Array.from(atob(png), (character) => character.charCodeAt(0));
  return { data, type: "png", anchor: { from: corner, to: corner }, ...size, altText: alt, title: name };
}

/** A cell as the library writes it. */
export function cellOf(cell: FileCell, row: number, column: number, valuesOnly: boolean): Partial<LibraryCell> {
  const style = cell.look === undefined ? {} : { style: styleOf(cell.look) };
  const { formula } = cell;
  const value = typeof cell.value === "string" ? escaped(cell.value) : cell.value;
  if (formula === undefined || (valuesOnly && callsOurs(formula)))
    return { value: value === "" ? null : value, ...style };
  const written = { formula: asNewFunctions(asStored(formula)).slice(1), formulaResult: value, ...style };
  if (!callsOurs(formula) && cell.spill === undefined && !maySpill(formula)) return written;
  const { rows, columns } = cell.spill ?? { rows: 1, columns: 1 };
  const first = `${columnLetters(column)}${row + 1}`;
  const last = `${columnLetters(column + columns - 1)}${row + rows}`;
  const formulaRef = first === last ? first : `${first}:${last}`;
  return { ...written, formulaType: "array", formulaRef, formulaDynamic: true };
}

/** The format takes _x0041_ in a text for a character's code. */
function escaped(text: string): string {
  return text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_");
}

function validationOf({ choices, hint }: FileCell, row: number, column: number): DataValidation | undefined {
  if (choices === undefined && hint === undefined) return undefined;
  const shown = hint === undefined ? {} : { showInputMessage: true, inputMessage: hint };
  const range = `${columnLetters(column)}${row + 1}`;
  if (choices === undefined)
    return { type: "textLength", operator: "greaterThanOrEqual", formula1: "0", allowBlank: true, range, ...shown };
  return {
    ...{ type: "list", values: [...choices], allowBlank: true, range, ...shown },
    // Other spellings are read as well, and a basis may bring words of its own: a warning, no bar.
    ...{ showErrorMessage: true, errorStyle: "warning", errorMessage: `One of: ${choices.join(", ")}` },
  };
}
