import { merge, type Univer } from "@univerjs/core";
import {
  FormulaDataModel,
  FormulaExecuteStageType,
  ICalculateFormulaService,
  type IFormulaDatasetConfig,
  IFormulaRuntimeService,
} from "@univerjs/engine-formula";

/** The lock that the engine holds while it calculates; it has no other sign of an end that comes after a failure too. */
interface Locked {
  readonly _executeLock: { acquire(key: string, run: () => void): Promise<void> };
}
const LOCK = "FORMULA_EXECUTION_LOCK";

/**
 * Has the engine calculate one thing after the other, and what was stopped again with the next. By itself it takes a new calculation's data while one is
 * still under way, forgets an edit that comes after its last look whether to stop, and forgets what a stopped calculation was to do when another has ended
 * meanwhile: on a busy machine a cell then keeps an old number for good.
 */
export function calculateInTurn(univer: Univer): void {
  const injector = univer.__getInjector();
  const service = injector.get(ICalculateFormulaService);
  const runtime = injector.get(IFormulaRuntimeService);
  const model = injector.get(FormulaDataModel);
  let waiting = 0;
  let underWay: IFormulaDatasetConfig | undefined;
  let stopped: IFormulaDatasetConfig | undefined;
  let stopAtStart = false;

  // One that was told to stop says so at its end, however late: the edit that stopped it is calculated then.
  const setStage = runtime.setFormulaExecuteStage.bind(runtime);
  runtime.setFormulaExecuteStage = (stage) => {
    if (stage === FormulaExecuteStageType.CALCULATION_COMPLETED) {
      if (runtime.isStopExecution()) {
        runtime.markedAsStopFunctionsExecuted();
        stopped = underWay;
      }
      underWay = undefined;
    }
    setStage(stage);
  };

  // One that is told to stop before its turn has come stops as soon as it begins.
  const stop = service.stopFormulaExecution.bind(service);
  service.stopFormulaExecution = () => {
    stopAtStart ||= underWay === undefined && waiting > 0;
    stop();
  };

  const execute = service.execute.bind(service);
  let before: Promise<void> = Promise.resolve();
  service.execute = (asked) => {
    waiting++;
    const ended = before.then(async () => {
      waiting--;
      // What the one before has spilled is known only now.
      const formulaData = model.getFormulaData();
      const arrayFormulaCellData = model.getArrayFormulaCellData();
      const arrayFormulaRange = model.getArrayFormulaRange();
      underWay = { ...together(stopped, asked), formulaData, arrayFormulaCellData, arrayFormulaRange };
      stopped = undefined;
      const begun = execute(underWay);
      if (stopAtStart) stop();
      stopAtStart = false;
      await begun;
      await (service as unknown as Locked)._executeLock.acquire(LOCK, () => {});
    });
    before = ended.catch(() => {});
    return ended;
  };
}

/** What two calculations were to do. */
function together(one: IFormulaDatasetConfig | undefined, other: IFormulaDatasetConfig): IFormulaDatasetConfig {
  if (one === undefined) return other;
  const both = <K extends keyof IFormulaDatasetConfig>(key: K) => merge({}, one[key], other[key]);
  return {
    ...other,
    forceCalculate: one.forceCalculate || other.forceCalculate,
    dirtyRanges: [...one.dirtyRanges, ...other.dirtyRanges],
    dirtyNameMap: both("dirtyNameMap"),
    dirtyDefinedNameMap: both("dirtyDefinedNameMap"),
    dirtySuperTableMap: both("dirtySuperTableMap"),
    dirtyUnitFeatureMap: both("dirtyUnitFeatureMap"),
    dirtyUnitOtherFormulaMap: both("dirtyUnitOtherFormulaMap"),
    clearDependencyTreeCache: both("clearDependencyTreeCache"),
  };
}
