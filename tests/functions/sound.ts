import { expect } from "vitest";
import { sentence } from "../../src/core/kit/refusal.ts";
import type { Cell, Table } from "../../src/core/kit/tape.ts";
import type { Outcome } from "../../src/functions/run/invoke.ts";

/** Every outcome is a value that a cell can hold, or a sentence for a person. */
export function expectSound(outcome: Outcome, call: string): void {
  if (outcome.ok) {
    const cells = Array.isArray(outcome.value) ? (outcome.value as Table).flat() : [outcome.value as Cell];
    for (const cell of cells) {
      const sound = typeof cell === "number" ? Number.isFinite(cell) : ["string", "boolean"].includes(typeof cell);
      expect(sound, `${call} gives ${String(cell)}`).toBe(true);
    }
    return;
  }
  expect(sentence(outcome.said), call).not.toMatch(/fault of the program|undefined|NaN|Infinity|\[object/);
  // what: why. what to do.
  expect(sentence(outcome.said), call).toMatch(/^\S.*: .+\. .+\.$/s);
}
