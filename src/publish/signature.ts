import type { CellFunction, NamedParam } from "../functions/declare/cell-function.ts";
import { limitText } from "../functions/declare/limits.ts";
import { type ColumnFacts, isOptional, isTerm, type ParamFacts } from "../functions/declare/param.ts";

/**
 * What a workbook relies on: the order of a function's places, their kinds, units, limits and choices, what a left-out one stands for, and the columns of its
 * result. Kept in a file for each function, so that a change of it shows when a change of the code is read.
 */
export function signatureText(fn: CellFunction): string {
  const places = fn.params.filter(({ param }) => param.kind !== "basis");
  return [
    `${fn.name}, id ${fn.id}, since ${fn.since}`,
    ...fn.changed.map(({ since, what }) => `changed in ${since}: ${what}`),
    ...places.flatMap((place, i) => valueLines(`${i + 1} `, place)),
    ...(fn.takesBasis ? [`${places.length + 1} basis`] : []),
    ...fn.named.flatMap((term) => valueLines("basis only: ", term)),
    ...resultLines(fn),
    "",
  ].join("\n");
}

function valueLines(before: string, { name, param }: NamedParam): string[] {
  const facts = [...factsOf(param), ...(isTerm(param) ? [`term ${param.term}`] : [])];
  const left = isOptional(param) ? ` | left out: ${leftOut(param)}` : "";
  return [`${before}${name}: ${facts.join(", ")}${left}`, ...(param.columns ?? []).map(columnLine)];
}

function leftOut(param: NamedParam["param"]): string {
  if (isTerm(param) && param.needed) return "refused";
  const words = isOptional(param) ? param.omitted : "";
  return words === "" ? "nothing assumed" : words;
}

function factsOf(facts: ParamFacts): string[] {
  const { kind, unit, limits, choices } = facts;
  const limited = limits !== undefined && Object.keys(limits).some((key) => key !== "source");
  return [
    kind,
    ...(unit === "" ? [] : [unit]),
    ...(limited ? [limitText(limits, unit)] : []),
    ...(choices === undefined ? [] : [`one of ${choices.join(" / ")}`]),
  ];
}

function columnLine(column: ColumnFacts): string {
  return `    ${column.name}: ${factsOf(column).join(", ")}${column.optional ? ", may be blank" : ""}`;
}

function resultLines(fn: CellFunction): string[] {
  const { kind, unit, columns = [] } = fn.returns;
  const rows = kind !== "table" ? "" : fn.oneRow ? ", always one row" : ", with headings";
  return [
    `gives: ${kind}${unit === "" ? "" : `, ${unit}`}${rows}`,
    ...columns.map((column) => `    ${column.name}${column.unit === "" ? "" : `, ${column.unit}`}`),
  ];
}
