import { LocaleType, LogLevel, Univer, UniverInstanceType } from "@univerjs/core";
import {
  type CalculateFormulaService,
  type ErrorValueObject,
  ICalculateFormulaService,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  UniverFormulaEnginePlugin,
} from "@univerjs/engine-formula";
import type { CellFunction } from "../../../functions/declare/cell-function.ts";
import "../../../functions/run/tables-at-once.ts";
import type { RawArgument } from "../../../functions/declare/raw.ts";
import type { LedgerCall } from "../../../workbook/ledger.ts";
import { type CallListener, engineFunctions } from "./engine.ts";
import { freshUnit } from "./unit.ts";
import { rawArgument } from "./values.ts";

/** What a formula gives: a value, rows of values, or an error with the sentence that came with it ("" where the engine gave none). */
export interface Evaluation {
  readonly value: RawArgument;
  readonly says: string;
  /** the calls of our functions, in the order in which they were made */
  readonly calls: readonly LedgerCall[];
}

const SHEET = "sheet";
const UNREADABLE =
  "The formula cannot be read: a bracket, a quotation mark or an argument is missing or one too many. Check what stands before and after each comma.";

/**
 * Calculates formulas one after the other by the engine of the try-out sheet, without a sheet around them: nothing that spills can be in another's way.
 */
export class Evaluator implements CallListener {
  readonly #univer = new Univer({ locale: LocaleType.EN_US, logLevel: LogLevel.SILENT });
  readonly #unit = freshUnit();
  #calls: LedgerCall[] = [];

  constructor(functions: readonly CellFunction[]) {
    this.#univer.registerPlugin(UniverFormulaEnginePlugin, { function: engineFunctions(functions, this) });
    this.#univer.createUnit(UniverInstanceType.UNIVER_SHEET, {
      id: this.#unit,
      sheetOrder: [SHEET],
      sheets: { [SHEET]: { id: SHEET, name: "Sheet1", rowCount: 1000, columnCount: 26, cellData: {} } },
    });
    const injector = this.#univer.__getInjector();
    injector.get(IFormulaCurrentConfigService).loadDataLite();
  }

  called(_unitId: string, _sheetId: string, _row: number, _column: number, call: LedgerCall): void {
    this.#calls.push(call);
  }

  /** @param formula with or without its "=" */
  async evaluate(formula: string): Promise<Evaluation> {
    const injector = this.#univer.__getInjector();
    this.#calls = [];
    const runtime = injector.get(IFormulaRuntimeService);
    runtime.reset();
    runtime.setCurrent(0, 0, 1000, 26, SHEET, this.#unit);
    const service = injector.get(ICalculateFormulaService) as CalculateFormulaService;
    const found = await service.calculate(formula.startsWith("=") ? formula : `=${formula}`).catch(() => undefined);
    const calls = this.#calls;
    if (found === undefined) return { value: { error: "#ERROR!" }, says: UNREADABLE, calls };
    const says = found.isError() ? (found as ErrorValueObject).getErrorContent() : "";
    return { value: rawArgument(found), says, calls };
  }

  dispose(): void {
    this.#univer.dispose();
  }
}
