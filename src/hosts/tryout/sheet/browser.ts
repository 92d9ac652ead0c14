import { type IWorkbookData, LifecycleService, LifecycleStages, LocaleType, LogLevel, Univer } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import {
  CalculationMode,
  FormulaDataModel,
  ILayoutService,
  SheetsSelectionsService,
  UniverSheetsCorePreset,
} from "@univerjs/preset-sheets-core";
import "@univerjs/preset-sheets-core/lib/index.css";
import engineTexts from "@univerjs/preset-sheets-core/locales/en-US";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import type { Cell, Table } from "../../../core/kit/tape.ts";
import type { CellFunction } from "../../../functions/declare/cell-function.ts";
import { registry } from "../../../functions/registry.ts";
import { type Answer, answered } from "../../../functions/run/tables-on-demand.ts";
import { templateNamed } from "../../../templates/insert.ts";
import type { WorkbookTemplate } from "../../../templates/kit/template.ts";
import { summaries } from "../../../templates/summaries.ts";
import type { FileSheet, WorkbookFile } from "../../../workbook/file/model.ts";
import type {
  Host,
  InsertedTemplate,
  NamedCell,
  NamedRows,
  PlacedImage,
  TemplateSummary,
  Typed,
} from "../../../workbook/host.ts";
import { type CellAddress, Ledger } from "../../../workbook/ledger.ts";
import type { Scan } from "../../../workbook/scan.ts";
import { VERSION } from "../../../workbook/version.ts";
import { cellValue } from "../engine/cells.ts";
import { engineFunctions, followNames, Recorder, sheetNames } from "../engine/engine.ts";
import { fileSnapshot, workbookFile } from "../engine/file.ts";
import { calculateInTurn } from "../engine/in-turn.ts";
import { formulaOf, keepInStep } from "../engine/keep.ts";
import { workbookSnapshot } from "../engine/snapshot.ts";
import { freshUnit } from "../engine/unit.ts";
import { explainErrors } from "./alerts.ts";
import { keepNotation } from "./entry.ts";
import { functionInfo } from "./help.ts";
import { closeLateLists } from "./late-list.ts";
import { namedCells, readNamed, readReference, writeBasis } from "./names.ts";
import type { Pictures } from "./pictures.ts";
import { scanSheets } from "./scan.ts";
import { freeSheetName, putTable, putTemplate, rangeOfName } from "./sheets.ts";
import { offerOurNames } from "./suggest.ts";
import { saveTemplate } from "./template-file.ts";
import { followTyping } from "./typing.ts";

/** The engine's commands after which cells stand in other places. */
const MOVES = /^sheet\.mutation\.(?:insert-(?:row|col)|remove-(?:row|col)|move-(?:row|col))/;

/** The real spreadsheet in a page, with our functions, as a host of the pane. */
export class TryOutSheet implements Host {
  readonly name = "the try-out sheet";
  readonly ledger = new Ledger();
  /** Resolves when the sheet can be typed in and scrolled and its first calculation stands in the cells. */
  readonly ready: Promise<void>;
  readonly #univer: Univer;
  readonly #api: FUniver;
  readonly #recorder: Recorder;
  /** rows, columns or cells have been moved, so that places in the file that was opened are not what they were */
  moved = false;
  /** worksheets that the pane wrote, by the name that it asked for */
  readonly #reports = new Map<string, string>();
  /** texts that are kept with the workbook */
  #kept = new Map<string, string>();
  /** there as soon as a picture is */
  #pictures: Promise<Pictures> | undefined;
  readonly #keeping = new Set<() => void>();
  readonly #endKeeping: () => void;
  readonly #endLists: () => void;
  readonly #template: WorkbookTemplate;

  /** @param answer makes the answers of the functions; what comes later is shown when it is there */
  constructor(
    element: HTMLElement,
    template: WorkbookTemplate,
    answer: Answer = answered,
    functions: readonly CellFunction[] = registry,
  ) {
    const recorder = new Recorder(this.ledger);
    this.#recorder = recorder;
    this.#endLists = closeLateLists(() => this.#univer);
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
        function: engineFunctions(functions, recorder, answer),
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
    this.#template = template;
    this.#api.createWorkbook(workbookSnapshot(template, freshUnit()));
    const names = sheetNames(this.#univer);
    calculateInTurn(this.#univer);
    followNames(this.#univer);
    recorder.follow(this.#univer, names);
    explainErrors(this.#univer, this.ledger, names);
    keepNotation(this.#univer);
    offerOurNames(this.#univer, functions);
    this.#endKeeping = keepInStep(this.#api, this.ledger);
    this.#api.onCommandExecuted(({ id }) => {
      if (MOVES.test(id)) this.moved = true;
    });
    darkPreference().addEventListener("change", this.#followTheme);
    this.ready = this.#opened();
  }

  /** Until this stage the engine has no part that scrolls or listens to keys, and throws when it is asked for one. */
  async #opened(): Promise<void> {
    const lifecycle = this.#univer.__getInjector().get(LifecycleService);
    await Promise.all([lifecycle.onStage(LifecycleStages.Rendered), this.calculated()]);
    await drawn();
  }

  async selection(): Promise<CellAddress | undefined> {
    return this.#active();
  }

  onSelection(listener: (address: CellAddress | undefined) => void): () => void {
    const service = this.#univer.__getInjector().get(SheetsSelectionsService);
    const tell = (): void => listener(this.#active());
    const cells = service.selectionChanged$.subscribe(tell);
    const sheets = this.#api.addEvent(this.#api.Event.ActiveSheetChanged, tell);
    return () => {
      cells.unsubscribe();
      sheets.dispose();
    };
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
    await this.ready;
    const sheet = this.#sheet(address.sheet);
    if (sheet === null) return;
    sheet.activate();
    sheet.getRange(address.row, address.column).activateAsCurrentCell();
    // A worksheet that was never shown has no visible part yet, whatever the engine's types say.
    const seen: ReturnType<FWorksheet["getVisibleRange"]> | undefined = sheet.getVisibleRange();
    const inView =
      seen !== null &&
      seen !== undefined &&
      address.row >= seen.startRow &&
      address.row < seen.endRow &&
      address.column >= seen.startColumn &&
      address.column < seen.endColumn;
    if (!inView) sheet.scrollToCell(Math.max(0, address.row - 4), Math.max(0, address.column - 1));
    await drawn();
  }

  /** Lets the keys go to the selected cell. */
  focus(): void {
    this.#univer.__getInjector().get(ILayoutService).focus();
  }

  async insertFormula(formula: string): Promise<CellAddress> {
    await this.ready;
    const address = this.#active() ?? { sheet: this.#workbook().getActiveSheet().getSheetName(), row: 0, column: 0 };
    this.#sheet(address.sheet)
      ?.getRange(address.row, address.column)
      .setValue({ f: formula, v: null, p: null, t: null });
    await this.calculated();
    return address;
  }

  async scan(): Promise<Scan> {
    await this.ready;
    return scanSheets(this.#workbook());
  }

  /** The engine calculates the whole workbook as soon as a part; no cell refuses. */
  async calculate(): Promise<readonly CellAddress[]> {
    await this.ready;
    this.#api.getFormula().executeCalculation();
    await this.calculated();
    return [];
  }

  async writeSheet(name: string, rows: Table): Promise<string> {
    await this.ready;
    const own = this.#reports.get(name);
    const known = own === undefined ? null : this.#workbook().getSheetBySheetId(own);
    const sheet = putTable(this.#workbook(), known?.getSheetName() ?? freeSheetName(this.#workbook(), name), rows);
    this.#reports.set(name, sheet.getSheetId());
    sheet.activate();
    return sheet.getSheetName();
  }

  async cellOfName(name: string): Promise<CellAddress | undefined> {
    return rangeOfName(this.#workbook(), name)?.first;
  }

  async readName(name: string): Promise<NamedRows | undefined> {
    await this.ready;
    return readNamed(this.#workbook(), name, this.#univer.__getInjector().get(FormulaDataModel));
  }

  async namedCells(): Promise<readonly NamedCell[]> {
    await this.ready;
    return namedCells(this.#workbook(), this.#univer.__getInjector().get(FormulaDataModel));
  }

  async readRange(reference: string, sheet: string): Promise<Table | undefined> {
    await this.ready;
    return readReference(this.#workbook(), reference, sheet, this.#univer.__getInjector().get(FormulaDataModel));
  }

  onTyping(listener: (typed: Typed | undefined) => void): () => void {
    return followTyping(this.#univer, () => this.#active(), listener);
  }

  async writeBasis(rows: Table): Promise<void> {
    await this.ready;
    writeBasis(this.#workbook(), rows, this.#univer.__getInjector().get(FormulaDataModel));
    await this.calculated();
  }

  /** Calls `listener` after every change that somebody made, results of calculations not counted. */
  onEdit(listener: () => void): () => void {
    const watch = this.#api.onCommandExecuted(({ id }, options) => {
      if (id.startsWith("sheet.mutation.") && !options?.fromFormula && !options?.onlyLocal) listener();
    });
    this.#keeping.add(listener);
    return () => {
      watch.dispose();
      this.#keeping.delete(listener);
    };
  }

  /** The workbook with its values, for a file. */
  async file(): Promise<WorkbookFile> {
    await this.ready;
    await this.calculated();
    const file = workbookFile(this.#workbook(), this.#univer.__getInjector().get(FormulaDataModel), VERSION);
    return { ...file, sheets: await this.#withPictures(file.sheets), kept: Object.fromEntries(this.#kept) };
  }

  async #withPictures(sheets: readonly FileSheet[]): Promise<readonly FileSheet[]> {
    const pictures = await this.#pictures;
    if (pictures === undefined) return sheets;
    return sheets.map((sheet) => {
      const own = this.#sheet(sheet.name);
      const held = own === null ? [] : pictures.of(own);
      return held.length === 0 ? sheet : { ...sheet, pictures: held };
    });
  }

  /** The part of the engine that draws pictures; no worksheet needs it until it has one. */
  #drawPictures(): Promise<Pictures> {
    this.#pictures ??= import("./pictures.ts").then((part) => part.drawPictures(this.#univer));
    return this.#pictures;
  }

  async placeImage(near: CellAddress, image: PlacedImage): Promise<void> {
    await this.ready;
    const sheet = this.#sheet(near.sheet);
    if (sheet === null) return;
    const pictures = await this.#drawPictures();
    await pictures.putBeside(sheet, near.row, image);
    await drawn();
  }

  /** Puts a workbook from a file in the place of the one that is open. */
  async openFile(file: WorkbookFile): Promise<void> {
    await this.#replace((unit) => fileSnapshot(file, unit), file.kept);
    for (const { name, pictures = [] } of file.sheets) {
      const sheet = this.#sheet(name);
      for (const picture of pictures) if (sheet !== null) await (await this.#drawPictures()).put(sheet, picture);
    }
  }

  /** Puts the workbook in its place that the sheet began with. */
  openDemo(): Promise<void> {
    return this.#replace((unit) => workbookSnapshot(this.#template, unit));
  }

  /** Puts a workbook with nothing in it in its place. */
  openBlank(): Promise<void> {
    const sheet = { name: "Sheet1", says: "", widths: [], rows: [] };
    return this.#replace((unit) => workbookSnapshot({ name: "Workbook", sheets: [sheet], names: [] }, unit));
  }

  async #replace(data: (unit: string) => Partial<IWorkbookData>, kept: WorkbookFile["kept"] = {}): Promise<void> {
    await this.ready;
    this.#api.disposeUnit(this.#workbook().getId());
    this.ledger.retain(() => false);
    this.#reports.clear();
    this.moved = false;
    this.#kept = new Map(Object.entries(kept));
    this.#api.createWorkbook(data(freshUnit()));
    this.#api.getFormula().executeCalculation();
    await this.calculated();
    await drawn();
  }

  async templates(): Promise<readonly TemplateSummary[]> {
    return summaries;
  }

  async insertTemplate(name: string): Promise<InsertedTemplate> {
    await this.ready;
    const done = putTemplate(this.#workbook(), templateNamed(name));
    const [first] = [...done.sheets, ...done.used];
    if (first !== undefined) this.#sheet(first)?.activate();
    await this.calculated();
    return done;
  }

  templateFile(name: string): Promise<string> {
    return saveTemplate(name);
  }

  async kept(key: string): Promise<string | undefined> {
    return this.#kept.get(key);
  }

  async keep(key: string, text: string): Promise<void> {
    if (text === "") this.#kept.delete(key);
    else this.#kept.set(key, text);
    for (const listener of this.#keeping) listener();
  }

  /** Waits until what is being calculated has arrived in the cells. */
  calculated(): Promise<void> {
    return this.#api.getFormula().onCalculationResultApplied();
  }

  dispose(): void {
    this.#recorder.stop();
    this.#endKeeping();
    this.#endLists();
    darkPreference().removeEventListener("change", this.#followTheme);
    this.#univer.dispose();
  }

  readonly #followTheme = (): void => this.#api.toggleDarkMode(isDark());

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

/** A tab that is not in sight draws nothing; it need not be waited for longer than this, in milliseconds. */
const UNSEEN_MS = 300;

/** The next picture but one: what was asked of the engine before is drawn by then. */
function drawn(): Promise<void> {
  return new Promise((done) => {
    requestAnimationFrame(() => requestAnimationFrame(() => done()));
    setTimeout(done, UNSEEN_MS);
  });
}
