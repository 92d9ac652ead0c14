import { describe, expect, test } from "vitest";
import type { Table } from "../../../src/core/kit/tape.ts";
import { cautions, refusal, tableOf, value, working } from "../called.ts";

/** The demo's money, as typed into cells; expected figures by hand. */

const BASIS = [
  ["Basis", "Value", "Unit"],
  ["Overhead share", "12%", null],
  ["Contingency share", "5%", null],
  ["Margin", "10%", null],
  ["Sales tax", "5.5%", null],
  ["Crew size", 5, null],
  ["Crew wage", 32.8, null],
  ["Labor burden", "34%", null],
  ["Productive hours", 7, "h"],
  ["Weather days", "12%", null],
  ["Learning share", 0.9, null],
];

const LINES = [
  ["line", "amount $", "kind", "low $", "high $"],
  ["shell labor", 23_400, "labor", 21_000, 28_500],
  ["materials", 77_930, "material", 74_000, 86_000],
  ["crane and lift", 3750, "equipment", 3200, 5200],
  ["freight", 2100, "equipment", 1800, 2900],
  ["slab and foundation", 21_400, "subcontract", 20_000, 25_000],
  ["steel roofing", 15_100, "subcontract", 14_300, 17_600],
];
const HEADS = ["line", "amount", "kind", "low", "high"];
const lines = [HEADS, ...LINES.slice(1)];

const TASKS = [
  ["columns and plates", 24, 0.8],
  ["panels on the deck", 15, 3.0],
  ["wall membrane", 1600, 0.01],
  ["boards", 3200, 0.012],
  ["furring", 1000, 0.018],
  ["windows on the deck", 10, 1.6],
  ["lift and brace", 4, 14],
  ["rafters and ridge", 28, 1.5],
  ["roof panels", 17, 3.4],
  ["roof membrane and boards", 1950, 0.045],
  ["doors and wide opening", 3, 4],
  ["siding", 1600, 0.045],
  ["strips and lining", 1600, 0.03],
];

describe("the demo's money by a basis", () => {
  test("the bid: 193,342.44 and a check of 0", () => {
    const rows = tableOf("COST_BID", lines, BASIS);
    expect(rows[0]).toEqual(["step", "on, $", "share", "amount, $", "running total, $"]);
    const row = (step: string) => rows.find((r) => r[0] === step);
    expect(row("sales tax")?.[3]).toBeCloseTo(4286.15, 6);
    expect(row("price")?.[3]).toBeCloseTo(193_342.436, 6);
    expect(row("check")?.[3]).toBe(0);
  });

  test("headings with their units are read, as the sheet writes them", () => {
    expect(
      tableOf(
        "COST_BID",
        [
          ["line", "amount, $", "kind"],
          ["a", 100, "labor"],
        ],
        BASIS,
      ).at(-1)?.[3],
    ).toBe(0);
  });

  test("hours, days and cost of the tasks: 528.15 h, 17.148 days, 23,213.25 $", () => {
    const rows = tableOf("LABOR_SCHEDULE", TASKS, BASIS);
    expect(rows.at(-1)).toEqual([
      "total",
      expect.closeTo(528.15, 6),
      expect.closeTo(528.15 / 35 / 0.88, 6),
      expect.closeTo(528.15 * 43.952, 4),
    ]);
    expect(rows[3]?.[1]).toBeCloseTo(16, 9);
  });

  test("a schedule feeds the lines of cost by its headings, its total left out and said", () => {
    const schedule = tableOf("LABOR_SCHEDULE", TASKS, BASIS);
    const said = working("COST_BID", schedule, BASIS);
    const other = said.outcome.ok ? (said.outcome.value as Table).find((r) => r[0] === "other") : undefined;
    expect(other?.[3]).toBeCloseTo(528.15 * 43.952, 4);
    expect(said.assumptions.join()).toContain("The row total of cost lines is left out");
    expect(said.assumptions.join()).toContain("without a kind is not taxed");
  });

  test("an order with prices feeds them too", () => {
    const order = [
      ["panel", 45, "panels", 45, "1"],
      ["screws", 900, "", 4, "box of 250"],
    ];
    const priced = tableOf("COST_ORDER", order, [
      ["screws", 96],
      ["panel", 540],
    ]);
    expect(priced.at(-1)?.[3]).toBe(45 * 540 + 4 * 96);
    const rows = tableOf("COST_BID", priced, [
      ["Basis", "Value"],
      ["Markup", "none"],
    ]);
    expect(rows.find((r) => r[0] === "price")?.[3]).toBe(24_684);
  });

  test("days of the hours, hours of ten windows learned, crew rate, price a square foot", () => {
    expect(value("LABOR_DAYS", 528.15, BASIS)).toBeCloseTo(17.1477, 4);
    // The operations textbook's total factor of ten units at 90 % is 7.994.
    expect(Math.abs((value("LABOR_LEARNING", 2, 10, BASIS) as number) - 15.988)).toBeLessThan(0.002);
    expect(value("COST_PERAREA", 193_342.436, 1536)).toBeCloseTo(125.874, 3);
  });

  test("ten windows flat and standing, learned by the basis: the hours each are then the first's, which is said", () => {
    const ways = [
      ["flat on the deck", 1.6, 9, 2, 0],
      ["standing", 2.7, 2, 2, 48],
    ];
    const said = working("LABOR_COMPARE", 10, ways, BASIS);
    const rows = said.outcome.ok ? (said.outcome.value as Table) : [];
    // 7.9945 times the first: 9 + 12.791 and 2 + 21.585 h.
    expect(rows[1]?.[1]).toBeCloseTo(21.791, 2);
    expect(rows[2]?.[1]).toBeCloseTo(23.585, 2);
    expect(said.assumptions.join()).toContain("those of the first one");
    const unlearned = tableOf("LABOR_COMPARE", 10, ways, null, null, 7, 32.8, "34%");
    expect(unlearned[1]).toEqual(["flat on the deck", 25, expect.closeTo(25 / 14, 9), expect.closeTo(1098.8, 6)]);
    expect(unlearned[2]?.[3]).toBeCloseTo(1970.608, 6);
    expect(unlearned[3]?.slice(0, 2)).toEqual(["break-even count", 3]);
  });

  test("the contingency: first row for the confidence asked, last the heaviest line", () => {
    const rows = tableOf("COST_CONTINGENCY", lines, 0.8, 0.3);
    expect(rows[1]?.[0]).toBe(0.8);
    expect(rows.at(-1)?.slice(0, 2)).toEqual(["heaviest line", "materials"]);
    expect(rows.at(-2)?.[0]).toBe("error");
    // By the normal curve 151,483; triangles lean to the right.
    expect(Math.abs((rows[1]?.[1] as number) - 151_483)).toBeLessThan(500);
    expect(rows.at(-1)?.[3]).toBeCloseTo((rows.at(-1)?.[2] as number) / 143_680, 9);
  });
});

describe("slips", () => {
  test("margin and markup together, or a percent without its sign", () => {
    expect(refusal("COST_BID", lines, null, null, 0.1, 0.1)).toContain("Both a margin of 0.1 and a markup of 0.1");
    expect(refusal("COST_BID", lines)).toContain("Neither margin nor markup");
    expect(refusal("COST_MARGIN", 80, 20)).toContain("Type 20% or 0.2");
    expect(refusal("COST_MARGIN", 80)).toContain("margin is missing".replace("m", "M"));
  });

  test("a total that does not sum, or stands in the middle", () => {
    expect(
      refusal(
        "COST_BID",
        [
          ["a", 100],
          ["b", 50],
          ["total", 160],
        ],
        null,
        null,
        0.1,
      ),
    ).toContain("the lines above it sum to 150");
    expect(
      refusal(
        "COST_BID",
        [
          ["a", 100],
          ["total", 100],
          ["b", 50],
        ],
        null,
        null,
        0.1,
      ),
    ).toContain("lines stand below it");
    expect(refusal("COST_BID", [["total", 100]], null, null, 0.1)).toContain("The row total");
    expect(
      tableOf(
        "COST_BID",
        [
          ["a", 100],
          ["b", 50],
          ["Total", 150.005],
        ],
        null,
        null,
        0.1,
      ).find((r) => r[0] === "other")?.[3],
    ).toBe(150);
  });

  test("days typed for years, a blank amount, an unknown kind", () => {
    expect(refusal("COST_ESCALATE", 1000, 365, 0.04)).toContain("from 0 to 50");
    expect(cautions("COST_ESCALATE", 1000, 18, 0.04)).toContain("is it years");
    expect(
      cautions(
        "COST_BID",
        [
          ["a", 0],
          ["b", 5],
        ],
        null,
        null,
        0.1,
      ),
    ).toContain("is it a credit, or a blank?");
    expect(refusal("COST_BID", [["a", 5, "wood"]], null, null, 0.1)).toContain(
      "labor, material, equipment, subcontract",
    );
  });

  test("a crew size that stands nowhere is asked for by the row's name", () => {
    expect(refusal("LABOR_SCHEDULE", TASKS, null, null, 7, null, 32.8)).toContain(
      "The crew size of columns and plates is missing",
    );
    expect(
      refusal(
        "LABOR_COMPARE",
        1,
        [
          ["a", 1],
          ["b", 2],
        ],
        null,
        null,
        7,
        33,
      ),
    ).toContain("The crew size of a is missing");
    expect(tableOf("LABOR_SCHEDULE", [["a", 1, 7, 2]], null, null, 7, null, 10)[1]).toEqual(["a", 7, 0.5, 70]);
  });

  test("years below 0, count 0, an order without price", () => {
    expect(refusal("COST_ESCALATE", 1000, -1, 0.04)).toContain("from 0 to 50");
    expect(refusal("LABOR_LEARNING", 2, 0, 0.9)).toContain("Count");
    expect(refusal("COST_ORDER", [["x", 1, "", 1]], [["y", 1]])).toContain('"x" has no price');
  });
});
