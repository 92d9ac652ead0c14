import type { CellFunction, Family } from "../declare/cell-function.ts";
import { FILLERS, TRADE_WORDS } from "./trade-words.ts";

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
 * A function's own name finds it first; ties keep the order of the registry. Where none holds them all, a pair of them is tried as one word of the trade: "tie down" as "tiedown".
 */
export function find(functions: readonly CellFunction[], query: string): CellFunction[] {
  const words = query
    .toLowerCase()
    .replace(/\bsill\./g, "")
    .split(/[\s_,.()=?!]+/)
    .filter((w) => w !== "" && !FILLERS.has(w));
  if (words.length === 0) return [...functions];
  const joined = words.join("");
  const all = ranked(functions, words);
  const found = all.length === 0 && Object.hasOwn(TRADE_WORDS, joined) ? ranked(functions, [joined]) : all;
  const own = functions.filter((fn) => fn.name === nameIn(query));
  return [...own, ...found.filter((fn) => !own.includes(fn))];
}

/** What may be the name of a function: of "=SILL.WIND_KZ(" WIND_KZ. */
function nameIn(query: string): string {
  return /^\s*=?(?:SILL\.)?(\w*)/.exec(query.toUpperCase())?.[1] ?? "";
}

function ranked(functions: readonly CellFunction[], words: readonly string[]): CellFunction[] {
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
  const weight = (word: string): number => {
    if (name.split("_").some((part) => part.startsWith(word))) return 8;
    if (name.includes(word)) return 5;
    if (startsWord(front, word)) return 3;
    return startsWord(rest, word) ? 1 : 0;
  };
  let sum = 0;
  for (const word of words) {
    // A word of the trade that stands nowhere is found by what the declarations call it.
    const found = Math.max(
      weight(word),
      ...(Object.hasOwn(TRADE_WORDS, word) ? (TRADE_WORDS[word] ?? []) : []).map((w) => weight(w) * 0.75),
    );
    if (found === 0) return 0;
    sum += found;
  }
  return sum;
}

function startsWord(text: string, word: string): boolean {
  return text.split(/[^\p{L}\d]+/u).some((w) => w.startsWith(word));
}
