import type { FittedTemplate, Present } from "../../../templates/insert.ts";
import type { WorkbookTemplate } from "../../../templates/kit/template.ts";
import type { InsertedTemplate } from "../../../workbook/host.ts";
import { parseRange } from "../../../workbook/named-rows.ts";
import { HostRefusal, runInExcel } from "../sheet/run.ts";
import { writeCells } from "./write-cells.ts";

/** A group of undo holds only what can be undone; this is Excel's code for the rest. */
const NOT_IN_A_GROUP = "UndoNotSupported";

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
async function whole(template: WorkbookTemplate, options: Excel.RunOptions): Promise<void> {
  let begun = false;
  try {
    await runInExcel(async (context) => {
      // A cell may have been opened in the middle: then Excel is asked again, and what is there already is taken out first.
      if (begun) await takeOut(context, template);
      begun = true;
      await write(context, template);
    }, options);
  } catch (error) {
    await leftNothing(template, error);
    throw error;
  }
}

async function write(context: Excel.RequestContext, template: WorkbookTemplate): Promise<void> {
  const { worksheets, names } = context.workbook;
  const left = template.names.map(([name]) => names.getItemOrNullObject(name));
  for (const { name } of template.sheets) worksheets.add(name);
  await context.sync();
  // Left of a sheet that was deleted, and standing for no cells.
  for (const item of left) if (!item.isNullObject) item.delete();
  // Before the formulas, which use them.
  for (const [name, reference] of template.names) addName(context, name, reference);
  await context.sync();
  for (const sheet of template.sheets) await writeCells(worksheets.getItem(sheet.name), sheet);
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

/** What the workbook holds already. */
async function present(context: Excel.RequestContext): Promise<Present> {
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

/** @throws an error that names the sheets to delete where Excel refuses to take them out */
async function leftNothing(template: WorkbookTemplate, failure: unknown): Promise<void> {
  try {
    // Outside the group of undo, which takes no deletion.
    await runInExcel((context) => takeOut(context, template));
  } catch {
    const why = failure instanceof Error ? failure.message : String(failure);
    const sheets = template.sheets.map(({ name }) => name).join(", ");
    throw new Error(
      `${why} The template is not whole: delete those of the sheets ${sheets} that are there, then try again.`,
    );
  }
}
