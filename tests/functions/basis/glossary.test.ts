import { expect, test } from "vitest";
import type { Defaulted, Entry } from "../../../src/functions/basis/glossary/entry.ts";
import { GLOSSARY, SHARED_WORDS, type TermName } from "../../../src/functions/basis/glossary/index.ts";
import { plainName, termOf } from "../../../src/functions/basis/words.ts";
import { inside } from "../../../src/functions/declare/limits.ts";
import { isTerm } from "../../../src/functions/declare/param.ts";
import { keyOfTerm } from "../../../src/functions/declare/words.ts";
import { registry } from "../../../src/functions/registry.ts";

const ENTRIES = Object.entries(GLOSSARY) as [
  TermName,
  Entry<unknown, unknown> & Partial<Defaulted<unknown, unknown>>,
][];

test("each word names one term, and no shared word is one", () => {
  const words = ENTRIES.flatMap(([term, { aliases }]) => [term, ...aliases].map(plainName));
  expect(words.filter((word, i) => words.indexOf(word) !== i)).toEqual([]);
  for (const word of Object.keys(SHARED_WORDS)) expect(termOf(word), word).toBeUndefined();
  for (const word of words) expect(word.length, word).toBeGreaterThan(1);
});

test.each(ENTRIES)("%s: its default lies inside its limits", (_, { param, standIn }) => {
  if (typeof standIn === "number") expect(inside(param.limits ?? {}, standIn)).toBe(true);
  if (typeof standIn === "string" && param.choices !== undefined) expect(param.choices).toContain(standIn);
});

test("no term is a word that names a row of a table in an example", () => {
  for (const fn of registry) {
    for (const value of Object.values(fn.example.args)) {
      if (!Array.isArray(value)) continue;
      for (const [name] of value as unknown[][])
        if (typeof name === "string") expect(termOf(name), `${fn.name}: ${name}`).toBeUndefined();
    }
  }
});

test("an argument of a term is called by it", () => {
  for (const fn of registry) {
    for (const { name, param } of [...fn.params, ...fn.named]) {
      if (isTerm(param)) expect(name, fn.name).toBe(keyOfTerm(param.term));
    }
  }
});
