import type { Cell, Table } from "../../core/kit/tape.ts";
import { NAMESPACE } from "../../functions/declare/cell-function.ts";
import { type Host, MOST_READ, parseAddress } from "../../workbook/host.ts";
import type { CellAddress, Ledger } from "../../workbook/ledger.ts";
import { keep, kept } from "./kept.ts";
import { firstCellOf, namedCells, readName, writeBasis } from "./names.ts";
import { placeImage } from "./place-image.ts";
import { calculateCells, scanWorkbook } from "./scan.ts";
import { runInExcel } from "./sheet/run.ts";
import { writeSheet } from "./sheet/write-sheet.ts";
import { templateFile } from "./template/file.ts";
import { insertTemplate } from "./template/insert.ts";

/** Several events come with one movement of the selection; the pane is told once, after this many milliseconds. */
const SELECTION_PAUSE_MS = 60;

/** The workbook that the add-in was opened in. */
export function excelHost(ledger: Ledger): Host {
  return {
    name: "Excel",
    ledger,
    selection,
    onSelection,
    formulaAt: async (address) => {
      const formula = await cellMember(address, "formulas");
      return typeof formula === "string" && formula.startsWith("=") ? formula : "";
    },
    valueAt: async (address) => {
      const value = await cellMember(address, "values");
      return value === "" ? undefined : value;
    },
    goTo: (address) =>
      runInExcel(async (context) => {
        const sheet = await existingSheet(context, address.sheet);
        sheet.activate();
        sheet.getCell(address.row, address.column).select();
        await context.sync();
      }),
    insertFormula: (formula) =>
      runInExcel(async (context) => {
        const cell = context.workbook.getActiveCell();
        cell.formulas = [[formula]];
        cell.load("address");
        await context.sync();
        return addressOf(cell);
      }),
    scan: scanWorkbook,
    calculate: calculateCells,
    writeSheet,
    cellOfName: (name) => runInExcel((context) => firstCellOf(context, name)),
    readName: (name) => runInExcel((context) => readName(context, name)),
    namedCells: () => runInExcel(namedCells),
    readRange: (reference, sheet) => runInExcel((context) => readReference(context, reference, sheet)),
    writeBasis,
    placeImage: (near, image) =>
      runInExcel(async (context) => placeImage(await existingSheet(context, near.sheet), near, image)),
    templates: async () => (await import(/* webpackChunkName: "templates" */ "../../templates/summaries.ts")).summaries,
    insertTemplate,
    // A trial copy has no such files: the formulas in them bear the name of the installed add-in.
    ...(NAMESPACE === "SILL" ? { templateFile } : {}),
    kept,
    keep,
  };
}

async function selection(): Promise<CellAddress | undefined> {
  return runInExcel(async (context) => {
    const cell = context.workbook.getActiveCell();
    cell.load("address");
    await context.sync();
    return parseAddress(cell.address);
  });
}

function onSelection(listener: (address: CellAddress | undefined) => void): () => void {
  let stopped = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let held: { remove(): void; context: OfficeExtension.ClientRequestContext }[] = [];

  const tell = async (): Promise<void> => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      const pass = (address: CellAddress | undefined): void => {
        if (!stopped) listener(address);
      };
      selection().then(pass, () => pass(undefined));
    }, SELECTION_PAUSE_MS);
  };
  const letGo = async (): Promise<void> => {
    const [first] = held;
    for (const event of held) event.remove();
    held = [];
    await first?.context.sync();
  };

  runInExcel(async (context) => {
    held = [context.workbook.onSelectionChanged.add(tell), context.workbook.worksheets.onActivated.add(tell)];
    await context.sync();
    if (stopped) await letGo();
  }).catch(() => listener(undefined));

  return () => {
    stopped = true;
    clearTimeout(timer);
    letGo().catch(() => {});
  };
}

async function cellMember(address: CellAddress, member: "formulas" | "values"): Promise<Cell> {
  return runInExcel(async (context) => {
    const sheet = await existingSheet(context, address.sheet);
    const cell = sheet.getCell(address.row, address.column);
    cell.load(member);
    await context.sync();
    return cell[member][0]?.[0] ?? "";
  });
}

/** See `Host.readRange`. */
async function readReference(
  context: Excel.RequestContext,
  reference: string,
  from: string,
): Promise<Table | undefined> {
  const [, quoted, plain, cells = reference] = /^(?:'((?:[^']|'')+)'!|([^'!]+)!)?(.+)$/.exec(reference) ?? [];
  const sheet = context.workbook.worksheets.getItemOrNullObject(quoted?.replaceAll("''", "'") ?? plain ?? from);
  await context.sync();
  if (sheet.isNullObject) return undefined;
  const range = sheet.getRange(cells);
  range.load("rowCount,columnCount");
  await context.sync();
  if (range.rowCount * range.columnCount > MOST_READ) return undefined;
  range.load("values");
  await context.sync();
  return range.values;
}

async function existingSheet(context: Excel.RequestContext, name: string): Promise<Excel.Worksheet> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(name);
  await context.sync();
  if (sheet.isNullObject) throw new Error(`The worksheet ${name} is no longer in the workbook.`);
  return sheet;
}

function addressOf(cell: Excel.Range): CellAddress {
  const address = parseAddress(cell.address);
  if (address === undefined) throw new Error(`Excel gave an address that is no cell: ${cell.address}`);
  return address;
}
