import { contingency } from "../../core/cost/contingency.ts";
import { RANGE_SHAPES, type RangeMoments, rangeMoments } from "../../core/cost/range.ts";
import { orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { measure } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { choice } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { costLines } from "./lines.ts";

const dollars = (says: string) => measure("$", { says, min: -1e9, max: 1e10 });

const rangeColumns = columnsOf<RangeMoments>(
  ["mean", "$", (r) => r.mean],
  ["deviation", "$", (r) => r.deviation],
  ["10 %", "$", (r) => r.p10],
  ["50 %", "$", (r) => r.p50],
  ["90 %", "$", (r) => r.p90],
);

export const range = familyFunction({
  name: "COST_RANGE",
  summary: "Mean, deviation and percentiles of a cost from its least, likeliest and greatest value.",
  params: {
    low: dollars("the least it may come to"),
    likely: dollars("the likeliest"),
    high: dollars("the most it may come to"),
    shape: optional(
      choice(RANGE_SHAPES, {
        says: "distribution between them",
        also: { pert: "beta" },
        means: { beta: "PERT: the likely value counts four times", triangular: "straight lines to the likely value" },
      }),
      "beta",
      "{} (PERT) distribution",
    ),
  },
  placed: {},
  returns: rangeColumns.table("mean, deviation, and the values not passed in 10, 50 and 90 of 100 cases"),
  oneRow: true,
  sources: [
    "PERT: mean (a + 4m + b)/6, deviation (b - a)/6; three-point formula page (risk site), coursework table",
    "Triangular: mean (a + m + b)/3, variance (a2 + m2 + b2 - am - ab - mb)/18",
    "Percentiles: the beta curve with shapes 1 + 4(m - a)/(b - a) and 1 + 4(b - m)/(b - a); NIST DLMF 8.17",
  ],
  assumptions: [
    "The deviation (b - a)/6 of PERT is a convention: the beta curve's own differs with the place of the likely value.",
  ],
  example: {
    args: { low: 2, likely: 6, high: 9 },
    gives: [[5.83, 1.17, 4.04, 5.87, 7.57]],
    within: 0.005,
    source: "Coursework PERT table: (2, 6, 9) has mean 5.83, deviation 1.17; percentiles by a statistics library",
  },
  refuses: [{ args: { low: 10 }, says: "the likely value lies between the low and the high one" }],
  notFor: "Sums of several lines take COST_CONTINGENCY: percentiles of lines do not add up.",
  run(a, tape) {
    const points = { low: a.low, likely: a.likely, high: a.high };
    return spill(rangeColumns, [rangeMoments(points, a.shape, tape)], "range", "mean, deviation, 10, 50, 90 %", tape);
  },
});

interface Row {
  readonly confidence: number | string;
  readonly total: number | string;
  readonly contingency: number | "";
  readonly share: number | "";
}

const columns = columnsOf<Row>(
  ["confidence", "", (r) => r.confidence],
  ["total", "$", (r) => r.total],
  ["contingency", "$", (r) => r.contingency],
  ["share", "", (r) => r.share],
);

export const contingencyTable = familyFunction({
  name: "COST_CONTINGENCY",
  summary: "Contingency on a list of costs by confidence, from a simulation in which the lines may rise together.",
  params: { costLines },
  placed: {
    confidence: orElse("confidence"),
    costCorrelation: orElse("cost correlation"),
    costSeed: orElse("cost seed"),
  },
  returns: columns.table(
    "the confidence asked for first, then others: total not passed, contingency over the lines' amounts and its share; last the standard error of the first total, and the line that moves it most with what it would take off if it were certain",
  ),
  sources: [
    "Monte Carlo simulation with a Gaussian copula, 20,000 trials; triangular lines; Box and Muller 1958, Marsaglia 2004",
    "Checked against closed forms: triangle, sum of uniform quantities (Irwin and Hall), variance of a sum",
  ],
  assumptions: [
    "Each line is triangular from low over its amount to high; one correlation holds for all pairs.",
    "The same lines, correlation and seed give the same table; another seed moves it by about the error.",
  ],
  cautions: ["Only what the lines' low and high hold is in it: no change of scope, no event that the lines leave out."],
  heavy: true,
  example: {
    args: { costLines: [["shell", 100, "labor", 90, 130]] },
    gives: [
      [0.8, 114.508, 14.508, 0.145],
      [0.5, 105.505, 5.505, 0.055],
      [0.6, 108.091, 8.091, 0.081],
      [0.7, 111.026, 11.026, 0.11],
      [0.9, 119.046, 19.046, 0.19],
      [0.95, 122.254, 22.254, 0.223],
      ["error", 0.1, "", ""],
      ["heaviest line", "shell", 14.508, 0.145],
    ],
    within: 0.35,
    source: "exact arithmetic of one triangle, 130 - sqrt((1 - p) x 40 x 30), within a few errors of the estimate",
  },
  refuses: [{ args: { confidence: 1 }, says: "it must be above 0 and below 1" }],
  notFor: "Single events, such as a rejected permit or bad ground, need a risk list with what each would cost.",
  run(a, tape) {
    const { levels, error, heaviest } = contingency(a.costLines, a.confidence, a.costCorrelation, a.costSeed, tape);
    const base = a.costLines.reduce((sum, l) => sum + l.amount, 0);
    const rows: Row[] = [
      ...levels,
      { confidence: "error", total: error, contingency: "", share: "" },
      {
        confidence: "heaviest line",
        total: heaviest?.line ?? "none",
        contingency: heaviest?.takesOff ?? "",
        share: heaviest === undefined ? "" : heaviest.takesOff / base,
      },
    ];
    return spill(columns, rows, "contingency", "by confidence; error; heaviest line", tape);
  },
});
