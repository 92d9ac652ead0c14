import type { Said } from "../../core/kit/refusal.ts";
import type { CellFunction } from "../../functions/declare/cell-function.ts";
import type { CellAddress } from "../../workbook/ledger.ts";
import type { SurveyedCell } from "./survey.ts";

export interface FoundError {
  readonly address: CellAddress;
  readonly fn: CellFunction;
  readonly code: string;
  readonly said: Said;
}

/** One sentence with the cells that it holds for. */
export interface FoundSentence {
  readonly sentence: string;
  readonly functions: readonly string[];
  readonly cells: readonly CellAddress[];
}

/** Sentences by the family of the first function that carries them, in the order of the functions. */
export function familiesOf(
  list: readonly FoundSentence[],
  functions: readonly CellFunction[],
): readonly (readonly [family: string, own: readonly FoundSentence[]])[] {
  const order = [...new Set(functions.map(({ family }) => family))];
  const familyOf = ({ functions: [first] }: FoundSentence) => functions.find(({ name }) => name === first)?.family;
  return order.flatMap((family) => {
    const own = list.filter((found) => familyOf(found) === family);
    return own.length === 0 ? [] : [[family, own] as const];
  });
}

/** All that the view says, in the order in which it says it. */
export interface Findings {
  readonly cells: number;
  readonly errors: readonly FoundError[];
  /** standards of which the workbook mixes editions, one sentence each, with the cells of the rarer ones */
  readonly mixed: readonly FoundSentence[];
  /** cautions that the inputs or the method of a cell brought up */
  readonly inputCautions: readonly FoundSentence[];
  /** cautions that hold for every use of a function */
  readonly standingCautions: readonly FoundSentence[];
  readonly assumptions: readonly FoundSentence[];
  readonly sources: readonly FoundSentence[];
}

/** Sentences with the functions and cells that carry them. Cells are added one after the other, so a cell that comes again comes at once. */
class Gathered {
  readonly #groups = new Map<string, { functions: Set<string>; cells: CellAddress[] }>();

  add(sentence: string, fn: CellFunction, address: CellAddress): void {
    const group = this.#groups.get(sentence);
    if (group === undefined) {
      this.#groups.set(sentence, { functions: new Set([fn.name]), cells: [address] });
      return;
    }
    group.functions.add(fn.name);
    if (group.cells.at(-1) !== address) group.cells.push(address);
  }

  /** Those that most cells carry first; ties in the order in which they came up. */
  list(): FoundSentence[] {
    return [...this.#groups]
      .map(([sentence, g]) => ({ sentence, functions: [...g.functions], cells: g.cells }))
      .sort((a, b) => b.cells.length - a.cells.length);
  }
}

/**
 * Gathers what the cells carry, cell by cell. Weight: an error before a caution that the inputs brought up, that before a caution that
 * stands for the function whatever its inputs, that before an assumption.
 */
export class Gathering {
  readonly #errors: FoundError[] = [];
  readonly #inputCautions = new Gathered();
  readonly #standingCautions = new Gathered();
  readonly #assumptions = new Gathered();
  readonly #sources = new Gathered();
  /** by standard, then by edition */
  readonly #editions = new Map<string, Map<string, Gathered>>();
  #cells = 0;

  get cells(): number {
    return this.#cells;
  }

  add({ address, calls }: SurveyedCell): void {
    this.#cells++;
    for (const { fn, outcome, ...found } of calls) {
      if (!outcome.ok) this.#errors.push({ address, fn, code: outcome.code, said: outcome.said });
      for (const s of found.cautions) {
        (fn.cautions.includes(s) ? this.#standingCautions : this.#inputCautions).add(s, fn, address);
      }
      for (const s of found.assumptions) this.#assumptions.add(s, fn, address);
      for (const s of fn.sources) this.#sources.add(s, fn, address);
      for (const [standard, edition] of found.editions) this.#edition(standard, edition, fn, address);
    }
  }

  #edition(standard: string, edition: string, fn: CellFunction, address: CellAddress): void {
    const editions = this.#editions.get(standard) ?? new Map<string, Gathered>();
    this.#editions.set(standard, editions);
    const group = editions.get(edition) ?? new Gathered();
    editions.set(edition, group);
    group.add(edition, fn, address);
  }

  /** A workbook goes by one edition of a standard; where it does not, the rarer ones are named with their cells. */
  #mixed(): FoundSentence[] {
    return [...this.#editions].flatMap(([standard, editions]) => {
      const all = [...editions.values()].flatMap((g) => g.list()).sort((a, b) => b.cells.length - a.cells.length);
      const [most, ...rest] = all;
      if (most === undefined) return [];
      return rest.map((r) => ({
        ...r,
        sentence: `Mixed editions: ${standard} ${r.sentence} in these cells, ${most.sentence} in the others.`,
      }));
    });
  }

  findings(): Findings {
    return {
      cells: this.#cells,
      errors: this.#errors,
      mixed: this.#mixed(),
      inputCautions: this.#inputCautions.list(),
      standingCautions: this.#standingCautions.list(),
      assumptions: this.#assumptions.list(),
      sources: this.#sources.list(),
    };
  }
}
