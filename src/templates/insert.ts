import type { InsertedTemplate } from "../workbook/host.ts";
import { parseRange, rangeText } from "../workbook/named-rows.ts";
import { templates } from "./index.ts";
import type { SheetTemplate, TemplateCell, WorkbookTemplate } from "./kit/template.ts";

/** What a workbook holds before a template goes in. */
export interface Present {
  readonly sheets: readonly string[];
  /** names of the workbook, each with the worksheet of its cells; undefined where it stands for no cells */
  readonly names: ReadonlyMap<string, string | undefined>;
}

/** A template that fits beside what is there. */
export interface FittedTemplate {
  /** the worksheets to make, under names that are free, and the names to add */
  readonly template: WorkbookTemplate;
  /** worksheets that are there already and give the names of one that is not made */
  readonly used: readonly string[];
  /** names that got a number, as [asked, given] */
  readonly renamed: readonly (readonly [string, string])[];
}

/** Longest name of a worksheet. */
const LONGEST = 31;

/** @throws an error with a sentence for a name that no template has */
export function templateNamed(name: string): WorkbookTemplate {
  const found = templates.find((template) => template.name.toLowerCase() === name.toLowerCase());
  if (found === undefined) throw new Error(`There is no template ${name}.`);
  return found;
}

/**
 * Fits a template into a workbook without touching anything there. A sheet whose names all stand for cells already is left out, so that no input stands
 * twice; other sheets get a name that is free, and a name that is taken gets a number, in the formulas too.
 */
export function fitted(template: WorkbookTemplate, present: Present): FittedTemplate {
  const taken = new Map([...present.names].map(([name, sheet]) => [name.toLowerCase(), sheet]));
  const ownNames = new Map(template.sheets.map(({ name }) => [name, namesOn(template, name)]));
  const isThere = ({ name }: SheetTemplate): boolean => {
    const own = ownNames.get(name) ?? [];
    return own.length > 0 && own.every(([known]) => taken.get(known.toLowerCase()) !== undefined);
  };
  const made = template.sheets.filter((sheet) => !isThere(sheet));
  const left = template.sheets.filter(isThere).flatMap(({ name }) => ownNames.get(name) ?? []);
  const used = [...new Set(left.map(([name]) => taken.get(name.toLowerCase()) ?? ""))];

  const sheets = freeNames(
    made.map(({ name }) => name),
    present.sheets,
    (name, number) => withNumber(name, ` (${number})`, LONGEST),
  );
  const asked = made.flatMap(({ name }) => ownNames.get(name) ?? []);
  // A name that is left of a deleted sheet stands for no cells and is given to the new ones.
  const lived = [...present.names].filter(([, sheet]) => sheet !== undefined).map(([name]) => name);
  const names = freeNames(
    asked.map(([name]) => name),
    lived,
    (name, number) => `${name}_${number}`,
  );
  const renamed = [...names].filter(([before, after]) => before !== after);
  return {
    template: {
      name: template.name,
      sheets: made.map((sheet) => withNames({ ...sheet, name: sheets.get(sheet.name) ?? sheet.name }, renamed)),
      names: asked.map(([name, reference]) => [names.get(name) ?? name, onSheet(reference, sheets)] as const),
    },
    used,
    renamed,
  };
}

/** What to tell of it. @param undo how to take it out again */
export function inserted({ template, used, renamed }: FittedTemplate, undo: string): InsertedTemplate {
  const sheets = template.sheets.map(({ name }) => name);
  const parts = [
    sheets.length === 0
      ? `All of ${template.name} is in this workbook already, on ${used.join(", ")}: nothing was written.`
      : `${template.name} is in the workbook: ${sheets.join(", ")}.`,
    sheets.length > 0 && used.length > 0 ? `It uses ${used.join(", ")}, which was there.` : "",
    renamed.length === 0 ? "" : `Names that were taken got a number: ${renamed.map(([, name]) => name).join(", ")}.`,
    sheets.length === 0 ? "" : undo,
  ];
  return { sheets, used, says: parts.filter((part) => part !== "").join(" ") };
}

function namesOn(template: WorkbookTemplate, sheet: string): WorkbookTemplate["names"] {
  return template.names.filter(([, reference]) => parseRange(reference)?.first.sheet === sheet);
}

/** A free name for each, in order; no two are alike, however they are written. */
function freeNames(
  asked: readonly string[],
  present: readonly string[],
  numbered: (name: string, number: number) => string,
): Map<string, string> {
  const taken = new Set(present.map((name) => name.toLowerCase()));
  const given = new Map<string, string>();
  for (const name of asked) {
    let free = name;
    for (let number = 2; taken.has(free.toLowerCase()); number++) free = numbered(name, number);
    taken.add(free.toLowerCase());
    given.set(name, free);
  }
  return given;
}

function withNumber(name: string, end: string, longest: number): string {
  return `${name.slice(0, longest - end.length)}${end}`;
}

function onSheet(reference: string, sheets: ReadonlyMap<string, string>): string {
  const range = parseRange(reference);
  const sheet = range && sheets.get(range.first.sheet);
  if (range === undefined || sheet === undefined) return reference;
  return rangeText({ ...range, first: { ...range.first, sheet } });
}

function withNames(sheet: SheetTemplate, renamed: readonly (readonly [string, string])[]): SheetTemplate {
  if (renamed.length === 0) return sheet;
  const given = new Map(renamed.map(([before, after]) => [before.toLowerCase(), after]));
  const write = (cell: TemplateCell | undefined): TemplateCell | undefined =>
    typeof cell?.is === "string" && cell.is.startsWith("=") ? { ...cell, is: rewritten(cell.is, given) } : cell;
  return { ...sheet, rows: sheet.rows.map((row) => row.map(write)) };
}

/** A formula with other names in it; texts, functions and sheets are left alone. */
function rewritten(formula: string, given: ReadonlyMap<string, string>): string {
  return formula
    .split(/("(?:[^"]|"")*")/)
    .map((part, i) =>
      i % 2 === 1
        ? part
        : part.replace(/(?<![\w.!'])[A-Za-z_][\w.]*(?![\w.(!'])/g, (word) => given.get(word.toLowerCase()) ?? word),
    )
    .join("");
}
