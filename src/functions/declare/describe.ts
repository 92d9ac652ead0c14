import type { Cell, Table } from "../../core/kit/tape.ts";
import { type CellFunction, type Change, NAMESPACE, type NamedParam } from "./cell-function.ts";
import { formulaOf, refusedArguments } from "./formula.ts";
import { limitText } from "./limits.ts";
import { type ColumnFacts, isOptional, isTerm, type Limits, type ParamFacts, type ParamKind } from "./param.ts";

/** A declaration as plain data: what `npm run functions` prints and what the help pages and Excel's metadata are made from. */
export interface FunctionText {
  /** without the namespace: WIND_PRESSURE */
  readonly name: string;
  /** as typed in a cell: SILL.WIND_PRESSURE */
  readonly fullName: string;
  readonly id: string;
  readonly family: string;
  readonly summary: string;
  /** the call with optional arguments in brackets */
  readonly syntax: string;
  readonly parameters: readonly ParameterText[];
  readonly takesBasis: boolean;
  /** what it takes from a basis, by term; those without a place in the call say so */
  readonly terms: readonly TermText[];
  readonly result: ResultText;
  readonly sources: readonly string[];
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
  readonly example: ExampleText;
  /** refused calls: the formula, and a part of the sentence that the cell says */
  readonly refuses: readonly { readonly formula: string; readonly says: string }[];
  /** when to go elsewhere */
  readonly notFor: string;
  readonly since: string;
  readonly changed: readonly Change[];
}

/** Facts that parameters and the columns of a table share. */
export interface ValueText {
  readonly name: string;
  readonly kind: ParamKind;
  /** unit of a bare number, "" where there is none */
  readonly unit: string;
  readonly what: string;
  readonly required: boolean;
  /** null where nothing limits it */
  readonly limits: LimitsText | null;
  readonly usual: { readonly min: number; readonly max: number; readonly ask: string } | null;
  readonly choices: readonly { readonly value: string; readonly means: string }[];
}

export interface ParameterText extends ValueText {
  /** what a left-out argument stands for; null when it is required, or when the calculation goes another way */
  readonly default: unknown;
  /** the assumption that a left-out argument makes, "" where it makes none */
  readonly assumption: string;
  /** of a table argument */
  readonly columns: readonly ColumnText[];
}

export interface TermText extends ValueText {
  readonly term: string;
  /** whether it has a place in the call too */
  readonly placed: boolean;
  readonly assumption: string;
}

export interface ColumnText extends ValueText {
  /** words that name the column in a header row, beside its name */
  readonly heads: readonly string[];
}

export interface LimitsText extends Limits {
  /** "from 15 to 500 ft" */
  readonly text: string;
}

export interface ResultText {
  readonly kind: "number" | "text" | "table";
  readonly unit: string;
  readonly what: string;
  readonly columns: readonly { readonly name: string; readonly unit: string }[];
}

export interface ExampleText {
  readonly formula: string;
  readonly args: Readonly<Record<string, unknown>>;
  readonly gives: Cell | Table;
  readonly within: number;
  readonly source: string;
}

/** One declaration as plain data. */
export function describe(fn: CellFunction): FunctionText {
  const { args, gives, within, source } = fn.example;
  return {
    name: fn.name,
    fullName: `${NAMESPACE}.${fn.name}`,
    id: fn.id,
    family: fn.family,
    summary: fn.summary,
    syntax: syntaxOf(fn),
    parameters: fn.params.map((named) => parameterText(named, fn)),
    takesBasis: fn.takesBasis,
    terms: termTexts(fn),
    result: {
      kind: fn.returns.kind,
      unit: fn.returns.unit,
      what: fn.returns.says,
      columns: (fn.returns.columns ?? []).map(({ name, unit }) => ({ name, unit })),
    },
    sources: fn.sources,
    assumptions: fn.assumptions,
    cautions: fn.cautions,
    example: { formula: formulaOf(fn, args, NAMESPACE), args, gives, within, source },
    refuses: fn.refuses.map((refused) => ({
      formula: formulaOf(fn, refusedArguments(fn, refused), NAMESPACE),
      says: refused.says,
    })),
    notFor: fn.notFor,
    since: fn.since,
    changed: fn.changed,
  };
}

/** The call with optional arguments in brackets. */
function syntaxOf(fn: CellFunction): string {
  const names = fn.params.map(({ name, param }) => (isOptional(param) ? `[${name}]` : name));
  return `${NAMESPACE}.${fn.name}(${names.join(", ")})`;
}

function termTexts(fn: CellFunction): readonly TermText[] {
  return [...fn.params, ...fn.named].flatMap(({ name, param }) => {
    if (!isTerm(param)) return [];
    const placed = fn.params.some((p) => p.name === name);
    return [{ ...valueText(name, param, param.needed), term: param.term, placed, assumption: param.omitted }];
  });
}

function parameterText({ name, param }: NamedParam, fn: CellFunction): ParameterText {
  const left = isOptional(param) ? { standIn: param.standIn ?? null, omitted: param.omitted } : undefined;
  return {
    ...valueText(name, param, left === undefined),
    ...(param.kind === "basis" ? { what: basisSays(fn) } : {}),
    default: left?.standIn ?? null,
    assumption: left?.omitted ?? "",
    columns: (param.columns ?? []).map(columnText),
  };
}

/** What a place of a call takes, in a few words: what it is, how it may be written, its choices, its limits. */
export function hintOf(param: ParamFacts): string {
  const ways: Partial<Record<ParamKind, string>> = {
    length: `${param.unit}, or text such as 12'-6 1/2"`,
    quantity: param.unit === "" ? "" : `${param.unit}, or text with a unit`,
    number: param.unit,
    list: "a range",
    table: `a range, one row each: ${(param.columns ?? []).map((c) => (c.optional ? `[${c.name}]` : c.name)).join(", ")}`,
  };
  const { limits } = param;
  const limited = limits !== undefined && Object.keys(limits).some((key) => key !== "source");
  return [
    param.says,
    ways[param.kind] ?? "",
    (param.choices ?? []).join(", "),
    limited ? limitText(limits, param.unit) : "",
  ]
    .filter((part) => part !== "")
    .join("; ");
}

function columnText(column: ColumnFacts): ColumnText {
  return { ...valueText(column.name, column, !column.optional), heads: column.heads };
}

function valueText(name: string, facts: ParamFacts, required: boolean): ValueText {
  const { limits, usual, choices } = facts;
  const limited = limits !== undefined && Object.keys(limits).some((key) => key !== "source");
  return {
    name,
    kind: facts.kind,
    unit: facts.unit,
    what: facts.says,
    required,
    limits: limited ? { ...limits, text: limitText(limits, facts.unit) } : null,
    usual: usual === undefined ? null : { min: usual.min, max: usual.max, ask: usual.ask },
    choices: (choices ?? []).map((value, i) => ({ value, means: facts.choicesSay?.[i] ?? "" })),
  };
}

/** The basis of a function by the terms that it takes, those without a place in the call last. */
function basisSays(fn: CellFunction): string {
  const terms = termTexts(fn);
  const listed = [...terms.filter((t) => t.placed), ...terms.filter((t) => !t.placed)].map((t) => t.term);
  const taken = listed.length === 0 ? "headings" : listed.join(", ");
  return `basis: a range of name, value, unit with any of ${taken}`;
}
