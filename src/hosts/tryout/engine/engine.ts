import {
  ICommandService,
  type IUnitRange,
  IUniverInstanceService,
  type Univer,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import {
  ArrayValueObject,
  BaseFunction,
  type BaseValueObject,
  ErrorType,
  ErrorValueObject,
  FormulaExecuteStageType,
  ICalculateFormulaService,
  IFormulaRuntimeService,
  IFunctionService,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
  SetTriggerFormulaCalculationStartMutation,
  ValueObjectFactory,
} from "@univerjs/engine-formula";
import { type CellFunction, NAMESPACE } from "../../../functions/declare/cell-function.ts";
import type { Outcome } from "../../../functions/run/invoke.ts";
import { remembered } from "../../../functions/run/remember.ts";
import type { Answer } from "../../../functions/run/tables-on-demand.ts";
import type { CellAddress, Ledger, LedgerCall } from "../../../workbook/ledger.ts";
import { giveZeroWhereNothingFits } from "./nothing-fits.ts";
import { onSideLeft, workOutOneSide } from "./one-side.ts";
import { keepSpillsFresh } from "./spills.ts";
import { engineValue, rawArgument } from "./values.ts";

/** A function as the engine's plugins take it: a class, and its name in cells. */
export type EngineFunction = [new (name: string) => BaseFunction, string];

/** Takes the calls of the functions while the engine calculates. */
export interface CallListener {
  /** @param sheetId the engine's id of the worksheet, not its name */
  called(unitId: string, sheetId: string, row: number, column: number, call: LedgerCall): void;
  /** The cell has asked for something that will be known later; it should then calculate again. */
  waits?(unitId: string, sheetId: string, row: number, column: number, arrival: Promise<Outcome>): void;
}

/** What a cell holds while its answer is awaited. */
const WAITING = ErrorType.CONNECT;

/**
 * Every function of the list as a class of the engine, so that a call knows the cell that makes it.
 *
 * The engine has functions that answer by a promise, but they are not used: it calculates nothing else meanwhile, and an edit in that time leaves #VALUE! in
 * the cells that were still to come and is itself never calculated. So a call whose answer comes later gives `WAITING` at once.
 */
export function engineFunctions(
  functions: readonly CellFunction[],
  listener: CallListener,
  answer: Answer = remembered,
): EngineFunction[] {
  keepQuotedTextAsText();
  keepSpillsFresh();
  workOutOneSide();
  giveZeroWhereNothingFits();
  return functions.map((fn) => [
    class extends BaseFunction {
      override calculate(...values: BaseValueObject[]): BaseValueObject {
        const args = values.map(rawArgument);
        const [unitId, sheetId] = [this.unitId ?? "", this.subUnitId ?? ""];
        const outcome = answer(fn, args);
        if (outcome instanceof Promise) {
          listener.waits?.(unitId, sheetId, this.row, this.column, outcome);
          return ErrorValueObject.create(WAITING);
        }
        listener.called(unitId, sheetId, this.row, this.column, { id: fn.id, args, outcome });
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
    create(
      typeof raw === "string" ? withSigns(raw) : raw,
      ignorePattern === true || (typeof raw === "string" && /^\s*"/.test(raw)),
    );
  // It also parts an array constant at the commas and semicolons inside quoted text: {"a, b",1} became three cells.
  const arrays = ArrayValueObject.prototype as unknown as { _formatValue(raw: unknown): unknown };
  const format = arrays._formatValue;
  arrays._formatValue = function (raw) {
    return format.call(this, typeof raw === "string" ? raw.replace(QUOTED_IN_ARRAY, withoutSigns) : raw);
  };
}

/** Quoted text in an array constant, whose own quotes the engine has undoubled before: it ends where a sign of the array follows. */
const QUOTED_IN_ARRAY = /(?<=[{,;]\s*)".*?"(?=\s*[,;}])/g;
/** Signs of no meaning that stand for a comma and a semicolon in quoted text while an array constant is parted. */
const COMMA = "\uE000";
const SEMICOLON = "\uE001";

function withoutSigns(text: string): string {
  return text.replaceAll(",", COMMA).replaceAll(";", SEMICOLON);
}

function withSigns(text: string): string {
  return text.replaceAll(COMMA, ",").replaceAll(SEMICOLON, ";");
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

/**
 * Writes the calls into the ledger. What a cell called in an earlier calculation leaves when it calculates again.
 * Has the cells that wait for an answer calculated again when it is there.
 */
export class Recorder implements CallListener {
  readonly #ledger: Ledger;
  readonly #calculated = new Set<string>();
  readonly #arrivals = new Set<Promise<void>>();
  #calculate: ((cell: IUnitRange) => void) | undefined;
  #names: SheetNames = (_, sheetId) => sheetId;

  constructor(ledger: Ledger) {
    this.#ledger = ledger;
  }

  /** Follows the calculations of an engine; call it once the workbook is made. */
  follow(univer: Univer, names: SheetNames): void {
    this.#names = names;
    const commands = univer.__getInjector().get(ICommandService);
    this.#calculate = (cell) => {
      const params = { commands: [], forceCalculation: false, dirtyRanges: [cell] };
      commands.executeCommand(SetTriggerFormulaCalculationStartMutation.id, params, { onlyLocal: true });
    };
    const service = univer.__getInjector().get(ICalculateFormulaService);
    service.executionInProgressListener$.subscribe(({ stage }) => {
      const begins =
        stage === FormulaExecuteStageType.START_DEPENDENCY ||
        stage === FormulaExecuteStageType.START_DEPENDENCY_ARRAY_FORMULA;
      if (begins) this.#calculated.clear();
    });
    const runtime = univer.__getInjector().get(IFormulaRuntimeService);
    onSideLeft(runtime, (...cell) => void this.#begin(...cell));
  }

  /** Ends the calculations that would follow when answers arrive. */
  stop(): void {
    this.#calculate = undefined;
  }

  /** Resolves when everything that cells wait for now has arrived; the cells then are about to be calculated. */
  async arrived(): Promise<void> {
    await Promise.all(this.#arrivals);
  }

  called(unitId: string, sheetId: string, row: number, column: number, call: LedgerCall): void {
    this.#ledger.record(this.#begin(unitId, sheetId, row, column), call);
  }

  waits(unitId: string, sheetId: string, row: number, column: number, arrival: Promise<Outcome>): void {
    this.#begin(unitId, sheetId, row, column);
    const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
    const arrived = arrival.then(() => {
      this.#arrivals.delete(arrived);
      this.#calculate?.({ unitId, sheetId, range });
    });
    this.#arrivals.add(arrived);
  }

  /** Forgets what the cell called before, at its first call in a calculation. */
  #begin(unitId: string, sheetId: string, row: number, column: number): CellAddress {
    const address: CellAddress = { sheet: this.#names(unitId, sheetId), row, column };
    const key = `${row} ${column} ${sheetId}`;
    if (!this.#calculated.has(key)) {
      this.#calculated.add(key);
      this.#ledger.forget(address);
    }
    return address;
  }
}
