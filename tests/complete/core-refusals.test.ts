import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { positional, refusedArguments } from "../../src/functions/declare/formula.ts";
import { registry } from "../../src/functions/registry.ts";
import { readArguments } from "../../src/functions/run/arguments.ts";
import UNLISTED from "./unlisted-refusals.json" with { type: "json" };

const top = new URL("../../", import.meta.url).pathname;
const KIT = "core/kit/refusal.ts";
const THROWS = /new (?:BadInput|OutOfRange)\(/;

function sources(): readonly string[] {
  const files = readdirSync(`${top}src/core`, { recursive: true, encoding: "utf8" });
  return files.filter((file) => file.endsWith(".ts")).map((file) => `src/core/${file.replaceAll("\\", "/")}`);
}

/**
 * Places in the core that refuse, by file and line, each with the words that it begins with. Limits held by `within` are left out: the declaration states
 * the same ones, and tests/functions/limits.test.ts holds it to them.
 */
function sites(): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const path of sources()) {
    const file = path.replace(/^src\//, "");
    if (file === KIT) continue;
    const lines = readFileSync(`${top}${path}`, "utf8").split("\n");
    lines.forEach((line, i) => {
      if (!THROWS.test(line) || /^\s*(?:\*|\/\/|import)/.test(line)) return;
      const words = /["`](.{3,60}?)(?:["`]|\$\{)/.exec(
        [line, lines[i + 1], lines[i + 2]].join(" ").slice(line.search(THROWS)),
      );
      found.set(`${file}:${i + 1}`, `${file}: ${words?.[1]?.trim() ?? line.trim()}`);
    });
  }
  return found;
}

/** The place in the sources that a refusal comes from. */
function placeOf(error: unknown): string | undefined {
  const frames = [...String((error as Error).stack).matchAll(/src\/((?:core|functions)\/[\w/.-]+\.ts):(\d+)/g)];
  const [, file, line] = frames.find(([, file]) => file !== KIT) ?? [];
  return file === undefined ? undefined : `${file}:${line}`;
}

function listed(): ReadonlySet<string> {
  const places = new Set<string>();
  for (const fn of registry) {
    for (const refused of fn.refuses) {
      try {
        const raw = positional(fn, refusedArguments(fn, refused));
        fn.run(readArguments(fn, raw, { assume: () => {}, caution: () => {} }, undefined), undefined);
      } catch (error) {
        const place = placeOf(error);
        if (place !== undefined) places.add(place);
      }
    }
  }
  return places;
}

test("each refusal of the core is shown by a function's refuses, or stands with the reason why it is not", () => {
  const known = new Set<string>(Object.values(UNLISTED as Readonly<Record<string, readonly string[]>>).flat());
  const shown = listed();
  expect(shown.size).toBeGreaterThan(150);
  const all = sites();
  const silent = [...all].filter(([place]) => !shown.has(place)).map(([, words]) => words);
  expect(silent.filter((words) => !known.has(words))).toEqual([]);
  // What is shown by now, or gone, leaves the list.
  expect([...known].filter((words) => !silent.includes(words))).toEqual([]);
});
