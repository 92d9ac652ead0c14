import { compareWays, type Way } from "../../core/labor/compare.ts";
import { ifGiven, needed, orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { measure, share, whole } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { table } from "../declare/table.ts";
import { text } from "../declare/word.ts";
import { crewOf, rowCrew } from "./crew.ts";
import { familyFunction } from "./family.ts";

const ways = table(
  {
    way: text({ says: "name of the way", heads: ["name", "method"] }),
    hoursEach: measure("h", {
      says: "labor hours of one; of the first where a learning rate is given",
      above: 0,
      max: 10_000,
      heads: ["hours each", "h each", "hours"],
    }),
    setUp: optional(
      measure("h", {
        says: "labor hours before the first",
        min: 0,
        max: 100_000,
        heads: ["set-up", "setup", "set-up hours"],
      }),
      0,
      "no set-up",
    ),
    crewSize: rowCrew,
    machine: optional(
      measure("$/h", {
        says: "crane, lift or scaffold while the crew works",
        min: 0,
        max: 10_000,
        heads: ["machine cost"],
      }),
      0,
      "no machine",
    ),
    risk: optional(
      share({
        says: "hours lost to weather, breakage and things done twice, as a share",
        max: 1,
        heads: ["risk share", "allowance"],
      }),
      0,
      "no allowance for risk",
    ),
  },
  { says: "two ways or more: way, hours each, set-up h, crew size, machine $/h, risk", minRows: 2, maxRows: 20 },
);

interface Row {
  readonly way: string;
  readonly hours: number | string;
  readonly days: number | "";
  readonly cost: number | "";
}

const columns = columnsOf<Row>(
  ["way", "", (r) => r.way],
  ["hours", "h", (r) => r.hours],
  ["days", "days", (r) => r.days],
  ["cost", "$", (r) => r.cost],
);

export const compare = familyFunction({
  name: "LABOR_COMPARE",
  summary:
    "The same task done in two ways or more, set-up and machine included, and the count at which they cost the same.",
  params: { count: whole({ says: "how many of the task", min: 1, max: 100_000 }), ways },
  placed: {
    learningRate: ifGiven("learning rate", "every one takes the same hours"),
    pace: orElse("pace"),
    productiveHours: needed("productive hours"),
    crewWage: needed("crew wage"),
    laborBurden: orElse("labor burden"),
  },
  named: {
    learningCurveKind: orElse("learning curve kind"),
    crewSize: ifGiven("crew size", "each way's own crew"),
  },
  returns: columns.table(
    "labor hours, days and cost of each way; last, for each way after the first, the count at which it and the first cost the same",
  ),
  sources: ["exact arithmetic; learning as LABOR_LEARNING", "The trade's ratio: common practice, no source"],
  assumptions: [
    "With a learning rate the hours each are those of the first one.",
    "The machine is paid for as long as the crew works, set-up too.",
    "The trade sets about four windows flat on the deck in the time of one in a standing wall (common practice, no source); the crew's own hours count.",
  ],
  cautions: [
    "Falls, weather and damage cost more on one way than on another: what the column risk leaves out is not priced.",
  ],
  example: {
    args: {
      count: 10,
      ways: [
        ["flat on the deck", 1, 20, 2],
        ["standing", 2, 10, 2],
      ],
      productiveHours: 5,
      crewWage: 40,
    },
    gives: [
      ["flat on the deck", 30, 3, 1200],
      ["standing", 30, 3, 1200],
      ["break-even count", 10, "", ""],
    ],
    within: 1e-9,
    source: "exact arithmetic: 20 + n = 10 + 2 n at n = 10",
  },
  refuses: [
    {
      args: {
        ways: [
          ["flat on the deck", 1, 20, 0],
          ["standing", 2, 10, 2],
        ],
      },
      says: "neither its row nor the call nor the basis gives it",
    },
    {
      args: {
        ways: [
          ["flat on the deck", 1, 20, 2],
          ["standing", 2, 10, 2],
          ["standing", 2, 10, 2],
        ],
      },
      says: "each way is named in the result",
    },
    { args: { count: 0.1 }, says: "it must be from 1 to 100000" },
  ],
  notFor: "Safety and quality are not priced here: a way that fails them is out whatever it costs.",
  run(a, tape) {
    const given = a.ways.map(
      (w): Way => ({
        way: w.way,
        hoursEach: w.hoursEach,
        setUpHours: w.setUp,
        crewSize: crewOf(w.crewSize, a.crewSize, w.way),
        machinePerHour: w.machine,
        riskShare: w.risk,
      }),
    );
    const terms = {
      learningRate: a.learningRate,
      curveKind: a.learningCurveKind,
      pace: a.pace,
      productiveHours: a.productiveHours,
      wage: a.crewWage,
      burden: a.laborBurden,
    };
    const { ways: found, breakEven } = compareWays(a.count, given, terms, tape);
    const last = breakEven.map(({ way, count }): Row => {
      const name = breakEven.length === 1 ? "break-even count" : `break-even count, ${way}`;
      return { way: name, hours: count ?? "never", days: "", cost: "" };
    });
    return spill(columns, [...found, ...last], "ways", "hours, days, cost; break-even count", tape);
  },
});
