import { sentence } from "../../src/core/kit/refusal.ts";
import type { Cell, Table } from "../../src/core/kit/tape.ts";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import type { RawArgument } from "../../src/functions/declare/raw.ts";
import { explain, invoke } from "../../src/functions/run/invoke.ts";

/** Longest answer of a function that is not a search, in milliseconds. */
const SLOWEST_MS = 500;
/** Longest sentence that a cell's message can show well. */
const LONGEST_SENTENCE = 1000;
const LONGEST_CELL = 32_767;

/** What is wrong with the answer of a call, or undefined. @param clock false where a busy machine must not fail a test */
export function faultOf(fn: CellFunction, args: readonly RawArgument[], clock: boolean): string | undefined {
  const before = process.cpuUsage();
  const outcome = invoke(fn, args);
  const { user } = process.cpuUsage(before);
  if (clock && !fn.heavy && user / 1000 > SLOWEST_MS) return `it took ${Math.round(user / 1000)} ms`;
  // A wall may be called NaN: its name is not the program's.
  const typed = JSON.stringify(args);
  const words = ["NaN", "Infinity", "undefined", "[object"].filter((word) => !typed.includes(word));
  const faulty = (text: string) => words.some((word) => text.includes(word));
  if (!outcome.ok) return sentenceFault(sentence(outcome.said), faulty);
  const cells = Array.isArray(outcome.value) ? (outcome.value as Table).flat() : [outcome.value as Cell];
  const wrong = cells.find((cell) => !isSound(cell, faulty));
  if (wrong !== undefined) return `it gives ${String(wrong)}`;
  if (fn.heavy) return undefined;
  const shown = explain(fn, args);
  if (JSON.stringify(shown.outcome) !== JSON.stringify(outcome)) return "with its working it gives another answer";
  const said = [...shown.assumptions, ...shown.cautions].find(faulty);
  return said === undefined ? undefined : `it says ${said.slice(0, 200)}`;
}

type Faulty = (text: string) => boolean;

function isSound(cell: Cell, faulty: Faulty): boolean {
  if (typeof cell === "number") return Number.isFinite(cell);
  return typeof cell === "boolean" || (typeof cell === "string" && cell.length <= LONGEST_CELL && !faulty(cell));
}

function sentenceFault(text: string, faulty: Faulty): string | undefined {
  if (/fault of the program/.test(text) || faulty(text)) return `it says ${text.slice(0, 300)}`;
  if (!/^\S.*: .+\. .+\.$/s.test(text)) return `its sentence lacks a part: ${text.slice(0, 200)}`;
  return text.length > LONGEST_SENTENCE
    ? `its sentence has ${text.length} characters: ${text.slice(0, 200)}`
    : undefined;
}
