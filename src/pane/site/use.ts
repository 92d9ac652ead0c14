import type { TermName } from "../../functions/basis/glossary/index.ts";
import { termOf } from "../../functions/basis/words.ts";
import type { CellFunction } from "../../functions/declare/cell-function.ts";
import { isTerm } from "../../functions/declare/param.ts";
import { isRange, type RawArgument } from "../../functions/declare/raw.ts";
import { sheetTerms } from "../../functions/declare/sheet-terms.ts";
import type { LedgerEntry } from "../../workbook/ledger.ts";

/** How many cells use each term: their call is of a function that takes it, and was given a range with a row of that name. */
export function usesOf(entries: readonly LedgerEntry[], functions: readonly CellFunction[]): Map<TermName, number> {
  const taken = new Map(functions.map((fn) => [fn.id, termsOf(fn)]));
  const uses = new Map<TermName, number>();
  // The ledger holds equal ranges once, so each is looked through once.
  const known = new Map<RawArgument, ReadonlySet<TermName>>();
  const named = (range: RawArgument) => {
    const terms = known.get(range) ?? namedIn(range);
    known.set(range, terms);
    return terms;
  };
  for (const { calls } of entries) {
    const here = new Set<TermName>();
    for (const { id, args } of calls) {
      for (const range of args.filter(isRange)) {
        const terms = named(range);
        for (const term of taken.get(id) ?? []) if (terms.has(term)) here.add(term);
      }
    }
    for (const term of here) uses.set(term, (uses.get(term) ?? 0) + 1);
  }
  return uses;
}

/** The terms that a function takes from a basis, those that it falls back on among them. */
export function termsOf(fn: CellFunction): ReadonlySet<TermName> {
  const terms = [...fn.params, ...fn.named].flatMap(({ param }) =>
    isTerm(param) ? [param.term, ...(param.fallback === undefined ? [] : [param.fallback])] : [],
  );
  return new Set([...terms, ...sheetTerms(fn)] as TermName[]);
}

function namedIn(range: RawArgument): ReadonlySet<TermName> {
  const rows = isRange(range) ? range : [];
  return new Set(
    rows.flatMap(([name]) => {
      const words = typeof name === "string" ? name.replace(/\s*(?:[([].*|,.*)$/, "") : "";
      const term = termOf(String(name ?? "")) ?? termOf(words);
      return term === undefined ? [] : [term];
    }),
  );
}

/** What a term stands for where nobody gives it: the default of the glossary, else what the functions that take it say. */
export function assumedOf(term: TermName, omitted: string, functions: readonly CellFunction[]): string {
  if (omitted !== "") return omitted;
  const places = functions.flatMap((fn) =>
    [...fn.params, ...fn.named].flatMap(({ param }) =>
      isTerm(param) && param.term === term ? [{ fn: fn.name, param }] : [],
    ),
  );
  const asks = places.filter(({ param }) => param.needed).map(({ fn }) => fn);
  const says = [...new Set(places.map(({ param }) => param.omitted))].filter((words) => words !== "").slice(0, 2);
  const list = asks.length > 3 ? `${asks.slice(0, 3).join(", ")} and ${asks.length - 3} more` : asks.join(", ");
  const refuses = asks.length === 1 ? "refuses" : "refuse";
  return [...says, ...(asks.length > 0 ? [`${list} ${refuses} without it`] : [])].join("; ");
}
