import type { CellFunction } from "../functions/declare.ts";
import type { CellAddress } from "../hosts/ledger.ts";
import type { SurveyedCell } from "./survey.ts";

export interface FoundError {
  readonly address: CellAddress;
  readonly fn: CellFunction;
  readonly code: string;
  readonly says: string;
}

/** One sentence with the cells that it holds for. */
export interface FoundSentence {
  readonly sentence: string;
  readonly functions: readonly string[];
  readonly cells: readonly CellAddress[];
}

export interface FoundSource {
  readonly source: string;
  readonly functions: readonly string[];
  readonly cells: readonly CellAddress[];
}

/** All that a review says, in the order in which it says it. */
export interface Findings {
  readonly cells: number;
  readonly errors: readonly FoundError[];
  /** cautions that the inputs or the method of a cell brought up */
  readonly inputCautions: readonly FoundSentence[];
  /** cautions that hold for every use of a function */
  readonly standingCautions: readonly FoundSentence[];
  readonly assumptions: readonly FoundSentence[];
  readonly sources: readonly FoundSource[];
}

class Gathered {
  readonly #groups = new Map<string, { functions: Set<string>; cells: Set<CellAddress> }>();

  add(sentence: string, fn: CellFunction, address: CellAddress): void {
    const group = this.#groups.get(sentence) ?? { functions: new Set(), cells: new Set() };
    group.functions.add(fn.name);
    group.cells.add(address);
    this.#groups.set(sentence, group);
  }

  /** Those that most cells carry first; ties in the order in which they came up. */
  list(): FoundSentence[] {
    return [...this.#groups]
      .map(([sentence, g]) => ({ sentence, functions: [...g.functions], cells: [...g.cells] }))
      .sort((a, b) => b.cells.length - a.cells.length);
  }
}

/**
 * Gathers what the cells carry. Weight: an error before a caution that the inputs brought up, that before a caution that
 * stands for the function whatever its inputs, that before an assumption.
 */
export function gather(cells: readonly SurveyedCell[]): Findings {
  const errors: FoundError[] = [];
  const inputCautions = new Gathered();
  const standingCautions = new Gathered();
  const assumptions = new Gathered();
  const sources = new Gathered();
  for (const { address, calls } of cells) {
    for (const { fn, outcome, ...found } of calls) {
      if (!outcome.ok) errors.push({ address, fn, code: outcome.code, says: outcome.says });
      for (const s of found.cautions) (fn.cautions.includes(s) ? standingCautions : inputCautions).add(s, fn, address);
      for (const s of found.assumptions) assumptions.add(s, fn, address);
      for (const s of fn.sources) sources.add(s, fn, address);
    }
  }
  return {
    cells: cells.length,
    errors,
    inputCautions: inputCautions.list(),
    standingCautions: standingCautions.list(),
    assumptions: assumptions.list(),
    sources: sources.list().map(({ sentence, ...rest }) => ({ source: sentence, ...rest })),
  };
}
