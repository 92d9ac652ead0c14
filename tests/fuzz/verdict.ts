import { sentence } from "../../src/core/kit/refusal.ts";
import type { Cell, Table } from "../../src/core/kit/tape.ts";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import type { RawArgument } from "../../src/functions/declare/raw.ts";
import { explain, invoke } from "../../src/functions/run/invoke.ts";

/** Longest answer of a function that is not a search, in milliseconds. */
export const SLOWEST_MS = 500;
/** Longest sentence that a cell's message can show well. */
const LONGEST_SENTENCE = 1000;

/** What is wrong with the answer of a call, or undefined. @param clock false where a busy machine must not fail a test */
export function faultOf(fn: CellFunction, args: readonly RawArgument[], clock: boolean): string | undefined {
  const started = performance.now();
  const outcome = invoke(fn, args);
  const ms = performance.now() - started;
  if (clock && !fn.heavy && ms > SLOWEST_MS) return `it took ${Math.round(ms)} ms`;
  // A wall may be called Infinity: its name is not the program's.
  const typed = JSON.stringify(args).includes('"Infinity"');
  if (!outcome.ok) return sentenceFault(sentence(outcome.said).replaceAll(typed ? "Infinity" : "\u0000", "it"));
  const cells = Array.isArray(outcome.value) ? (outcome.value as Table).flat() : [outcome.value as Cell];
  const wrong = cells.find((cell) =>
    typeof cell === "number" ? !Number.isFinite(cell) : typeof cell !== "boolean" && !isText(cell),
  );
  if (wrong !== undefined) return `it gives ${String(wrong)}`;
  if (fn.heavy) return undefined;
  const again = explain(fn, args);
  if (JSON.stringify(again.outcome) !== JSON.stringify(outcome)) return "with its working it gives another answer";
  return [...again.assumptions, ...again.cautions].map(textFault).find((fault) => fault !== undefined);
}

function isText(cell: Cell): boolean {
  return typeof cell === "string" && textFault(cell) === undefined && cell.length <= 32_767;
}

function textFault(text: string): string | undefined {
  return /undefined|\bNaN\b|\[object/.test(text) ? `it says ${text.slice(0, 200)}` : undefined;
}

function sentenceFault(text: string): string | undefined {
  if (/fault of the program|undefined|\[object|\bInfinity\b(?!")/.test(text)) return `it says ${text.slice(0, 300)}`;
  if (!/^\S.*: .+\. .+\.$/s.test(text)) return `its sentence lacks a part: ${text.slice(0, 200)}`;
  return text.length > LONGEST_SENTENCE
    ? `its sentence has ${text.length} characters: ${text.slice(0, 200)}`
    : undefined;
}
