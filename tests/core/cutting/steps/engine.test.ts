import { expect, test } from "vitest";
import { ColumnGeneration } from "../../../../src/core/cutting/engine/column-generation.ts";
import { dualFeasible } from "../../../../src/core/cutting/engine/dual-feasible.ts";
import { Effort } from "../../../../src/core/cutting/engine/effort.ts";
import { cutsOf, withCuts } from "../../../../src/core/cutting/engine/integer/cuts.ts";
import type { IntegerProgram, Variable } from "../../../../src/core/cutting/engine/integer/program.ts";
import { Relaxation } from "../../../../src/core/cutting/engine/integer/relaxation.ts";
import { solveInteger } from "../../../../src/core/cutting/engine/integer/solve.ts";
import { inverseOf } from "../../../../src/core/cutting/engine/inverse.ts";
import { Master } from "../../../../src/core/cutting/engine/master.ts";
import { cuttingProblem } from "../../../../src/core/cutting/engine/problem.ts";
import { rankedCosts } from "../../../../src/core/cutting/engine/ranked.ts";
import { LengthPricer, lengthColumn } from "../../../../src/core/cutting/lengths/model/pricing.ts";
import { Random } from "../../../../src/core/kit/random.ts";
import { bar, each, lengthsOf, limitsOf, needsOf, ran, someLengths, sumOf } from "./ran.ts";

const SEEDS = [1, 2, 3, 4, 5, 6];

/** An integer program with a plan, so that there is something to find. */
function someProgram(seed: number, rows: number, variables: number): IntegerProgram {
  const random = new Random(seed);
  const totals = new Array<number>(rows).fill(0);
  const made = Array.from({ length: variables }, (_, j): Variable => {
    const at = Array.from({ length: rows }, (_, r) => r).filter(() => random.unit() < 0.5);
    const own = at.length > 0 ? at : [j % rows];
    const entries = own.map(() => 1 + random.below(4));
    const planned = random.below(3);
    own.forEach((r, k) => {
      totals[r]! += planned * entries[k]!;
    });
    return { cost: 3 + random.below(9), most: 2 + random.below(5), rows: own, entries, first: random.unit() < 0.2 };
  });
  const over = totals.map((_, r): Variable => ({ cost: 0, most: 9, rows: [r], entries: [-1] }));
  return { totals, variables: [...made, ...over], costStep: 1 };
}

test("integer programs", () => {
  const lines = each(SEEDS, (seed) => ran(1e6, (e) => solveInteger(someProgram(seed, 4 + seed, 8 + 2 * seed), 1e6, e)));
  expect(lines).toMatchSnapshot();
});

test("integer programs with a goal below what there is, and with little effort", () => {
  const lines = each(SEEDS, (seed) => {
    const program = someProgram(seed, 3 + seed, 7 + 2 * seed);
    const { counts } = solveInteger(program, 1e6, new Effort(1e7));
    const cost = counts!.reduce((sum, n, j) => sum + n * program.variables[j]!.cost, 0);
    return `${cost}; ${ran(1e7, (e) => solveInteger(program, cost - 1, e))}; ${ran(3000, (e) => solveInteger(program, cost, e))}`;
  });
  expect(lines).toMatchSnapshot();
});

test("relaxations, tightened and branched", () => {
  const lines = each(SEEDS, (seed) =>
    ran(1e7, (e) => {
      const node = new Relaxation(someProgram(seed, 5 + seed, 12 + seed));
      const said = [node.solve(1e6, e), node.cost, node.values(), node.fractions()];
      const [first] = node.fractions();
      const row = first === undefined ? [] : node.multipliers(first.row);
      node.tighten(node.cost + 4);
      const bounds = [node.low.slice(), node.high.slice()];
      const child = node.copy();
      if (first) child.low[first.variable] = Math.ceil(first.value);
      const up = [child.solve(1e6, e), child.cost, child.values()];
      const other = node.copy();
      if (first) other.high[first.variable] = Math.floor(first.value);
      return [said, row, bounds, up, other.solve(1e6, e), other.cost, other.values(), node.values()];
    }),
  );
  expect(lines).toMatchSnapshot();
});

test("many pivots of one relaxation", () => {
  const text = ran(1e8, (e) => {
    const program = someProgram(77, 14, 60);
    const node = new Relaxation(program);
    const random = new Random(3);
    const seen = [];
    for (let n = 0; n < 60; n++) {
      const j = random.below(program.variables.length);
      node.low[j] = 0;
      node.high[j] = random.below(3);
      seen.push(node.solve(1e6, e), node.cost.toPrecision(6));
    }
    return seen;
  });
  expect(text).toMatchSnapshot();
});

test("cuts", () => {
  const lines = each(SEEDS, (seed) =>
    ran(1e7, (e) => {
      const program = someProgram(seed, 5 + seed, 12 + seed);
      const node = new Relaxation(program);
      node.solve(1e6, e);
      const cuts = cutsOf(program, node, e);
      const tighter = new Relaxation(withCuts(program, cuts));
      return [cuts, withCuts(program, cuts), tighter.solve(1e6, e), tighter.cost];
    }),
  );
  expect(lines).toMatchSnapshot();
});

test("inverses", () => {
  const lines = each(SEEDS, (seed) => {
    const random = new Random(seed);
    const m = 2 + seed;
    const a = Array.from({ length: m }, () => Array.from({ length: m }, () => Math.max(0, random.below(9) - 2)));
    return sumOf(inverseOf(m, (c) => a[c]!.flatMap((v, r) => (v === 0 ? [] : [[r, v] as const]))) ?? "none");
  });
  expect(lines).toMatchSnapshot();
});

test("dual-feasible functions", () => {
  const lines = each(SEEDS, (seed) => {
    const random = new Random(seed);
    const c = 40 + random.below(60);
    const sizes = Array.from({ length: 5 + seed }, () => 1 + random.below(c));
    const all = Float64Array.from(sizes.flatMap((s) => new Array<number>(1 + random.below(3)).fill(s))).sort();
    const rows = dualFeasible(sizes, all, c);
    return `${rows.length} ${sumOf(rows)}`;
  });
  expect(lines).toMatchSnapshot();
});

test("many sizes: the functions are thinned out", () => {
  const random = new Random(9);
  const sizes = Array.from({ length: 150 }, () => 20 + random.below(900));
  const rows = dualFeasible(sizes, Float64Array.from(sizes).sort(), 1000);
  expect(`${rows.length} ${sumOf(rows)}`).toMatchSnapshot();
});

const FEW = (seed: number) =>
  lengthsOf(
    someLengths(seed, 6 + seed, [9, 61], 5),
    [bar(100, 3), bar(70, 2, seed), bar(61, 1, 2)].slice(0, 1 + (seed % 3)),
    { goal: "cost" },
  );

test("the master problem, column after column", () => {
  const lines = each(SEEDS, (seed) => {
    const model = FEW(seed);
    const { needs, limits, limited } = cuttingProblem(model);
    const master = new Master(needs, limits, limited, 1e6);
    const random = new Random(seed);
    const seen = [];
    for (let n = 0; n < 90; n++) {
      const stock = random.below(model.stocks.length);
      const counts = needs.map(() => Math.max(0, random.below(6) - 3));
      if (counts.some((k) => k > 0)) master.add(lengthColumn(stock, model.stocks[stock]!.cost, counts));
      if (n % 9 === 0) {
        master.solve(500);
        seen.push(master.pivots, master.objective, master.duals.slice(), master.solution());
        seen.push(model.stocks.map((_, s) => master.stockDual(s)));
      }
      if (n % 27 === 0) {
        master.setNeeds(
          needs.map((k) => random.below(k + 2)),
          limits.map((k) => random.below(k + 1)),
        );
      }
    }
    return `${master.pivots} pivots, ${master.rows} rows, ${sumOf(seen)}`;
  });
  expect(lines).toMatchSnapshot();
});

test("column generation, with and without smoothing", () => {
  const lines = each(
    SEEDS.flatMap((seed) => [0, 0.6].map((smoothing) => ({ seed, smoothing }))),
    ({ seed, smoothing }) => {
      const model = FEW(seed);
      const made = new ColumnGeneration(cuttingProblem(model), new LengthPricer(model), { smoothing, stepsPerUnit: 3 });
      const first = ran(1e7, (e) => made.run(needsOf(model), limitsOf(model), true, 0, e));
      const { master } = made;
      return `${first}; ${made.bound.toPrecision(8)} ${made.leastCost} ${master.columns.length} columns ${master.pivots} pivots ${sumOf(master.columns)}`;
    },
  );
  expect(lines).toMatchSnapshot();
});

test("column generation with columns offered, a goal, and little effort", () => {
  const lines = each(SEEDS, (seed) => {
    const model = FEW(seed);
    const other = new ColumnGeneration(cuttingProblem(model), new LengthPricer(model), {
      smoothing: 0,
      stepsPerUnit: 1,
    });
    const short = ran(400 * seed, (e) => other.run(needsOf(model), limitsOf(model), true, 0, e));
    other.run(needsOf(model), limitsOf(model), true, 0, new Effort(1e7));
    const made = new ColumnGeneration(cuttingProblem(model), new LengthPricer(model), {
      smoothing: 0.3,
      stepsPerUnit: 1,
    });
    for (const c of other.master.columns) for (let n = 0; n < 9; n++) made.offer({ ...c, cost: c.cost * (1 + n) });
    const all = ran(1e7, (e) => made.run(needsOf(model), limitsOf(model), true, 0, e, other.leastCost));
    return `${short}; ${all}; ${made.bound.toPrecision(8)} ${made.master.columns.length} ${sumOf(made.master.columns)}`;
  });
  expect(lines).toMatchSnapshot();
});

test("dives", () => {
  const lines = each(
    SEEDS.flatMap((seed) => [0, 0.4].map((noise) => ({ seed, noise }))),
    ({ seed, noise }) => {
      const model = FEW(seed);
      const made = new ColumnGeneration(cuttingProblem(model), new LengthPricer(model), {
        smoothing: 0,
        stepsPerUnit: 1,
      });
      made.run(needsOf(model), limitsOf(model), true, 0, new Effort(1e7));
      const asked: unknown[] = [];
      const text = ran(1e7, (effort, random) =>
        made.dive({
          target: made.leastCost + (seed % 2) * model.costStep,
          random,
          noise,
          finish: (needs, limits, cost, e) => {
            asked.push([...needs], [...limits], cost);
            e.spend(10);
            return undefined;
          },
          effort,
          returns: seed,
          slack: seed % 3 === 0 ? 0.2 * model.costStep : 0,
        }),
      );
      return `${text}; ${asked.length} ${sumOf(asked)}`;
    },
  );
  expect(lines).toMatchSnapshot();
});

test("ranked costs", () => {
  const lines = each(SEEDS, (seed) => {
    const random = new Random(seed);
    const stocks = Array.from({ length: 4 }, (_, index) => ({
      cost: 2 * random.below(5),
      price: 25 * random.below(9),
      size: 40 + random.below(90),
      index: index === 3 && seed > 3 ? -1 : index,
    }));
    return rankedCosts(stocks, [0, 1, 1, 2]).join(" ");
  });
  expect(lines).toMatchSnapshot();
});
