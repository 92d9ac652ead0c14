import type { Cell } from "../../core/kit/tape.ts";

/** What a cell is for; each host has one look for each. */
export type Role = "title" | "heading" | "label" | "input" | "result" | "note" | "check";

/** A cell of a template: a value, or a formula where the text starts with "=". */
export interface TemplateCell {
  readonly is: Cell;
  readonly role?: Role;
  /** number format in the spreadsheet's own notation: "0.00", "0.0%" */
  readonly format?: string;
  /** words to choose from */
  readonly choices?: readonly string[];
  /** shown while the cell is selected */
  readonly hint?: string;
}

/** A worksheet with every cell in its place. Made by `sheet` of layout.ts, never typed by hand. */
export interface SheetTemplate {
  readonly name: string;
  /** what it is for, in one sentence */
  readonly says: string;
  /** widths of the first columns, in characters of normal text */
  readonly widths: readonly number[];
  /** rows from the first on; undefined leaves a cell empty, as a table that spills needs */
  readonly rows: readonly (readonly (TemplateCell | undefined)[])[];
}

export interface WorkbookTemplate {
  readonly name: string;
  readonly sheets: readonly SheetTemplate[];
  /** names for cells, as [name, "Sheet!$B$4"] */
  readonly names: readonly (readonly [string, string])[];
}

const cell =
  (role: Role) =>
  (is: Cell, format?: string): TemplateCell => ({ is, role, ...(format === undefined ? {} : { format }) });

export const title = cell("title");
export const heading = cell("heading");
export const label = cell("label");
export const input = cell("input");
export const result = cell("result");
export const note = cell("note");
