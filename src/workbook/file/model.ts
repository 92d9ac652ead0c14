import type { Cell } from "../../core/kit/tape.ts";
import type { PlacedImage } from "../host.ts";

/** How a cell looks, as far as files and hosts share it. */
export interface Look {
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** points */
  readonly size?: number;
  /** "#rrggbb" */
  readonly color?: string;
  readonly fill?: string;
  /** number format in the spreadsheet's own notation */
  readonly format?: string;
  readonly wrap?: boolean;
  readonly align?: "left" | "center" | "right";
}

/** A cell of a workbook on its way into a file or out of one. */
export interface FileCell {
  /** what the cell shows; "" for a blank one */
  readonly value: Cell;
  /** the formula as one types it, with its "=" */
  readonly formula?: string;
  /** size of the table that the formula spills, from this cell on; its other cells stand as values of their own */
  readonly spill?: { readonly rows: number; readonly columns: number };
  readonly look?: Look;
  /** the words to choose from */
  readonly choices?: readonly string[];
  /** shown while the cell is selected */
  readonly hint?: string;
}

/** A picture of ours over the cells; its left upper corner stands in that of a cell. */
export interface FilePicture extends PlacedImage {
  readonly row: number;
  readonly column: number;
}

/** What the names of our pictures begin with. */
export const OUR_PICTURE = "Sillwork ";

export interface FileSheet {
  readonly name: string;
  /** by place: see `placeKey` */
  readonly cells: ReadonlyMap<string, FileCell>;
  /** widths of columns in characters of normal text; undefined for the usual one */
  readonly widths: readonly (number | undefined)[];
  /** rows that stay in sight above the others */
  readonly frozenRows?: number;
  readonly pictures?: readonly FilePicture[];
}

export interface WorkbookFile {
  readonly title: string;
  readonly sheets: readonly FileSheet[];
  /** names for cells and ranges, as [name, "Sheet!$B$4"] */
  readonly names: readonly (readonly [name: string, reference: string])[];
  /** the version of Sillwork that calculated the values */
  readonly version?: string;
  /** texts of ours that travel with the workbook; see `Host.keep` */
  readonly kept?: Readonly<Record<string, string>>;
}

export function placeKey(row: number, column: number): string {
  return `${row},${column}`;
}

export function placeOf(key: string): { row: number; column: number } {
  const [row = 0, column = 0] = key.split(",").map(Number);
  return { row, column };
}
