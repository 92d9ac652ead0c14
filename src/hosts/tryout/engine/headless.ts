import {
  type IWorkbookData,
  isNodeEnv,
  LifecycleService,
  LifecycleStages,
  LocaleType,
  LogLevel,
  Univer,
} from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { FormulaDataModel, UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import "@univerjs/engine-formula/facade";
import "@univerjs/sheets/facade";
import "@univerjs/sheets-formula/facade";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import { CalculationMode, UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
import type { Cell, Table } from "../../../core/kit/tape.ts";
import type { CellFunction } from "../../../functions/declare/cell-function.ts";
import type { Answer } from "../../../functions/run/tables-on-demand.ts";
import "../../../functions/run/tables-at-once.ts";
import { registry } from "../../../functions/registry.ts";
import type { WorkbookTemplate } from "../../../templates/kit/template.ts";
import type { WorkbookFile } from "../../../workbook/file/model.ts";
import { parseAddress } from "../../../workbook/host.ts";
import { Ledger } from "../../../workbook/ledger.ts";
import { cellValue } from "./cells.ts";
import { engineFunctions, followNames, Recorder, sheetNames } from "./engine.ts";
import { fileSnapshot, workbookFile } from "./file.ts";
import { calculateInTurn } from "./in-turn.ts";
import { keepInStep } from "./keep.ts";
import { valueSnapshot, workbookSnapshot } from "./snapshot.ts";
import { freshUnit } from "./unit.ts";

/** A workbook without a screen, for tests of templates and of the engine. Addresses are texts such as `Wall!B4`. */
export class HeadlessWorkbook {
  readonly ledger = new Ledger();
  readonly #univer: Univer;
  /** the engine's own interface, for tests that change the workbook in ways a user can */
  readonly api: FUniver;
  readonly #endKeeping: () => void;
  readonly #unit = freshUnit();
  readonly #recorder: Recorder;

  private constructor(
    data: (unit: string) => Partial<IWorkbookData>,
    functions: readonly CellFunction[],
    answer: Answer | undefined,
  ) {
    const recorder = new Recorder(this.ledger);
    this.#recorder = recorder;
    this.#univer = new Univer({
      locale: LocaleType.EN_US,
      locales: { [LocaleType.EN_US]: {} },
      logLevel: LogLevel.SILENT,
    });
    this.#univer.registerPlugin(UniverSheetsPlugin);
    this.#univer.registerPlugin(UniverFormulaEnginePlugin, { function: engineFunctions(functions, recorder, answer) });
    this.#univer.registerPlugin(UniverSheetsFormulaPlugin, { initialFormulaComputing: CalculationMode.NO_CALCULATION });
    this.api = FUniver.newAPI(this.#univer);
    this.api.createWorkbook(data(this.#unit));
    // In a browser's worker the engine waits to be told that it is drawn before it calculates.
    if (!isNodeEnv()) this.#univer.__getInjector().get(LifecycleService).stage = LifecycleStages.Rendered;
    calculateInTurn(this.#univer);
    followNames(this.#univer);
    recorder.follow(this.#univer, sheetNames(this.#univer));
    this.#endKeeping = keepInStep(this.api, this.ledger);
  }

  /**
   * Makes the workbook and calculates it.
   * @param answer makes the answers; in line unless told
   */
  static async open(
    template: WorkbookTemplate,
    functions: readonly CellFunction[] = registry,
    answer?: Answer,
  ): Promise<HeadlessWorkbook> {
    return HeadlessWorkbook.#opened(
      new HeadlessWorkbook((unit) => workbookSnapshot(template, unit), functions, answer),
    );
  }

  /** Opens a workbook that was read from a file and calculates it. */
  static async openFile(file: WorkbookFile): Promise<HeadlessWorkbook> {
    return HeadlessWorkbook.#opened(new HeadlessWorkbook((unit) => fileSnapshot(file, unit), registry, undefined));
  }

  static async #opened(workbook: HeadlessWorkbook): Promise<HeadlessWorkbook> {
    workbook.api.getFormula().executeCalculation();
    await workbook.#calculated();
    return workbook;
  }

  /** The workbook with its values, for a file. */
  file(version: string): WorkbookFile {
    return workbookFile(this.#workbook(), this.#model(), version);
  }

  /** Writes a value, or a formula where the text starts with "=", and calculates what depends on it. */
  async set(address: string, content: Cell): Promise<void> {
    const { sheet, row, column } = this.#cell(address);
    const range = sheet.getRange(row, column);
    const formula = typeof content === "string" && content.startsWith("=");
    range.setValue({ v: null, f: null, p: null, ...(formula ? { f: content } : valueSnapshot(content)) });
    await this.#calculated();
  }

  valueAt(address: string): Cell | undefined {
    const { sheet, row, column } = this.#cell(address);
    return cellValue(sheet, row, column, this.#model());
  }

  /** The table that a formula has spilled from this cell, or the cell's value as a table of one. */
  tableAt(address: string): Table {
    const { sheet, row, column } = this.#cell(address);
    const spill = this.#model().getArrayFormulaRange()[this.#unit]?.[sheet.getSheetId()]?.[row]?.[column];
    const height = spill ? spill.endRow - spill.startRow + 1 : 1;
    const width = spill ? spill.endColumn - spill.startColumn + 1 : 1;
    return Array.from({ length: height }, (_, r) =>
      Array.from({ length: width }, (_, c) => cellValue(sheet, row + r, column + c, this.#model()) ?? ""),
    );
  }

  /** Waits for the answers that cells wait for, and until they stand in the cells. */
  async arrived(): Promise<void> {
    await this.#recorder.arrived();
    await this.#calculated();
  }

  dispose(): void {
    this.#recorder.stop();
    this.#endKeeping();
    this.#univer.dispose();
  }

  #calculated(): Promise<void> {
    return this.api.getFormula().onCalculationResultApplied();
  }

  #workbook(): FWorkbook {
    return this.api.getActiveWorkbook() as FWorkbook;
  }

  #model(): FormulaDataModel {
    return this.#univer.__getInjector().get(FormulaDataModel);
  }

  #cell(text: string): { sheet: FWorksheet; row: number; column: number } {
    const address = parseAddress(text);
    const sheet = address === undefined ? null : this.#workbook().getSheetByName(address.sheet);
    if (address === undefined || sheet === null) throw new Error(`No cell ${text}`);
    return { ...address, sheet };
  }
}
