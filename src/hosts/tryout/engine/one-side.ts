import {
  type ArrayValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  Interpreter,
} from "@univerjs/engine-formula";

/** What is used of a part of a formula that the engine has parsed. */
interface Part {
  getToken(): string;
  getChildren(): Part[];
  getValue(): BaseValueObject | BaseReferenceObject | null;
  setValue(value: ReturnType<Part["getValue"]>): void;
  execute(): void;
}

/** Where the engine is. */
interface Runtime {
  readonly currentUnitId: string;
  readonly currentSubUnitId: string;
  readonly currentRow: number;
  readonly currentColumn: number;
  isStopExecution(): boolean;
}

/** Told of a cell that is worked out and leaves a side alone. */
type Leaves = (unitId: string, sheetId: string, row: number, column: number) => void;

/** The engine's own walk through a formula, which works out all parts of a call before the call; it answers 1 when it was stopped. */
interface Walk {
  readonly _runtimeService: Runtime;
  _execute(part: Part, x?: number, y?: number): number;
  _executeAsync(part: Part, x?: number, y?: number): Promise<number>;
}

const told = new WeakMap<object, Leaves>();
let patched = false;

/** Has `leaves` told of every cell of an engine that leaves a side alone: it may call nothing any more. */
export function onSideLeft(runtime: object, leaves: Leaves): void {
  told.set(runtime, leaves);
}

/**
 * The engine works out both sides of an IF, where a spreadsheet works out the one that is taken: a function behind "if the wall is there" was called for a
 * wall that is not, and its refusal stood among the errors though no cell showed one. So the other side of an IF with one condition is left alone.
 */
export function workOutOneSide(): void {
  if (patched) return;
  patched = true;
  const walk = Interpreter.prototype as unknown as Walk;
  const { _execute: execute, _executeAsync: executeAsync } = walk;
  walk._execute = function (part, x, y) {
    const sides = sidesOf(part);
    if (sides === undefined || this._runtimeService.isStopExecution()) return execute.call(this, part, x, y);
    const { condition, yes, no } = sides;
    this._execute(condition, x, y);
    for (const side of wanted(condition, yes, no, this._runtimeService)) this._execute(side, x, y);
    part.execute();
    return 0;
  };
  walk._executeAsync = async function (part, x, y) {
    const sides = sidesOf(part);
    if (sides === undefined || this._runtimeService.isStopExecution()) return executeAsync.call(this, part, x, y);
    const { condition, yes, no } = sides;
    await this._executeAsync(condition, x, y);
    for (const side of wanted(condition, yes, no, this._runtimeService)) await this._executeAsync(side, x, y);
    part.execute();
    return 0;
  };
}

interface Sides {
  readonly condition: Part;
  readonly yes: Part;
  readonly no: Part;
}

/** The parts of an IF that has both sides. */
function sidesOf(part: Part): Sides | undefined {
  if (part.getToken().toUpperCase() !== "IF") return undefined;
  const [condition, yes, no] = part.getChildren();
  return condition === undefined || yes === undefined || no === undefined ? undefined : { condition, yes, no };
}

/** The sides that are to be worked out: one, whose value then stands for the other too, or both where the condition is a table or an error. */
function wanted(condition: Part, yes: Part, no: Part, runtime: Runtime): Part[] {
  const holds = truthOf(condition.getValue());
  if (holds === undefined) return [yes, no];
  told.get(runtime)?.(runtime.currentUnitId, runtime.currentSubUnitId, runtime.currentRow, runtime.currentColumn);
  const [taken, other] = holds ? [yes, no] : [no, yes];
  // The call reads both; what it reads of this one is never its result.
  other.setValue(condition.getValue());
  return [taken];
}

/** Whether a single condition holds; undefined for a table, an error or a text. */
function truthOf(value: ReturnType<Part["getValue"]>): boolean | undefined {
  if (value === null) return undefined;
  let single = value.isReferenceObject()
    ? (value as BaseReferenceObject).toArrayValueObject()
    : (value as BaseValueObject);
  if (single.isArray()) {
    const table = single as ArrayValueObject;
    if (table.getRowCount() !== 1 || table.getColumnCount() !== 1) return undefined;
    single = table.getFirstCell();
  }
  return single.isBoolean() || single.isNumber() ? Boolean(single.getValue()) : undefined;
}
