import type { Random } from "../../kit/random.ts";
import { at } from "./at.ts";
import type { Effort } from "./effort.ts";
import type { Column } from "./master.ts";
import type { CuttingProblem, Finish, Generation } from "./problem.ts";

/** Columns tried at one step before the dive goes back further. */
const WIDTH = 3;

export interface DiveRequest {
  /** the most that the plan may cost */
  readonly target: number;
  readonly random: Random;
  /** weight of chance against the value of a column; 0: none */
  readonly noise: number;
  /** tries to cut the rest within a cost by other means */
  readonly finish: Finish;
  readonly effort: Effort;
  /** how often the dive may go back */
  readonly returns: number;
  /** how far past the target the linear solution may be, for a pricer that may have missed columns */
  readonly slack: number;
}

/** What is cut so far, and what is still needed. */
interface State {
  readonly needs: number[];
  readonly limits: number[];
  readonly taken: Column[];
  cost: number;
}

/** A place where one of several columns was taken. */
interface Fork {
  readonly state: State;
  /** columns not to be taken from here on: the plans with them were looked for before */
  readonly shut: Set<number>;
  tried: number;
  chosen: number;
}

const copy = (s: State): State => ({ ...s, needs: [...s.needs], limits: [...s.limits], taken: [...s.taken] });

/**
 * Rounds the linear solution step by step: whole multiples are taken, then the column nearest to one more; the rest is
 * solved again. Where that leads past the target, the last steps are taken back and the next best column is tried
 * (diving with a tabu list: R. Sadykov et al., INFORMS J. Comput. 31 (2019) 251-267, from memory).
 * @returns the columns, or undefined where none were found within the target
 */
export function dive(
  generation: Generation,
  problem: CuttingProblem,
  { target, random, noise, finish, effort, returns, slack }: DiveRequest,
): Column[] | undefined {
  const { master } = generation;
  const forks: Fork[] = [];
  let state: State = { needs: [...problem.needs], limits: [...problem.limits], taken: [], cost: 0 };
  let fork: Fork | undefined;
  let shut = new Set<number>();

  const take = (j: number): void => {
    const column = at(master.columns, j);
    column.types.forEach((t, k) => {
      state.needs[t] = Math.max(0, at(state.needs, t) - at(column.counts, k));
    });
    state.limits[column.stock] = Math.max(0, at(state.limits, column.stock) - 1);
    state.taken.push(column);
    state.cost += column.cost;
  };

  const end = (): Column[] | undefined => {
    if (state.cost > target) return undefined;
    const rest = finish(state.needs, state.limits, target - state.cost, effort);
    return rest && [...state.taken, ...rest];
  };

  /** The column to take next; -1 where the target is out of reach or all were tried. */
  const choose = (used: readonly Use[]): number => {
    let best = -1;
    let bestScore = 0;
    for (const { column, value } of used) {
      if (shut.has(column)) continue;
      const score = value + noise * random.unit();
      if (score > bestScore) {
        bestScore = score;
        best = column;
      }
    }
    return best;
  };

  for (let back = 0; ; ) {
    if (state.needs.every((n) => n === 0)) return state.cost <= target ? state.taken : undefined;
    generation.run(state.needs, state.limits, false, target - state.cost - slack * 2, effort);
    if (effort.over) return undefined;
    const within = state.cost <= target && state.cost + generation.stepUp(master.objective - slack) <= target;
    const used = within ? master.solution() : [];
    const before = state.taken.length;
    for (const { column, value } of used) {
      for (let k = Math.floor(value + 1e-6); k > 0 && serves(at(master.columns, column), state.needs); k--)
        take(column);
    }
    if (state.taken.length > before) {
      fork = undefined;
      const plan = end();
      if (plan) return plan;
      continue;
    }
    const best = choose(used);
    if (best >= 0) {
      if (!fork) forks.push({ state: copy(state), shut, tried: 0, chosen: best });
      else fork.chosen = best;
      fork = undefined;
      take(best);
      const plan = end();
      if (plan) return plan;
      continue;
    }
    if (fork) forks.pop();
    while (forks.length > 0 && at(forks, forks.length - 1).tried + 1 >= WIDTH) forks.pop();
    fork = forks[forks.length - 1];
    if (!fork || back++ >= returns) return undefined;
    fork.tried++;
    fork.shut.add(fork.chosen);
    state = copy(fork.state);
    shut = new Set(fork.shut);
  }
}

type Use = { readonly column: number; readonly value: number };

/** A column that no part needs any more is left, however much of it a badly conditioned solution asks for. */
const serves = (column: Column, needs: readonly number[]): boolean => column.types.some((t) => at(needs, t) > 0);
