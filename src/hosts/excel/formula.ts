import { NAMESPACE } from "../../functions/declare/cell-function.ts";
import { registry } from "../../functions/registry.ts";

/** How Excel stores a function of ours in a file, and shows it while the add-in is away; a copy may have a workbook number in front. */
const STORED = new RegExp(String.raw`(?:\[\d+\]!)?_xldudf_${NAMESPACE}_([A-Za-z][A-Za-z0-9]*)`, "gi");
const TYPED = new RegExp(String.raw`(?<![A-Za-z0-9_.])${NAMESPACE}\.[A-Za-z]`, "i");
/** Texts and quoted sheet names in a formula, which are not to be touched. */
const QUOTED = /("(?:[^"]|"")*"|'(?:[^']|'')*')/;

const nameOf = new Map(registry.map((fn) => [fn.id.toUpperCase(), fn.name]));

/** Whether a cell's content is a formula that calls a function of ours, in either spelling. */
export function callsOurs(formula: unknown): formula is string {
  if (typeof formula !== "string" || !formula.startsWith("=")) return false;
  return outsideQuotes(formula).some((part) => TYPED.test(part) || part.search(STORED) >= 0);
}

/** The formula with each stored name written as one types it. */
export function asTyped(formula: string): string {
  return formula
    .split(QUOTED)
    .map((part, i) => (i % 2 === 1 ? part : part.replace(STORED, typedName)))
    .join("");
}

function typedName(stored: string, id: string): string {
  const name = nameOf.get(id.toUpperCase());
  return name === undefined ? stored : `${NAMESPACE}.${name}`;
}

function outsideQuotes(formula: string): string[] {
  return formula.split(QUOTED).filter((_, i) => i % 2 === 0);
}
