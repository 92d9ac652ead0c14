import { NAMESPACE } from "../functions/declare/cell-function.ts";
import { functionNames, idOf } from "../functions/declare/names.ts";

/** How Excel stores a function of ours in a file, and shows it while the add-in is away; a copy may have a workbook number in front. */
const STORED = new RegExp(String.raw`(?:\[\d+\]!)?_xldudf_${NAMESPACE}_([A-Za-z][A-Za-z0-9]*)`, "gi");
const TYPED = new RegExp(String.raw`(?<![A-Za-z0-9_.])${NAMESPACE}\.([A-Za-z][A-Za-z0-9_]*)`, "gi");
/** As the sources of the templates write our functions. */
const WRITTEN = /(?<![A-Za-z0-9_.])SILL\.([A-Za-z][A-Za-z0-9_]*)/gi;
/** Texts and quoted sheet names in a formula, which are not to be touched. */
const QUOTED = /("(?:[^"]|"")*"|'(?:[^']|'')*')/;
/** A cell with the sign for all that its formula has spilled: B2# */
const SPILL_REFERENCE = /\$?[A-Z]{1,3}\$?\d+#/i;

const known: ReadonlySet<string> = new Set(functionNames);
const nameOf = new Map(functionNames.map((name) => [idOf(name), name]));

/** Whether a cell's content is a formula that calls a function of ours, in either spelling. */
export function callsOurs(formula: unknown): formula is string {
  return isFormula(formula) && outsideQuotes(formula).some((part) => hits(TYPED, part) || hits(STORED, part));
}

/** Whether a formula asks for all cells that another has spilled. */
export function usesSpill(formula: unknown): formula is string {
  return isFormula(formula) && outsideQuotes(formula).some((part) => SPILL_REFERENCE.test(part));
}

/** A formula that is written with SILL., as templates are, under the name that this copy's functions have in front: a trial copy has another one. */
export function inNamespace(formula: string): string {
  return replaced(formula, WRITTEN, (_, name) => `${NAMESPACE}.${name}`);
}

/** The formula with each stored name written as one types it. */
export function asTyped(formula: string): string {
  return replaced(formula, STORED, (stored, id) => {
    const name = nameOf.get(id.toUpperCase());
    return name === undefined ? stored : `${NAMESPACE}.${name}`;
  });
}

/** The formula with each of our names as a file holds it: SILL.WIND_KZ -> _xldudf_SILL_WINDKZ */
export function asStored(formula: string): string {
  return replaced(formula, TYPED, (typed, name) => {
    const upper = name.toUpperCase();
    return known.has(upper) ? `_xldudf_${NAMESPACE}_${idOf(upper)}` : typed;
  });
}

/** Names behind our namespace in a formula, as typed, in their order. */
export function ourNames(formula: string): string[] {
  return outsideQuotes(asTyped(formula)).flatMap((part) =>
    [...part.matchAll(TYPED)].map(([, name = ""]) => name.toUpperCase()),
  );
}

/** The first name behind our namespace that no function has. */
export function unknownName(formula: string): string | undefined {
  return ourNames(formula).find((name) => !known.has(name));
}

function isFormula(content: unknown): content is string {
  return typeof content === "string" && content.startsWith("=");
}

function hits(pattern: RegExp, text: string): boolean {
  return text.search(pattern) >= 0;
}

function replaced(formula: string, pattern: RegExp, write: (whole: string, name: string) => string): string {
  return formula
    .split(QUOTED)
    .map((part, i) => (i % 2 === 1 ? part : part.replace(pattern, write)))
    .join("");
}

function outsideQuotes(formula: string): string[] {
  return formula.split(QUOTED).filter((_, i) => i % 2 === 0);
}
