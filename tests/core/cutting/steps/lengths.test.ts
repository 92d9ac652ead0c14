import { describe, expect, test } from "vitest";
import { Effort } from "../../../../src/core/cutting/engine/effort.ts";
import type { Column } from "../../../../src/core/cutting/engine/master.ts";
import { coverLengths, coverProgram } from "../../../../src/core/cutting/lengths/cover/cover.ts";
import { handedDown } from "../../../../src/core/cutting/lengths/cover/handed-down.ts";
import { fallingValues, worthOf } from "../../../../src/core/cutting/lengths/cover/values.ts";
import { waysWithin } from "../../../../src/core/cutting/lengths/cover/ways.ts";
import { Demand } from "../../../../src/core/cutting/lengths/later/demand.ts";
import { laterGoals } from "../../../../src/core/cutting/lengths/later/goals.ts";
import { keepOneLong, longestRoom } from "../../../../src/core/cutting/lengths/later/leftover.ts";
import { drawnPartition, partitions } from "../../../../src/core/cutting/lengths/later/partitions.ts";
import { fewerPatterns, patternsOf } from "../../../../src/core/cutting/lengths/later/patterns.ts";
import { shareOut } from "../../../../src/core/cutting/lengths/later/share-out.ts";
import type { LengthModel } from "../../../../src/core/cutting/lengths/model/model.ts";
import { LengthPricer } from "../../../../src/core/cutting/lengths/model/pricing.ts";
import { dualFeasibleLengthBound, materialBound } from "../../../../src/core/cutting/lengths/search/bound.ts";
import { completeLengths } from "../../../../src/core/cutting/lengths/search/completion.ts";
import { LengthExchange } from "../../../../src/core/cutting/lengths/search/exchange.ts";
import { searchLengths } from "../../../../src/core/cutting/lengths/search/search.ts";
import { partSets } from "../../../../src/core/cutting/lengths/search/sets.ts";
import { startLengths } from "../../../../src/core/cutting/lengths/search/start.ts";
import { Random } from "../../../../src/core/kit/random.ts";
import { LENGTH_STEPS } from "../search-steps.ts";
import { bar, each, lengthsOf, limitsOf, needsOf, ran, someLengths, sumOf } from "./ran.ts";

const SEEDS = [1, 2, 3, 4, 5, 6];

const one = (seed: number): LengthModel => lengthsOf(someLengths(seed, 8 + 2 * seed, [12, 61], 4), [bar(120)]);
const triples = (seed: number): LengthModel =>
  lengthsOf(someLengths(seed, 24, [25, 50], 1), [bar(100, 3)], { goal: "cost" });
const several = (seed: number): LengthModel =>
  lengthsOf(someLengths(seed, 5 + seed, [12, 61], 4), [bar(96, 7.1), bar(120, 9.3), bar(144, 11.9)], { goal: "cost" });
const limited = (seed: number): LengthModel =>
  lengthsOf(someLengths(seed, 5 + seed, [12, 61], 3), [bar(96, 7), bar(120, 8, seed), bar(62, 4, 2)], { goal: "cost" });
const onHand = (seed: number): LengthModel =>
  lengthsOf(someLengths(seed, 5 + seed, [12, 55], 3), [bar(96, 7), bar(70, 0, seed), bar(56, 0, 2)]);
const short = (seed: number): LengthModel =>
  lengthsOf(someLengths(seed, 5 + seed, [12, 55], 3), [bar(96, 7, 2 + seed), bar(70, 4, 2)]);

const MODELS: Readonly<Record<string, (seed: number) => LengthModel>> = {
  one,
  triples,
  several,
  limited,
  onHand,
  short,
};
/** Seeds whose searches do not end at the first bound. */
const HARD: Readonly<Record<string, readonly number[]>> = {
  one: [4, 12, 22],
  triples: [14, 19, 30],
  several: [5, 7, 8, 2],
  limited: [1, 2, 10, 15],
  onHand: [13, 19, 25, 39],
  short: [5, 20, 26],
};
const start = (m: LengthModel) => startLengths(m, needsOf(m), limitsOf(m), new Effort(1e7));

for (const [name, model] of Object.entries(MODELS))
  describe(name, () => {
    test("model and bounds", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        return `${sumOf(m)} ${materialBound(m)} ${dualFeasibleLengthBound(m)}`;
      });
      expect(lines).toMatchSnapshot();
    });

    test("start", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        return ran(1e7, (e) => startLengths(m, needsOf(m), limitsOf(m), e));
      });
      expect(lines).toMatchSnapshot();
    });

    test("pricing", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        const random = new Random(seed);
        const values = Float64Array.from(m.types, (t) => (random.unit() < 0.1 ? 0 : t.size * 10 + random.below(90)));
        const ask = (stock: number, threshold: number) => {
          return ran(1e7, (effort) =>
            new LengthPricer(m).price({ values, stock, threshold, enough: 0, needs: needsOf(m), effort }),
          );
        };
        return m.stocks.map((s, i) => `${ask(i, 0)}; ${ask(i, s.size * 11)}`).join("; ");
      });
      expect(lines).toMatchSnapshot();
    });

    test("search", () => {
      const lines = each(HARD[name]!, (seed) => {
        const m = model(seed);
        const found = searchLengths(m, new Effort(4e5), new Random(1), false);
        return `${found.plan.cost} ${found.bound} ${found.method}: ${ran(4e5, (e, r) => searchLengths(m, e, r, false))}`;
      });
      expect(lines).toMatchSnapshot();
    });

    test("bound alone", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        return ran(1e6, (e, r) => {
          const { bound, method } = searchLengths(m, e, r, true);
          return [bound, method];
        });
      });
      expect(lines).toMatchSnapshot();
    });

    for (const step of LENGTH_STEPS)
      test(`search without ${step}`, () => {
        const lines = each(HARD[name]!.slice(0, 2), (seed) => {
          const m = model(seed);
          return ran(2e5, (e, r) => searchLengths(m, e, r, false, undefined, [step]));
        });
        expect(lines).toMatchSnapshot();
      });

    test("later goals", () => {
      const lines = each(SEEDS.slice(0, 4), (seed) => {
        const m = model(seed);
        const { columns, cost } = start(m);
        if (columns.some((c) => m.stocks[c.stock]!.index < 0)) return "not all";
        return ran(1e6, (e, r) => laterGoals(m, { columns, cost }, e, r));
      });
      expect(lines).toMatchSnapshot();
    });

    test("multipliers, ways to cut, cover", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        const { columns, cost } = start(m);
        const values = fallingValues(m, columns, new Effort(1e6))!;
        const worth = worthOf(m, values);
        const most = Math.floor(worth + 0.7 * (cost - worth));
        const made = waysWithin(m, [values], most, new Effort(1e7));
        return [
          `${worth.toPrecision(8)} ${sumOf(values)} ${sumOf(coverProgram(m, made.ways))}`,
          ran(1e6, (e) => fallingValues(m, [], e) && "values"),
          ran(1e7, (e) => waysWithin(m, [values], most, e)),
          ran(4000, (e) => waysWithin(m, [values, values], most, e)),
          ran(3e5, (e) => coverLengths(m, values, most, e)),
        ].join("; ");
      });
      expect(lines).toMatchSnapshot();
    });

    test("one long leftover, fewer patterns", () => {
      const lines = each(SEEDS.slice(0, 4), (seed) => {
        const m = model(seed);
        const { columns } = start(m);
        if (columns.some((c) => m.stocks[c.stock]!.index < 0)) return "not all";
        const keep = longestRoom(m, columns);
        return [
          ran(1e6, (e) => keepOneLong(m, columns, e)),
          ran(5e5, (e, r) => fewerPatterns(m, patternsOf(m, columns), 0, r, e)),
          ran(5e5, (e, r) => fewerPatterns(m, patternsOf(m, columns), keep, r, e)),
        ].join("; ");
      });
      expect(lines).toMatchSnapshot();
    });

    test("parts handed down to longer places", () => {
      const lines = each(SEEDS, (seed) => {
        const m = model(seed);
        const fewer = { ...m, types: m.types.map((t, i) => ({ ...t, need: i % 3 === 1 ? t.need - 1 : t.need })) };
        return sumOf([name, handedDown(fewer, start(m).columns)]);
      });
      expect(lines).toMatchSnapshot();
    });
  });

test("completion of small rests", () => {
  const lines = each(
    SEEDS.flatMap((seed) => [0, 1].map((more) => ({ seed, more }))),
    ({ seed, more }) => {
      const m = triples(seed);
      const pieces = materialBound(m) / m.costStep + more;
      return `${ran(1e7, (e) => completeLengths(m, needsOf(m), pieces, e))}; ${ran(1e7, (e) => completeLengths(m, needsOf(m), pieces, e, 300))}`;
    },
  );
  expect(lines).toMatchSnapshot();
});

test("exchange of parts between lengths", () => {
  const lines = each(SEEDS, (seed) => {
    const m = seed % 2 === 0 ? triples(seed) : one(seed);
    const plan = start(m);
    const text = ran(4e5, (e, r) => {
      const exchange = new LengthExchange(m, r);
      exchange.start(plan.columns, plan.columns.length - 1);
      const found = exchange.search(e);
      return [found, exchange.harvest];
    });
    return text;
  });
  expect(lines).toMatchSnapshot();
});

test("sets of up to three parts", () => {
  const lines = each(SEEDS, (seed) => {
    const random = new Random(seed);
    const sizes = Int32Array.from({ length: 9 }, () => 4 + random.below(30));
    const pool = Array.from({ length: 6 + 3 * seed }, () => random.below(9));
    return sumOf(partSets(pool, sizes, 40 + seed));
  });
  expect(lines).toMatchSnapshot();
});

test("numbers of times that patterns are cut", () => {
  const bars = new Map([
    [0, 9],
    [2, 5],
  ]);
  const drawn = each([2, 3, 5, 8, 12], (patterns) => ran(1, (_, r) => drawnPartition(bars, patterns, r)));
  const all = each([2, 3, 4, 5], (patterns) => sumOf([...partitions(bars, patterns)]));
  expect(`${drawn}\n${all}`).toMatchSnapshot();
});

test("parts shared out to patterns", () => {
  const lines = each(SEEDS, (seed) => {
    const random = new Random(seed);
    const m = lengthsOf(someLengths(seed, 5, [9, 40], 6), [bar(100)]);
    const demand = new Demand(m, needsOf(m));
    const times = [4, 3, 2, 2, 1, 1, 1].slice(0, 4 + random.below(4));
    const blanks = times.map((t) => ({ times: t, room: m.stocks[0]!.size - random.below(9) }));
    const found = shareOut(demand, blanks, 5000);
    return `${found.steps} steps, ${found.none}, ${demand.steps} ${demand.length} ${sumOf([found.counts ?? 0, demand.fills(1), demand.fills(3)])}`;
  });
  expect(lines).toMatchSnapshot();
});

test("patterns of what was planted: fewer are found", () => {
  const lines = each(SEEDS, (seed) => {
    const random = new Random(seed);
    const m = lengthsOf(
      Array.from({ length: 6 }, (_, i) => ({ id: `p${i}`, lengthIn: (14 + 5 * i) / 64, quantity: 12 })),
      [bar(100)],
    );
    const left = needsOf(m);
    const columns: Column[] = [];
    while (left.some((n) => n > 0)) {
      let room = m.stocks[0]!.size;
      const counts = new Map<number, number>();
      for (let n = 0; n < 20; n++) {
        const t = random.below(left.length);
        if (left[t] === 0 || m.types[t]!.size > room) continue;
        left[t]!--;
        room -= m.types[t]!.size;
        counts.set(t, 1 + (counts.get(t) ?? 0));
      }
      const sorted = [...counts].sort((a, b) => a[0] - b[0]);
      if (sorted.length > 0)
        columns.push({ stock: 0, cost: 1, types: sorted.map((c) => c[0]), counts: sorted.map((c) => c[1]) });
    }
    const found = fewerPatterns(m, patternsOf(m, columns), 0, new Random(2), new Effort(8e5));
    return `${patternsOf(m, columns).length} to ${found.patterns.length}: ${ran(8e5, (e, r) => fewerPatterns(m, patternsOf(m, columns), 0, r, e))}`;
  });
  expect(lines).toMatchSnapshot();
});
