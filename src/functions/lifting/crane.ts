import type { CraneCheck } from "../../core/lifting/crane.ts";
import { liftCrane } from "../../core/lifting/crane.ts";
import { needed, orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { table } from "../declare/table.ts";
import { familyFunction } from "./family.ts";
import { LIFT_CAUTIONS } from "./words.ts";

const chart = table(
  {
    radius: length("ft", { says: "radius of the load", above: 0, max: 500, heads: ["load radius"] }),
    capacity: quantity("lb", { says: "capacity at that radius", above: 0, max: 2_000_000, heads: ["rated capacity"] }),
    boom: optional(
      length("ft", { says: "length of the boom", above: 0, max: 700, heads: ["boom length"] }),
      undefined,
      "",
    ),
  },
  { says: "the crane's own load chart, one boom length: radius ft, capacity lb, boom ft", maxRows: 200 },
);

const columns = columnsOf<CraneCheck>(
  ["capacity", "lb", (c) => c.capacityLb],
  ["at radius", "ft", (c) => c.atRadiusFt],
  ["load", "lb", (c) => c.loadLb],
  ["ratio", "", (c) => c.ratio],
  ["verdict", "", (c) => c.verdict],
);

export const crane = familyFunction({
  name: "LIFT_CRANE",
  summary: "A lift against the crane's own load chart, read at the next larger radius, rigging counted as load.",
  params: {
    weight: quantity("lb", {
      says: "static weight of the load",
      above: 0,
      max: 1_000_000,
      usual: { min: 50, max: 200_000, ask: "is it in pounds?" },
    }),
    radius: length("ft", {
      says: "from the crane's center of rotation to the load",
      above: 0,
      max: 500,
      usual: { min: 5, max: 300, ask: "is it in feet?" },
    }),
    chart,
  },
  placed: { riggingWeight: needed("rigging weight"), craneLimit: orElse("crane limit") },
  returns: columns.table(
    "capacity, the radius of the chart's row, load with rigging, its share of the capacity, verdict",
  ),
  oneRow: true,
  sources: [
    "The user's own chart; crane safety body, load-chart quiz with answers: the smaller value, at the next larger radius, no interpolation",
    "OSHA 29 CFR 1926.751: a lift above 75 % of the capacity is a critical one",
  ],
  assumptions: [
    "Charts give gross static loads: rigging, hook block and a jib's deduction are counted as load, no impact factor.",
    "Published practice never reads between the rows of a chart: the value at the next larger radius holds.",
  ],
  cautions: LIFT_CAUTIONS,
  example: {
    args: {
      weight: 5000,
      radius: 38,
      chart: [
        [35, 9700],
        [40, 8300],
        [45, 7000],
      ],
      riggingWeight: 600,
    },
    gives: [[8300, 40, 5600, 0.6746987951807228, "within the limit"]],
    within: 1e-9,
    source: "exact arithmetic: 5600 / 8300, the value of the next larger radius",
  },
  refuses: [
    { args: { radius: 19 }, says: "the chart goes from 35 to 45 ft and is not read beyond its rows" },
    {
      args: {
        chart: [
          [35, 3],
          [40, 8300],
          [45, 7000],
        ],
      },
      says: "a crane lifts less the farther it reaches",
    },
    {
      args: {
        chart: [
          [35, 9700, 3],
          [40, 8300],
          [45, 7000],
        ],
      },
      says: "one lift has one boom length",
    },
    {
      args: {
        chart: [
          [35, 9700],
          [35, 9000],
          [50, 7000],
        ],
      },
      says: "one radius has one capacity",
    },
  ],
  notFor:
    "Two cranes, lifts over people, near power lines or near three quarters of the chart need a written lift plan.",
  run(a, tape) {
    const rows = a.chart.map((r) => ({ radiusFt: r.radius, capacityLb: r.capacity, boomFt: r.boom }));
    const check = liftCrane(a.weight, a.radius, rows, a.riggingWeight, a.craneLimit, tape);
    return spill(columns, [check], "lift", "capacity, at radius, load, ratio, verdict", tape);
  },
});
