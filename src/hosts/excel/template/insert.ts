import type { FittedTemplate, Present } from "../../../templates/insert.ts";
import type { WorkbookTemplate } from "../../../templates/kit/template.ts";
import type { InsertedTemplate } from "../../../workbook/host.ts";
import { parseRange } from "../../../workbook/named-rows.ts";
import { allSheets } from "../sheet/blocks.ts";
import { HostRefusal, runInExcel, wholeOrNothing } from "../sheet/run.ts";
import { writeCells } from "./write-cells.ts";

/** A group of undo holds only what can be undone; this is Excel's code for the rest. */
const NOT_IN_A_GROUP = "UndoNotSupported";

/** Marks a worksheet of a template until all of it is written. */
const UNFINISHED = "sillwork-unfinished";

const ONE_STEP = "Undo takes it out again in one step.";
const NO_STEP = "This Excel cannot undo it in one step: delete the sheets to take it out again.";

/** See `Host.insertTemplate`. What fails half-way is taken out again. */
export async function insertTemplate(name: string): Promise<InsertedTemplate> {
  const { fitted, inserted, templateNamed } = await import(
    /* webpackChunkName: "templates" */ "../../../templates/insert.ts"
  );
  const fit = fitted(templateNamed(name), await runInExcel(present));
  if (fit.template.sheets.length === 0) {
    await runInExcel((context) => show(context, fit.used[0]));
    return inserted(fit, "");
  }
  return inserted(fit, (await inOneStep(fit)) ? ONE_STEP : NO_STEP);
}

/** @returns whether one undo takes it all out again */
async function inOneStep({ template }: FittedTemplate): Promise<boolean> {
  if (Office.context.requirements.isSetSupported("ExcelApi", "1.20")) {
    try {
      await whole(template, { mergeUndoGroup: true });
      return true;
    } catch (error) {
      if (!(error instanceof HostRefusal) || error.code !== NOT_IN_A_GROUP) throw error;
    }
  }
  await whole(template, {});
  return false;
}

/** All of it, or nothing. */
function whole(template: WorkbookTemplate, options: Excel.RunOptions): Promise<void> {
  const sheets = template.sheets.map(({ name }) => name).join(", ");
  return wholeOrNothing(
    (context) => write(context, template),
    (context) => takeOut(context, template),
    `The template is not whole: put it in again, which first takes out what there is of ${sheets}.`,
    options,
  );
}

async function write(context: Excel.RequestContext, template: WorkbookTemplate): Promise<void> {
  const { worksheets, names } = context.workbook;
  const left = template.names.map(([name]) => names.getItemOrNullObject(name));
  for (const { name } of template.sheets) worksheets.add(name).customProperties.add(UNFINISHED, "");
  await context.sync();
  // Left of a sheet that was deleted, and standing for no cells.
  for (const item of left) if (!item.isNullObject) item.delete();
  // Before the formulas, which use them.
  for (const [name, reference] of template.names) addName(context, name, reference);
  await context.sync();
  for (const sheet of template.sheets) await writeCells(worksheets.getItem(sheet.name), sheet);
  for (const { name } of template.sheets) worksheets.getItem(name).customProperties.getItem(UNFINISHED).delete();
  await show(context, template.sheets[0]?.name);
}

/** By the cells themselves: a reference as text is read in the user's language. */
function addName(context: Excel.RequestContext, name: string, reference: string): void {
  const range = parseRange(reference);
  if (range === undefined) throw new Error(`The template's name ${name} stands for no cells.`);
  const { first, rows, columns } = range;
  const sheet = context.workbook.worksheets.getItem(first.sheet);
  context.workbook.names.add(name, sheet.getRangeByIndexes(first.row, first.column, rows, columns));
}

/** What the workbook holds already, without what was left of a template that could not be finished. */
async function present(context: Excel.RequestContext): Promise<Present> {
  await takeOutUnfinished(context);
  const { worksheets, names } = context.workbook;
  worksheets.load("items/name");
  names.load("items/name");
  await context.sync();
  const found = names.items.map((item) => {
    const range = item.getRangeOrNullObject();
    range.load("address");
    return { name: item.name, range };
  });
  await context.sync();
  return {
    sheets: worksheets.items.map(({ name }) => name),
    names: new Map(found.map(({ name, range }) => [name, range.isNullObject ? undefined : sheetOf(range.address)])),
  };
}

async function takeOutUnfinished(context: Excel.RequestContext): Promise<void> {
  const marked = (await allSheets(context)).map((sheet) => ({
    sheet,
    mark: sheet.customProperties.getItemOrNullObject(UNFINISHED),
  }));
  await context.sync();
  const unfinished = marked.filter(({ mark }) => !mark.isNullObject);
  if (unfinished.length === 0) return;
  for (const { sheet } of unfinished) sheet.delete();
  await context.sync();
}

/** The worksheet of "'Wall 1'!A1:B2". */
function sheetOf(address: string): string {
  const sheet = address.slice(0, address.lastIndexOf("!"));
  return sheet.startsWith("'") ? sheet.slice(1, -1).replaceAll("''", "'") : sheet;
}

async function show(context: Excel.RequestContext, name: string | undefined): Promise<void> {
  if (name !== undefined) context.workbook.worksheets.getItem(name).activate();
  await context.sync();
}

async function takeOut(context: Excel.RequestContext, template: WorkbookTemplate): Promise<void> {
  const { worksheets, names } = context.workbook;
  const items = [
    ...template.names.map(([name]) => names.getItemOrNullObject(name)),
    ...template.sheets.map(({ name }) => worksheets.getItemOrNullObject(name)),
  ];
  await context.sync();
  for (const item of items) if (!item.isNullObject) item.delete();
  await context.sync();
}
