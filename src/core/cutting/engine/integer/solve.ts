import { at } from "../at.ts";
import type { Effort } from "../effort.ts";
import { cutsOf, withCuts } from "./cuts.ts";
import type { IntegerAnswer, IntegerProgram } from "./program.ts";
import { type Fraction, Relaxation } from "./relaxation.ts";

/** Rounds of cuts before the search branches, and how many rows they may add for each row of the program. */
const ROUNDS = 30;
const CUTS_PER_ROW = 3;

/**
 * Branch and bound over the linear problem with bounded variables and cuts, which the dual simplex method solves again
 * from where the branch above left it (A. Land, A. Doig, Econometrica 28 (1960) 497-520).
 * @param most what the cost may be
 */
export function solveInteger(program: IntegerProgram, most: number, effort: Effort): IntegerAnswer {
  const { variables, costStep } = program;
  const asked = variables.length;
  let counts: number[] | undefined;
  let goal = most;
  let complete = true;

  const branch = (node: Relaxation): void => {
    const end = effort.over ? "unknown" : node.solve(goal + costStep * 1e-3, effort);
    if (end === "unknown") complete = false;
    if (end !== "optimal") return;
    const next = branching(program, node.fractions());
    if (next === undefined) {
      counts = Array.from(node.values().subarray(0, asked), Math.round);
      goal = counts.reduce((sum, n, j) => sum + n * at(variables, j).cost, 0) - costStep;
      return;
    }
    node.tighten(goal + costStep * 1e-3);
    const { variable, value } = next;
    const up = value - Math.floor(value) > 0.5;
    for (const above of [up, !up]) {
      if (!complete && effort.over) return;
      const child = node.copy();
      if (above) child.low[variable] = Math.ceil(value);
      else child.high[variable] = Math.floor(value);
      branch(child);
    }
  };

  branch(cutOff(program, most, effort));
  return { counts, complete };
}

/** The relaxation with cuts that its solutions violated. */
function cutOff(program: IntegerProgram, most: number, effort: Effort): Relaxation {
  let now = program;
  let relaxation = new Relaxation(now);
  for (let round = 0; round < ROUNDS; round++) {
    if (relaxation.solve(most, effort) !== "optimal") break;
    const cuts = cutsOf(now, relaxation, effort);
    effort.spend(20 * now.variables.length);
    if (
      cuts.length === 0 ||
      effort.over ||
      now.totals.length + cuts.length > (1 + CUTS_PER_ROW) * program.totals.length
    )
      break;
    now = withCuts(now, cuts);
    relaxation = new Relaxation(now);
  }
  return relaxation;
}

/** The variable to branch on: of the first ones, then of all, the one farthest from a whole number. */
function branching({ variables }: IntegerProgram, fractions: readonly Fraction[]): Fraction | undefined {
  const own = fractions.filter((f) => f.variable < variables.length);
  const first = own.filter((f) => at(variables, f.variable).first);
  const off = ({ value }: Fraction): number => Math.abs(value - Math.round(value));
  const some = first.length > 0 ? first : own;
  return some.reduce<Fraction | undefined>((best, f) => (best && off(best) >= off(f) ? best : f), undefined);
}
