import { plainForms } from "../../core/units/text.ts";
import type { Entry } from "./glossary/entry.ts";
import { GLOSSARY, type TermName } from "./glossary/index.ts";

/** A name as it is compared: without case, spaces at the ends, underscores and a final colon. */
export function plainName(name: string): string {
  return plainForms(name)
    .replaceAll("_", " ")
    .replaceAll("\u2019", "'")
    .trim()
    .replace(/\s*:$/, "")
    .replace(/\s+/g, " ")
    .toLowerCase();
}

/** Every word that names a term: names and aliases, as compared. */
const WORDS: ReadonlyMap<string, TermName> = new Map(
  (Object.entries(GLOSSARY) as [TermName, Entry<unknown, unknown>][]).flatMap(([term, { aliases }]) =>
    [term, ...aliases].map((word): [string, TermName] => [plainName(word), term]),
  ),
);

/** The term that a name stands for, or undefined. */
export function termOf(name: string): TermName | undefined {
  return WORDS.get(plainName(name));
}

/** Names from this length on may be two edits off and still be asked about. */
const LONG = 8;

/** The term whose name or alias is within an edit of a name (two from eight letters on), or undefined. */
export function nearTerm(name: string): TermName | undefined {
  const word = plainName(name);
  const reach = word.length >= LONG ? 2 : 1;
  if (word.length < 4) return undefined;
  let best: TermName | undefined;
  let least = reach + 1;
  for (const [known, term] of WORDS) {
    if (Math.abs(known.length - word.length) > reach || known.length < 4) continue;
    const off = edits(word, known, least);
    if (off < least) [best, least] = [term, off];
  }
  return best;
}

/** Edits between two words (a swap of neighbors is one); `limit` or more where they are further apart. */
export function edits(a: string, b: string, limit: number): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        cost = Math.min(cost, (before[j - 2] ?? 0) + 1);
      }
      row.push(cost);
    }
    if (Math.min(...row) >= limit) return limit;
    [before, last] = [last, row];
  }
  return last[b.length] ?? limit;
}
