import type { CellFunction, Family } from "../../functions/declare/cell-function.ts";

export interface FamilyList {
  readonly family: Family;
  readonly functions: readonly CellFunction[];
}

/** Functions by family, in the order of the registry. */
export function byFamily(functions: readonly CellFunction[]): FamilyList[] {
  const lists = new Map<Family, CellFunction[]>();
  for (const fn of functions) lists.set(fn.family, [...(lists.get(fn.family) ?? []), fn]);
  return [...lists].map(([family, list]) => ({ family, functions: list }));
}

/**
 * Functions that hold every word of the query: in the name first, then in the summary or the family, then in parameters, choices and results.
 * Ties keep the order of the registry.
 */
export function find(functions: readonly CellFunction[], query: string): CellFunction[] {
  const words = query
    .toLowerCase()
    .replace(/\bsill\./g, "")
    .split(/[\s_,.()=]+/)
    .filter((w) => w !== "");
  if (words.length === 0) return [...functions];
  return functions
    .map((fn) => ({ fn, score: score(fn, words) }))
    .filter(({ score: s }) => s > 0)
    .sort((a, b) => b.score - a.score)
    .map(({ fn }) => fn);
}

function score(fn: CellFunction, words: readonly string[]): number {
  const name = fn.name.toLowerCase();
  const front = `${fn.summary} ${fn.family}`.toLowerCase();
  const params = fn.params.map(({ name: n, param: p }) => `${n} ${p.says} ${p.unit} ${(p.choices ?? []).join(" ")}`);
  const columns = (fn.returns.columns ?? []).map((c) => c.name);
  const rest = [...params, ...columns, fn.returns.says].join(" ").toLowerCase();
  let sum = 0;
  for (const word of words) {
    if (name.split("_").some((part) => part.startsWith(word))) sum += 8;
    else if (name.includes(word)) sum += 5;
    else if (startsWord(front, word)) sum += 3;
    else if (startsWord(rest, word)) sum += 1;
    else return 0;
  }
  return sum;
}

function startsWord(text: string, word: string): boolean {
  return text.split(/[^\p{L}\d]+/u).some((w) => w.startsWith(word));
}
