import {
  ICommandService,
  IUniverInstanceService,
  type Univer,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import {
  BaseFunction,
  type BaseValueObject,
  FormulaExecuteStageType,
  ICalculateFormulaService,
  IFunctionService,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
  ValueObjectFactory,
} from "@univerjs/engine-formula";
import { type CellFunction, NAMESPACE } from "../../functions/declare.ts";
import { invoke } from "../../functions/invoke.ts";
import type { CellAddress, Ledger, LedgerCall } from "../ledger.ts";
import { engineValue, rawArgument } from "./values.ts";

/** A function as the engine's plugins take it: a class, and its name in cells. */
export type EngineFunction = [new (name: string) => BaseFunction, string];

/** Takes the calls of the functions while the engine calculates. */
export interface CallListener {
  /** @param sheetId the engine's id of the worksheet, not its name */
  called(unitId: string, sheetId: string, row: number, column: number, call: LedgerCall): void;
}

/** Every function of the list as a class of the engine, so that a call knows the cell that makes it. */
export function engineFunctions(functions: readonly CellFunction[], listener: CallListener): EngineFunction[] {
  keepQuotedTextAsText();
  return functions.map((fn) => [
    class extends BaseFunction {
      override calculate(...values: BaseValueObject[]): BaseValueObject {
        const args = values.map(rawArgument);
        const outcome = invoke(fn, args);
        listener.called(this.unitId ?? "", this.subUnitId ?? "", this.row, this.column, { id: fn.id, args, outcome });
        return engineValue(outcome);
      }

      override isArgumentsIgnoreNumberPattern(): boolean {
        return true;
      }
    },
    `${NAMESPACE}.${fn.name}`,
  ]);
}

let patched = false;

/**
 * The engine reads quoted text that looks like a time, a date or a percentage as a number ("6:12" becomes 0.258, "1/2" a date) wherever it is
 * not the direct argument of a function that forbids it: inside array constants and IF, for example. A spreadsheet leaves quoted text alone.
 */
function keepQuotedTextAsText(): void {
  if (patched) return;
  patched = true;
  const create = ValueObjectFactory.create.bind(ValueObjectFactory);
  ValueObjectFactory.create = (raw, ignorePattern) =>
    create(raw, ignorePattern === true || (typeof raw === "string" && /^\s*"/.test(raw)));
}

/** Name of a worksheet by the engine's ids. */
export type SheetNames = (unitId: string, sheetId: string) => string;

/** The names that the worksheets of an engine have now. */
export function sheetNames(univer: Univer): SheetNames {
  const units = univer.__getInjector().get(IUniverInstanceService);
  return (unitId, sheetId) => {
    const workbook = units.getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    return workbook?.getSheetBySheetId(sheetId)?.getName() ?? sheetId;
  };
}

/**
 * The engine keeps formulas as it has parsed them, with the cells that their names stood for then: a row inserted above a named cell left every
 * formula with that name pointing at the old place. So what was parsed is let go when a name changes.
 */
export function followNames(univer: Univer): void {
  const injector = univer.__getInjector();
  injector.get(ICommandService).onCommandExecuted(({ id }) => {
    const named = id === SetDefinedNameMutation.id || id === RemoveDefinedNameMutation.id;
    // Every key of the cache holds the empty text.
    if (named) injector.get(IFunctionService).deleteFormulaAstCacheKey("");
  });
}

/** Writes the calls into the ledger. What a cell called in an earlier calculation leaves when it calculates again. */
export class Recorder implements CallListener {
  readonly #ledger: Ledger;
  readonly #calculated = new Set<string>();
  #names: SheetNames = (_, sheetId) => sheetId;

  constructor(ledger: Ledger) {
    this.#ledger = ledger;
  }

  /** Follows the calculations of an engine; call it once the workbook is made. */
  follow(univer: Univer, names: SheetNames): void {
    this.#names = names;
    const service = univer.__getInjector().get(ICalculateFormulaService);
    service.executionInProgressListener$.subscribe(({ stage }) => {
      const begins =
        stage === FormulaExecuteStageType.START_DEPENDENCY ||
        stage === FormulaExecuteStageType.START_DEPENDENCY_ARRAY_FORMULA;
      if (begins) this.#calculated.clear();
    });
  }

  called(unitId: string, sheetId: string, row: number, column: number, call: LedgerCall): void {
    const address: CellAddress = { sheet: this.#names(unitId, sheetId), row, column };
    const key = `${row} ${column} ${sheetId}`;
    if (!this.#calculated.has(key)) {
      this.#calculated.add(key);
      this.#ledger.forget(address);
    }
    this.#ledger.record(address, call);
  }
}
