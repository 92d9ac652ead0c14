import type { CellFunction } from "../functions/declare/cell-function.ts";
import { describe, type FunctionText, type ParameterText } from "../functions/declare/describe.ts";
import { pageOf } from "../functions/find/help-place.ts";

/** What Excel reads of each function (functions.json). */
export interface ExcelMetadata {
  /** lets a function see the errors in its arguments, and say which cell holds one */
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly ExcelFunction[];
  readonly enums: readonly ExcelEnum[];
}

export interface ExcelFunction {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl: string;
  readonly parameters: readonly ExcelParameter[];
  readonly result: { readonly type: "number" | "any"; readonly dimensionality: "scalar" | "matrix" };
  /** the address is what the pane finds a cell's calculation by */
  readonly options: { readonly requiresAddress: true };
}

export interface ExcelParameter {
  readonly name: string;
  readonly description: string;
  readonly type: "any" | "string";
  readonly dimensionality: "scalar" | "matrix";
  readonly optional: boolean;
  readonly customEnumId?: string;
}

export interface ExcelEnum {
  readonly id: string;
  readonly type: "string";
  readonly values: readonly { readonly name: string; readonly stringValue: string; readonly tooltip?: string }[];
}

const LONGEST_DESCRIPTION = 1024;
const LONGEST_PARAMETER = 512;
const LONGEST_TOOLTIP = 256;
const MOST_ENUMS = 256;

/** Address of a function's help, below the add-in's base address. */
export function helpPath(fn: { readonly name: string; readonly family: string }): string {
  return `help/${pageOf(fn)}#${fn.name}`;
}

/**
 * Excel's metadata of all functions.
 * @param base https address of the add-in's files, without a final slash
 */
export function excelMetadata(functions: readonly CellFunction[], base: string): ExcelMetadata {
  const enums = new Map<string, ExcelEnum>();
  return {
    allowErrorForDataTypeAny: true,
    functions: functions.map((fn) => excelFunction(describe(fn), base, enums)),
    enums: [...enums.values()],
  };
}

function excelFunction(fn: FunctionText, base: string, enums: Map<string, ExcelEnum>): ExcelFunction {
  const table = fn.result.kind === "table";
  return {
    id: fn.id,
    name: fn.name,
    description: clipped(fn.summary, LONGEST_DESCRIPTION),
    helpUrl: `${base}/${helpPath(fn)}`,
    parameters: fn.parameters.map((p) => excelParameter(fn, p, enums)),
    // A text result may be a number at times (a capacity or "none"), so only a number result is declared as such.
    // So is a length, which a basis may ask for in feet and inches.
    result: {
      type: fn.result.kind === "number" && !mayBeText(fn) ? "number" : "any",
      dimensionality: table ? "matrix" : "scalar",
    },
    options: { requiresAddress: true },
  };
}

function mayBeText(fn: FunctionText): boolean {
  return fn.takesBasis && (fn.result.unit === "ft" || fn.result.unit === "in");
}

/**
 * Every argument is handed over as it stands (`any`): text, number, blank or error. A choice is a string, the only type for which Excel
 * documents a list of choices in AutoComplete; older Excel shows it as a plain argument.
 */
function excelParameter(fn: FunctionText, p: ParameterText, enums: Map<string, ExcelEnum>): ExcelParameter {
  // A place that may be left out can hold a basis, and Excel hands a range over whole only to a matrix.
  const anything = fn.takesBasis && !p.required;
  const enumId = p.kind === "choice" && !anything ? enumFor(fn, p, enums) : undefined;
  return {
    name: p.name,
    description: parameterDescription(p),
    type: enumId === undefined ? "any" : "string",
    dimensionality: anything || p.kind === "table" || p.kind === "list" ? "matrix" : "scalar",
    optional: !p.required,
    ...(enumId === undefined ? {} : { customEnumId: enumId }),
  };
}

/** One enum for all parameters with the same choices and meanings. */
function enumFor(fn: FunctionText, p: ParameterText, enums: Map<string, ExcelEnum>): string | undefined {
  const key = JSON.stringify(p.choices);
  const known = enums.get(key);
  if (known !== undefined) return known.id;
  if (enums.size >= MOST_ENUMS) return undefined;
  const id = `${fn.id}.${p.name.toUpperCase().replace(/[^A-Z0-9]/g, "")}`.slice(0, 64);
  const values = p.choices.map(({ value, means }) => ({
    name: value,
    stringValue: value,
    ...(means === "" ? {} : { tooltip: clipped(means, LONGEST_TOOLTIP) }),
  }));
  enums.set(key, { id, type: "string", values });
  return id;
}

/** The unit comes first, since Excel may cut the rest. */
function parameterDescription(p: ParameterText): string {
  const unit = p.unit === "" ? "" : `[${p.unit}] `;
  const more: string[] = [];
  if (p.columns.length > 0) more.push(`columns: ${p.columns.map(columnName).join(", ")}`);
  if (p.choices.length > 0) more.push(`one of ${p.choices.map((c) => c.value).join(", ")}`);
  if (p.limits !== null) more.push(p.limits.text);
  if (p.assumption !== "") more.push(`left out: ${p.assumption}`);
  return joined(unit + p.what, more, LONGEST_PARAMETER);
}

function columnName(column: { readonly name: string; readonly unit: string; readonly required: boolean }): string {
  const name = column.unit === "" ? column.name : `${column.name} [${column.unit}]`;
  return column.required ? name : `(${name})`;
}

/** As many of the further parts as fit, whole. */
function joined(first: string, further: readonly string[], longest: number): string {
  let text = clipped(first, longest);
  for (const part of further) {
    if (text.length + part.length + 2 <= longest) text += `; ${part}`;
  }
  return text;
}

function clipped(text: string, longest: number): string {
  if (text.length <= longest) return text;
  const space = text.lastIndexOf(" ", longest - 2);
  return `${text.slice(0, space > 0 ? space : longest - 2)} …`;
}
