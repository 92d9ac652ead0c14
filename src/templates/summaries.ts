import type { TemplateSummary } from "../workbook/host.ts";
import { templates } from "./index.ts";

/** The templates as a list shows them. */
export const summaries: readonly TemplateSummary[] = templates.map(({ name, sheets }) => ({
  name,
  sheets: sheets.map((sheet) => ({ name: sheet.name, says: sheet.says })),
}));
