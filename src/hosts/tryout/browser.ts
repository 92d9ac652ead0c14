import { LocaleType, LogLevel, Univer } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import {
  CalculationMode,
  FormulaDataModel,
  SheetsSelectionsService,
  UniverSheetsCorePreset,
} from "@univerjs/preset-sheets-core";
import "@univerjs/preset-sheets-core/lib/index.css";
import engineTexts from "@univerjs/preset-sheets-core/locales/en-US";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import type { Cell, Table } from "../../core/tape.ts";
import type { CellFunction } from "../../functions/declare.ts";
import { registry } from "../../functions/registry.ts";
import type { SheetTemplate, WorkbookTemplate } from "../../templates/template.ts";
import type { Host } from "../host.ts";
import { type CellAddress, Ledger } from "../ledger.ts";
import { explainErrors } from "./alerts.ts";
import { cellValue } from "./cells.ts";
import { engineFunctions, Recorder, sheetNames } from "./engine.ts";
import { functionInfo } from "./help.ts";
import { formulaOf, keepInStep } from "./keep.ts";
import { sheetSnapshot, valueSnapshot, workbookSnapshot } from "./snapshot.ts";

const UNIT = "workbook";

/** The real spreadsheet in a page, with our functions, as a host of the pane. */
export class TryOutSheet implements Host {
  readonly name = "the try-out sheet";
  readonly ledger = new Ledger();
  readonly #univer: Univer;
  readonly #api: FUniver;
  readonly #endKeeping: () => void;

  constructor(element: HTMLElement, template: WorkbookTemplate, functions: readonly CellFunction[] = registry) {
    const recorder = new Recorder(this.ledger);
    this.#univer = new Univer({
      locale: LocaleType.EN_US,
      locales: { [LocaleType.EN_US]: engineTexts },
      logLevel: LogLevel.SILENT,
      darkMode: isDark(),
    });
    const { plugins } = UniverSheetsCorePreset({
      container: element,
      header: true,
      toolbar: true,
      ribbonType: "simple",
      menu: { "sheet.contextMenu.permission": { hidden: true } },
      footer: { sheetBar: true, statisticBar: true, menus: false, zoomSlider: true },
      formula: {
        function: engineFunctions(functions, recorder),
        description: functions.map(functionInfo),
        initialFormulaComputing: CalculationMode.FORCED,
      },
      sheets: { disableForceStringAlert: true, disableForceStringMark: true },
      disableTextFormatAlert: true,
      disableTextFormatMark: true,
    });
    for (const plugin of plugins) {
      if (Array.isArray(plugin)) this.#univer.registerPlugin(plugin[0], plugin[1]);
      else this.#univer.registerPlugin(plugin);
    }
    this.#api = FUniver.newAPI(this.#univer);
    this.#api.createWorkbook(workbookSnapshot(template, UNIT));
    const names = sheetNames(this.#univer);
    recorder.follow(this.#univer, names);
    explainErrors(this.#univer, this.ledger, names);
    this.#endKeeping = keepInStep(this.#api, this.ledger);
    darkPreference().addEventListener("change", this.#followTheme);
  }

  async selection(): Promise<CellAddress | undefined> {
    return this.#active();
  }

  onSelection(listener: (address: CellAddress | undefined) => void): () => void {
    const service = this.#univer.__getInjector().get(SheetsSelectionsService);
    const watch = service.selectionChanged$.subscribe(() => listener(this.#active()));
    return () => watch.unsubscribe();
  }

  async formulaAt(address: CellAddress): Promise<string> {
    return formulaOf(this.#api, address);
  }

  async valueAt(address: CellAddress): Promise<Cell | undefined> {
    const sheet = this.#sheet(address.sheet);
    if (sheet === null) return undefined;
    return cellValue(sheet, address.row, address.column, this.#univer.__getInjector().get(FormulaDataModel));
  }

  async goTo(address: CellAddress): Promise<void> {
    const sheet = this.#sheet(address.sheet);
    if (sheet === null) return;
    sheet.activate();
    sheet.getRange(address.row, address.column).activateAsCurrentCell();
    const seen = sheet.getVisibleRange();
    const inView =
      seen !== null &&
      address.row >= seen.startRow &&
      address.row < seen.endRow &&
      address.column >= seen.startColumn &&
      address.column < seen.endColumn;
    if (!inView) sheet.scrollToCell(Math.max(0, address.row - 4), Math.max(0, address.column - 1));
  }

  async insertFormula(formula: string): Promise<CellAddress> {
    const address = this.#active() ?? { sheet: this.#workbook().getActiveSheet().getSheetName(), row: 0, column: 0 };
    this.#sheet(address.sheet)
      ?.getRange(address.row, address.column)
      .setValue({ f: formula, v: null, p: null, t: null });
    await this.calculated();
    return address;
  }

  async writeSheet(name: string, rows: Table): Promise<string> {
    const widths = columnWidths(rows);
    return this.#putSheet({ name, says: "", widths, rows: [] }, (sheet) => {
      const width = Math.max(0, ...rows.map((row) => row.length));
      if (width === 0) return;
      const cells = rows.map((row) => Array.from({ length: width }, (_, c) => valueSnapshot(row[c] ?? "")));
      sheet.getRange(0, 0, rows.length, width).setValues(cells);
    });
  }

  /** Puts a template's worksheets into the workbook, each in the place of one of the same name, and its named cells. */
  async insertTemplate(template: WorkbookTemplate): Promise<void> {
    for (const sheet of template.sheets) this.#putSheet(sheet);
    const workbook = this.#workbook();
    for (const [name, reference] of template.names) {
      workbook.deleteDefinedName(name);
      workbook.insertDefinedName(name, reference);
    }
    this.#api.getFormula().executeCalculation();
    await this.calculated();
  }

  /** Waits until what is being calculated has arrived in the cells. */
  calculated(): Promise<void> {
    return this.#api.getFormula().onCalculationResultApplied();
  }

  dispose(): void {
    this.#endKeeping();
    darkPreference().removeEventListener("change", this.#followTheme);
    this.#univer.dispose();
  }

  readonly #followTheme = (): void => this.#api.toggleDarkMode(isDark());

  #putSheet(template: SheetTemplate, fill?: (sheet: FWorksheet) => void): string {
    const workbook = this.#workbook();
    const former = workbook.getSheetByName(template.name);
    const { id: _id, name: _name, rowCount, columnCount, ...data } = sheetSnapshot(template, "new");
    const options = former === null ? {} : { index: former.getIndex() };
    const draftName = former === null ? template.name : `${template.name} (new)`;
    const sheet = workbook.create(draftName, rowCount ?? 200, columnCount ?? 26, { ...options, sheet: data });
    if (former !== null) {
      workbook.deleteSheet(former);
      sheet.setName(template.name);
    }
    fill?.(sheet);
    sheet.activate();
    return template.name;
  }

  #active(): CellAddress | undefined {
    const range = this.#api.getActiveWorkbook()?.getActiveRange();
    if (!range) return undefined;
    return { sheet: range.getSheetName(), row: range.getRow(), column: range.getColumn() };
  }

  #workbook(): FWorkbook {
    return this.#api.getActiveWorkbook() as FWorkbook;
  }

  #sheet(name: string): FWorksheet | null {
    return this.#workbook().getSheetByName(name);
  }
}

function darkPreference(): MediaQueryList {
  return matchMedia("(prefers-color-scheme: dark)");
}

function isDark(): boolean {
  return darkPreference().matches;
}

/** Widths in characters, from the longest text of each column, within reason. */
function columnWidths(rows: Table): number[] {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, c) => {
      widths[c] = Math.max(widths[c] ?? 10, Math.min(60, String(cell).length));
    });
  }
  return widths;
}
