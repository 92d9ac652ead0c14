import type { Cell } from "../../../../src/core/kit/tape.ts";
import type { TemplateCell, WorkbookTemplate } from "../../../../src/templates/kit/template.ts";

export const cell = (is: Cell, format?: string): TemplateCell => ({ is, ...(format === undefined ? {} : { format }) });

/** A workbook from rows of plain cells; undefined leaves one blank. */
export function workbook(
  sheets: Readonly<Record<string, readonly (readonly (Cell | undefined)[])[]>>,
  names: WorkbookTemplate["names"] = [],
): WorkbookTemplate {
  return {
    name: "Test",
    names,
    sheets: Object.entries(sheets).map(([name, rows]) => ({
      name,
      says: "",
      widths: [],
      rows: rows.map((row) => row.map((is) => (is === undefined ? undefined : cell(is)))),
    })),
  };
}
