import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { registry } from "../../src/functions/registry.ts";
import { explain } from "../../src/functions/run/invoke.ts";
import { coreCalls, coreGraph, filesBelow, top } from "./declarations.ts";
import { EXEMPT, type Rule } from "./exempt.ts";

const calls = coreCalls();
const graph = coreGraph();
const texts = new Map(filesBelow("tests", ".test.ts").map((file) => [file, readFileSync(join(top, file), "utf8")]));
const GENERIC =
  /^tests\/(functions\/(examples|inputs|basis|declare|run)|complete|publish|hosts|pane|workbook|templates|browser)[/.]/;

/** A published row may check the formula that a calculation rests on. */
const DEPTH_OF_ROWS = 2;

/** Test files that call a function: by its name in cells, or by a name of the core that its calculation calls, or calls through so many more. */
function filesThatCall(fn: CellFunction, depth = 0): string[] {
  let names = [...(calls.get(fn.name) ?? [])];
  for (let i = 0; i < depth; i++) names = [...new Set(names.flatMap((n) => [n, ...(graph.get(n) ?? [])]))];
  const word = new RegExp(`\\b(${[fn.name, ...names].join("|")})\\b`);
  return [...texts].filter(([file, text]) => !GENERIC.test(file) && word.test(text)).map(([file]) => file);
}

/** What a source says where there is no print. */
const WORDS_FOR_NONE = /from memory|common practice|exact arithmetic|trigonometry|definition|by the user|office's own/i;

const RULES: Readonly<Record<Rule, (fn: CellFunction) => boolean>> = {
  "a test": (fn) => filesThatCall(fn).length > 0,
  "a property": (fn) => filesThatCall(fn).some((file) => /\bfc\./.test(texts.get(file) ?? "")),
  "a published row, or the words for none": (fn) =>
    filesThatCall(fn, DEPTH_OF_ROWS).some((file) => file.startsWith("tests/published/")) ||
    WORDS_FOR_NONE.test([...fn.sources, ...fn.assumptions, fn.example.source].join(" ")),
  "its words": (fn) => fn.summary.length > 20 && fn.returns.says !== "" && fn.params.every((p) => p.param.says !== ""),
};

/** Numbers of a sentence: 4-1/2, 1/16, 0.85, and 80% as 0.8. */
function numbersIn(sentence: string): number[] {
  return [...sentence.matchAll(/(?:(\d+)-)?(\d+(?:\.\d+)?)(?:\/(\d+))?/g)].flatMap(([, whole = "0", a = "0", b]) => {
    const value = Number(whole) + Number(a) / Number(b ?? 1);
    return [value, value / 100, 1 / value, Number(b ?? value)];
  });
}

describe.each(registry.map((fn) => [fn.name, fn] as const))("%s has", (name, fn) => {
  test.each(Object.entries(RULES))("%s", (rule, holds) => {
    const exempt = EXEMPT.some((e) => e.function === name && e.rule === rule);
    expect(holds(fn), exempt ? "the exemption is no longer needed: take it out" : `${name} lacks ${rule}`).toBe(
      !exempt,
    );
  });

  test("a last step in the declared unit, and says nothing twice", () => {
    const { steps, assumptions, cautions } = explain(fn, positional(fn, fn.example.args));
    if (fn.returns.kind === "number" && fn.returns.unit !== "") expect(steps.at(-1)?.unit).toBe(fn.returns.unit);
    for (const list of [assumptions, cautions]) {
      const plain = list.map((s) => s.toLowerCase().replace(/[^a-z0-9]/g, ""));
      expect(plain.filter((s, i) => plain.indexOf(s) !== i)).toEqual([]);
    }
  });

  test("stand-ins that pass their own readers and write their own sentences", () => {
    for (const { name: at, param } of [...fn.params, ...fn.named]) {
      if (!("standIn" in param) || param.standIn === undefined) continue;
      const { standIn, omitted } = param as { standIn: unknown; omitted: string };
      if (typeof standIn !== "number" && typeof standIn !== "string") continue;
      const notes = { assume: () => {}, caution: () => {} };
      expect(
        () => param.read(standIn === 0 ? "none" : (standIn as never), at, notes),
        `${fn.name} ${at}`,
      ).not.toThrow();
      if (typeof standIn !== "number") continue;
      const values = numbersIn(omitted);
      if (values.length === 0) continue;
      expect(values.some((v) => Math.abs(v - standIn) < 1e-9) || standIn === 0, `${fn.name} ${at}: ${omitted}`).toBe(
        true,
      );
    }
  });
});
