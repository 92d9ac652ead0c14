import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type BidShares, bidBuildUp } from "../../../src/core/cost/bid.ts";
import { contingency } from "../../../src/core/cost/contingency.ts";
import type { CostKind, CostLine } from "../../../src/core/cost/lines.ts";
import { pricedOrder } from "../../../src/core/cost/order.ts";
import type { BidPicture, ContingencyPicture } from "../../../src/core/cost/pictures.ts";
import {
  costPerArea,
  escalated,
  marginOfMarkup,
  markupOfMargin,
  priceByMargin,
  priceByMarkup,
} from "../../../src/core/cost/price.ts";
import { Tape } from "../../../src/core/kit/tape.ts";

const line = (name: string, amount: number, kind?: CostKind, low?: number, high?: number): CostLine => ({
  line: name,
  amount,
  kind,
  low,
  high,
});

describe("prices", () => {
  test("by hand", () => {
    expect(priceByMargin(800_000, 0.15)).toBeCloseTo(941_176.47, 2);
    expect(markupOfMargin(0.15)).toBeCloseTo(0.17647, 5);
    expect(escalated(100_000, 2.5, 0.04)).toBeCloseTo(110_301.99, 2);
    expect(escalated(100_000, 2, -0.1)).toBeCloseTo(81_000, 6);
    expect(costPerArea(192_000, 1536)).toBe(125);
  });

  test("each working shows the other share and the profit, and ends with the price", () => {
    const [margin, markup] = [new Tape(), new Tape()];
    priceByMargin(90, 0.1, margin);
    priceByMarkup(90, 0.1, markup);
    expect(margin.steps.map((s) => [s.symbol, s.value])).toEqual([
      ["markup", expect.closeTo(0.1111, 4)],
      ["profit", 10],
      ["price", 100],
    ]);
    expect(markup.steps.map((s) => [s.symbol, s.value])).toEqual([
      ["margin", expect.closeTo(0.0909, 4)],
      ["profit", 9],
      ["price", expect.closeTo(99, 9)],
    ]);
    const rise = new Tape();
    escalated(100, 2, 0.1, rise);
    expect(rise.steps.map((s) => s.value)).toEqual([expect.closeTo(1.21, 9), expect.closeTo(121, 9)]);
  });

  test("price - cost is margin x price; the equal markup gives the same price", () => {
    const cost = fc.double({ min: 1, max: 1e7, noNaN: true });
    fc.assert(
      fc.property(cost, fc.double({ min: 0, max: 0.9, noNaN: true }), (c, margin) => {
        const price = priceByMargin(c, margin);
        expect((price - c) / price).toBeCloseTo(margin, 9);
        expect(priceByMarkup(c, markupOfMargin(margin)) / price).toBeCloseTo(1, 9);
        expect(marginOfMarkup(markupOfMargin(margin))).toBeCloseTo(margin, 9);
      }),
    );
  });

  test("escalation goes on where it stopped", () => {
    const years = fc.double({ min: 0, max: 10, noNaN: true });
    fc.assert(
      fc.property(years, years, fc.double({ min: -0.1, max: 0.3, noNaN: true }), (a, b, e) => {
        expect(escalated(escalated(100, a, e), b, e) / escalated(100, a + b, e)).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe("order with prices", () => {
  const prices = [
    { item: "Panel", price: 540 },
    { item: "tape  roll", price: 46 },
  ];

  test("names are matched whatever their case and spaces; the total sums", () => {
    const tape = new Tape();
    const { items, total } = pricedOrder(
      [
        { item: "panel ", packs: 10 },
        { item: "Tape roll", packs: 3 },
      ],
      prices,
      tape,
    );
    expect(items.map((i) => [i.price, i.amount])).toEqual([
      [540, 5400],
      [46, 138],
    ]);
    expect(total).toBe(5538);
    expect(tape.steps.map((s) => s.value)).toEqual([5400, 138, 5538]);
  });

  test("an item without a price is refused with some that have one, an item with two too", () => {
    expect(() => pricedOrder([{ item: "screws", packs: 1 }], prices)).toThrow(
      '"screws" has no price: the prices hold Panel, tape  roll. Add',
    );
    expect(() => pricedOrder([], [...prices, { item: "panel", price: 1 }])).toThrow("panel twice");
    const many = "abcdef".split("").map((item) => ({ item, price: 1 }));
    expect(() => pricedOrder([{ item: "x", packs: 1 }], many)).toThrow("a, b, c, d, e and more");
  });
});

describe("bid", () => {
  const none: BidShares = { overhead: 0, contingency: 0, salesTax: 0, bond: 0, margin: undefined, markup: undefined };
  const course = [line("a", 500_000), line("b", 300_000), line("c", 100_000)];

  test("a course's inputs, profit as markup and as margin, by hand", () => {
    const shares = { ...none, overhead: 0.15, contingency: 0.05 };
    const steps = bidBuildUp(course, { ...shares, markup: 0.08 });
    const amount = (name: string) => steps.find((s) => s.step === name)?.amount;
    expect([amount("overhead"), amount("contingency"), amount("price")]).toEqual(
      [135_000, 51_750, 1_173_690].map((v) => expect.closeTo(v, 6)),
    );
    expect(bidBuildUp(course, { ...shares, margin: 0.08 }).find((s) => s.step === "price")?.amount).toBeCloseTo(
      1_181_250,
      6,
    );
  });

  test("the demo's lines by hand, row by row", () => {
    const lines = [
      line("shell", 23_400, "labor"),
      line("materials", 77_930, "material"),
      line("crane", 3750, "equipment"),
      line("freight", 2100, "equipment"),
      line("slab", 21_400, "subcontract"),
      line("roof", 15_100, "subcontract"),
    ];
    const steps = bidBuildUp(lines, { ...none, overhead: 0.12, contingency: 0.05, salesTax: 0.055, margin: 0.1 });
    const rows: [string, number, number, number, number][] = [
      ["labor", 23_400, 1, 23_400, 23_400],
      ["material", 77_930, 1, 77_930, 101_330],
      ["equipment", 5850, 1, 5850, 107_180],
      ["subcontract", 36_500, 1, 36_500, 143_680],
      ["sales tax", 77_930, 0.055, 4286.15, 147_966.15],
      ["overhead", 147_966.15, 0.12, 17_755.938, 165_722.088],
      ["contingency", 165_722.088, 0.05, 8286.1044, 174_008.1924],
      ["margin", 193_342.436, 0.1, 19_334.2436, 193_342.436],
      ["bond", 193_342.436, 0, 0, 193_342.436],
      ["price", 0, 1, 193_342.436, 193_342.436],
      ["check", 193_342.436, 0, 0, 193_342.436],
    ];
    expect(steps).toHaveLength(rows.length);
    rows.forEach(([step, on, share, amount, running], i) => {
      expect(steps[i]?.step).toBe(step);
      expect(steps[i]?.on).toBeCloseTo(on, 6);
      expect(steps[i]?.share).toBe(share);
      expect(steps[i]?.amount).toBeCloseTo(amount, 6);
      expect(steps[i]?.running).toBeCloseTo(running, 6);
    });
  });

  test("margin and bond are shares of the price, markup of the cost", () => {
    const byMargin = bidBuildUp([line("a", 850)], { ...none, margin: 0.1, bond: 0.05 });
    expect(byMargin.map((s) => [s.step, s.amount])).toContainEqual(["price", expect.closeTo(1000, 9)]);
    expect(byMargin.map((s) => [s.step, s.amount])).toContainEqual(["bond", expect.closeTo(50, 9)]);
    const byMarkup = bidBuildUp([line("a", 950)], { ...none, markup: 0.2, bond: 0.05 });
    expect(byMarkup.map((s) => [s.step, s.on, s.amount])).toContainEqual(["markup", 950, expect.closeTo(190, 9)]);
    expect(byMarkup.map((s) => [s.step, s.amount])).toContainEqual(["price", expect.closeTo(1200, 9)]);
  });

  test("the working tells the equal share and the profit", () => {
    const [margin, markup] = [new Tape(), new Tape()];
    bidBuildUp([line("a", 800)], { ...none, margin: 0.2 }, margin);
    bidBuildUp([line("a", 800)], { ...none, markup: 0.25 }, markup);
    const last = (tape: Tape, symbol: string) => tape.steps.findLast((s) => s.symbol === symbol)?.value;
    expect([last(margin, "markup"), last(margin, "profit")]).toEqual([expect.closeTo(0.25, 9), expect.closeTo(200, 9)]);
    expect([last(markup, "margin"), last(markup, "profit")]).toEqual([expect.closeTo(0.2, 9), expect.closeTo(200, 9)]);
    expect(last(margin, "check")).toBe(0);
    const bond = new Tape();
    bidBuildUp([line("a", 850)], { ...none, margin: 0.1, bond: 0.05 }, bond);
    expect(last(bond, "profit")).toBeCloseTo(100, 9);
  });

  test("both, neither, or shares that leave nothing are refused; no profit is said as 0", () => {
    expect(() => bidBuildUp(course, { ...none, margin: 0.1, markup: 0.1 })).toThrow(
      "Both a margin of 0.1 and a markup",
    );
    expect(() => bidBuildUp(course, none)).toThrow("Neither margin nor markup");
    expect(() => bidBuildUp(course, { ...none, margin: 0.6, bond: 0.4 })).toThrow("whole price");
    expect(bidBuildUp(course, { ...none, markup: 0 }).find((s) => s.step === "price")?.amount).toBe(900_000);
  });

  test("lines without a kind are other cost, untaxed; kinds without a line have no row", () => {
    const steps = bidBuildUp([line("a", 100), line("b", 50, "labor")], { ...none, salesTax: 0.1, markup: 0 });
    expect(steps.map((s) => [s.step, s.amount]).slice(0, 3)).toEqual([
      ["labor", 50],
      ["other", 100],
      ["sales tax", 0],
    ]);
  });

  test("the picture has the steps that add something, each from where the last ends", () => {
    const tape = new Tape();
    bidBuildUp([line("a", 100, "labor"), line("b", 60, "material")], { ...none, markup: 0.5 }, tape);
    const picture = tape.pictures[0] as BidPicture;
    expect(picture.steps).toEqual([
      { step: "labor", from: 0, to: 100 },
      { step: "material", from: 100, to: 160 },
      { step: "markup", from: 160, to: 240 },
    ]);
    expect(picture.price).toBe(240);
    expect(picture.alt).toContain("labor $100, material $60, markup $80");
  });

  test("whatever the shares: the steps sum to the price, the check is 0, running totals run", () => {
    const share = fc.double({ min: 0, max: 0.4, noNaN: true });
    fc.assert(
      fc.property(
        share,
        share,
        share,
        share,
        share,
        fc.boolean(),
        (overhead, risk, salesTax, bond, profit, byMargin) => {
          const profits = byMargin ? { margin: profit, markup: undefined } : { margin: undefined, markup: profit };
          const lines = [line("a", 1234.5, "labor"), line("b", 9876.5, "material"), line("c", 5)];
          const steps = bidBuildUp(lines, { overhead, contingency: risk, salesTax, bond, ...profits });
          const price = steps.at(-2)?.amount ?? 0;
          const sum = steps.slice(0, -2).reduce((total, s) => total + s.amount, 0);
          expect(sum).toBeCloseTo(price, 4);
          expect(steps.at(-1)?.amount).toBe(0);
          expect(steps.at(-3)?.running).toBeCloseTo(price, 4);
        },
      ),
    );
  });
});

describe("contingency", () => {
  const lines = [line("labor", 100, "labor", 90, 130), line("material", 400, "material", 380, 450), line("fixed", 50)];

  test("the confidence asked for comes first, the others ascend; totals rise with confidence", () => {
    const { levels } = contingency(lines, 0.8, 0.3, 1);
    expect(levels.map((l) => l.confidence)).toEqual([0.8, 0.5, 0.6, 0.7, 0.9, 0.95]);
    expect(contingency(lines, 0.85, 0.3, 1).levels.map((l) => l.confidence)).toEqual([
      0.85, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95,
    ]);
    const [first, ...ladder] = levels;
    const totals = [...ladder, first]
      .sort((a, b) => (a?.confidence ?? 0) - (b?.confidence ?? 0))
      .map((l) => l?.total ?? 0);
    expect(totals).toEqual([...totals].sort((a, b) => a - b));
    for (const l of levels) {
      expect(l.contingency).toBeCloseTo(l.total - 550, 6);
      expect(l.share).toBeCloseTo(l.contingency / 550, 9);
    }
  });

  test("one line is its own triangular distribution, within a few errors of the estimate", () => {
    // P80 of a triangle 90, 100, 130: 130 - sqrt(0.2 x 40 x 30).
    const { levels, error } = contingency([line("a", 100, undefined, 90, 130)], 0.8, 0, 1);
    expect(Math.abs((levels[0]?.total ?? 0) - (130 - Math.sqrt(240)))).toBeLessThan(4 * error + 0.01);
    // Error by theory: sqrt(p (1 - p) / n) / density, density 2 (130 - x) / (40 x 30).
    const density = (2 * Math.sqrt(240)) / 1200;
    expect(error).toBeGreaterThan((0.8 * Math.sqrt(0.16 / 20_000)) / density);
    expect(error).toBeLessThan((1.25 * Math.sqrt(0.16 / 20_000)) / density);
  });

  test("the seed decides, and only within the error", () => {
    const at = (seed: number) => contingency(lines, 0.8, 0.3, seed);
    expect(at(1)).toEqual(at(1));
    expect(at(1).levels[0]?.total).not.toBe(at(2).levels[0]?.total);
    expect(Math.abs((at(1).levels[0]?.total ?? 0) - (at(2).levels[0]?.total ?? 0))).toBeLessThan(
      6 * at(1).error + 0.01,
    );
  });

  test("lines that move together need more", () => {
    const needs = [0, 0.3, 0.6, 1].map((r) => contingency(lines, 0.9, r, 1).levels[0]?.contingency ?? 0);
    expect(needs).toEqual([...needs].sort((a, b) => a - b));
    expect(needs.at(-1)).toBeGreaterThan((needs[0] ?? 0) + 5);
  });

  test("fully together, the P90 is the sum of the lines' own", () => {
    const own = (low: number, likely: number, high: number) => high - Math.sqrt(0.1 * (high - low) * (high - likely));
    const { levels, error } = contingency(lines, 0.9, 1, 1);
    expect(Math.abs((levels[0]?.total ?? 0) - (own(90, 100, 130) + own(380, 400, 450) + 50))).toBeLessThan(4 * error);
  });

  test("the heaviest line is the one whose range takes most off, in the same draws", () => {
    const { heaviest, levels } = contingency(lines, 0.8, 0.3, 1);
    const certain = contingency([lines[0] as CostLine, line("material", 400), line("fixed", 50)], 0.8, 0.3, 1);
    expect(heaviest?.line).toBe("material");
    const takes = (levels[0]?.contingency ?? 0) - (certain.levels[0]?.contingency ?? 0);
    expect(Math.abs((heaviest?.takesOff ?? 0) - takes)).toBeLessThan(6 * certain.error);
  });

  test("all certain: no contingency, no error, no heaviest line", () => {
    expect(contingency([line("a", 10), line("b", 20)], 0.8, 0.3, 1)).toMatchObject({
      error: 0,
      heaviest: undefined,
      levels: [{ total: 30, contingency: 0 }, {}, {}, {}, {}, {}],
    });
  });

  test("a line with one end does not go the other way, which is said; an amount outside its range is refused", () => {
    const tape = new Tape();
    const { levels } = contingency(
      [line("up", 10, undefined, undefined, 20), line("down", 10, undefined, 5), line("sure", 1)],
      0.5,
      0,
      1,
      tape,
    );
    expect(tape.assumptions).toEqual([
      expect.stringContaining("certain: sure."),
      expect.stringContaining("the other way: up, down."),
    ]);
    expect(levels[0]?.total).toBeGreaterThan(17);
    expect(() => contingency([line("a", 10, undefined, 11, 12)], 0.8, 0, 1)).toThrow(
      "a has low 11, likely 10, high 12",
    );
    expect(() => contingency([line("a", 10, undefined, 5, 9)], 0.8, 0, 1)).toThrow("a has low 5, likely 10, high 9");
    const sure = new Tape();
    contingency([line("up", 10, undefined, 9, 20)], 0.5, 0, 1, sure);
    expect(sure.assumptions).toEqual([]);
  });

  test("the normal approximation stands beside each level, by the moments of the triangles", () => {
    const tape = new Tape();
    contingency(lines, 0.5, 0.25, 7, tape);
    const value = (symbol: string) => tape.steps.find((s) => s.symbol === symbol)?.value as number;
    expect(value("base")).toBe(550);
    expect(value("mean")).toBeCloseTo(320 / 3 + 1230 / 3 + 50, 9);
    const [a, b] = [(10 ** 2 + 30 ** 2 + 40 ** 2) / 36, (20 ** 2 + 50 ** 2 + 70 ** 2) / 36];
    const deviation = Math.sqrt(a + b + 2 * 0.25 * Math.sqrt(a * b));
    expect(value("deviation")).toBeCloseTo(deviation, 9);
    const p90 = tape.steps.find((s) => s.symbol === "P90");
    const normal = Number(/normal curve ([\d.]+)/.exec(p90?.expression ?? "")?.[1]);
    expect(normal).toBeCloseTo(value("mean") + 1.2815516 * deviation, 1);
    expect(Math.abs(normal - (p90?.value as number))).toBeLessThan(5);
    const picture = tape.pictures[0] as ContingencyPicture;
    expect(picture.curve).toHaveLength(99);
    expect(picture.curve[89]).toEqual({
      confidence: 0.9,
      total: expect.closeTo(p90?.value as number, 1),
      normal: expect.closeTo(normal, 1),
    });
    expect(picture.chosen).toEqual({ confidence: 0.5, total: value("P50") });
    expect(picture.base).toBe(550);
    expect(tape.steps.find((s) => s.symbol === "heaviest line")?.expression).toContain("material");
  });
});

test("a line with one end only is said, and only then; so is a certain one", () => {
  const said = (...lines: readonly CostLine[]) => {
    const tape = new Tape();
    contingency(lines, 0.8, 0, 1, tape);
    return tape.assumptions.join();
  };
  const both = line("both", 100, undefined, 90, 120);
  expect(said(both, line("a", 100, undefined, undefined, 120))).toContain("does not go the other way: a.");
  expect(said(both, line("b", 100, undefined, 80))).toContain("does not go the other way: b.");
  expect(said(both, line("c", 100))).toContain("certain: c.");
  expect(said(both)).toBe("");
});
