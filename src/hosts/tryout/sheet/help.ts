import { BooleanNumber } from "@univerjs/core";
import { FunctionType, type IFunctionInfo, type IFunctionParam } from "@univerjs/engine-formula";
import { type CellFunction, NAMESPACE, type NamedParam } from "../../../functions/declare/cell-function.ts";
import { hintOf } from "../../../functions/declare/describe.ts";
import { formulaOf, literal } from "../../../functions/declare/formula.ts";
import { isOptional } from "../../../functions/declare/param.ts";

/** What the engine shows of a function while a formula is typed. */
export function functionInfo(fn: CellFunction): IFunctionInfo {
  const example = formulaOf(fn, fn.example.args, NAMESPACE);
  return {
    functionName: `${NAMESPACE}.${fn.name}`,
    functionType: FunctionType.User,
    abstract: fn.summary,
    description: `${fn.summary} Gives ${fn.returns.says}${inUnit(fn.returns.unit)}. Example: ${example}`,
    functionParameter: fn.params.map((param) => parameterInfo(param, fn.example.args)),
  };
}

function parameterInfo({ name, param }: NamedParam, example: Readonly<Record<string, unknown>>): IFunctionParam {
  const optional = isOptional(param);
  const shown = example[name] ?? (optional ? param.standIn : undefined);
  return {
    name,
    detail: details(param),
    example: isWritable(shown) ? literal(shown) : "",
    // The engine's documentation says the opposite, but it puts brackets around a parameter whose `require` is 0.
    require: optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
    repeat: BooleanNumber.FALSE,
  };
}

function details(param: NamedParam["param"]): string {
  const left = isOptional(param) && param.omitted !== "" ? `; left out: ${param.omitted}` : "";
  return `${hintOf(param)}${left}.`;
}

function inUnit(unit: string): string {
  return unit === "" ? "" : `, ${unit}`;
}

function isWritable(value: unknown): boolean {
  return ["number", "string", "boolean"].includes(typeof value) || Array.isArray(value);
}
