import { BadInput } from "../../core/kit/refusal.ts";
import { type CrewRate, crewRate } from "../../core/labor/rate.ts";
import { laborSchedule, type TaskRow } from "../../core/labor/schedule.ts";
import { ifGiven, needed, orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { measure, number } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { table } from "../declare/table.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { rate } from "./hours.ts";

const crewTable = table(
  {
    worker: text({ says: "kind of worker", heads: ["trade", "name"] }),
    number: number({ says: "how many of them", min: 0.25, max: 200, heads: ["count", "workers"] }),
    wage: measure("$/h", {
      says: "wage of one without burden",
      above: 0,
      max: 1000,
      usual: { min: 8, max: 200, ask: "is it dollars an hour?" },
    }),
  },
  { says: "the crew: worker, number, wage $/h", maxRows: 100 },
);

const rateColumns = columnsOf<CrewRate>(
  ["crew", "$/h", (r) => r.crewPerHour],
  ["mean wage", "$/h", (r) => r.meanWage],
  ["burdened", "$/h", (r) => r.burdenedWage],
);

export const laborRate = familyFunction({
  name: "LABOR_RATE",
  summary: "What an hour of a crew costs: all wages, the mean wage, and the mean wage with its burden.",
  params: { crew: crewTable },
  placed: { laborBurden: orElse("labor burden") },
  returns: rateColumns.table("wages of the whole crew, mean wage of one worker, and that with burden"),
  sources: ["exact arithmetic"],
  assumptions: ["The mean wage is what the term crew wage takes: without burden."],
  example: {
    args: {
      crew: [
        ["lead", 1, 40],
        ["carpenter", 3, 32],
      ],
      laborBurden: 0.25,
    },
    gives: [[136, 34, 42.5]],
    within: 1e-9,
    source: "exact arithmetic: 40 + 3 x 32; 136 / 4; 34 x 1.25",
  },
  refuses: [
    { args: { laborBurden: 250 }, says: "it must be from 0 to 2" },
    {
      args: {
        crew: [
          ["lead", 1, 40],
          ["", 3, 32],
        ],
      },
      says: "Worker in row 2 of crew is missing",
    },
  ],
  notFor: "Payroll, overtime and prevailing wages go by the books of the bookkeeper.",
  run: (a, tape) => spill(rateColumns, [crewRate(a.crew, a.laborBurden, tape)], "w", "crew, mean, burdened", tape),
});

/** Workers in the crew of one row; one that a table gives no crew takes the crew size of the call or the basis. */
export const rowCrew = optional(
  number({ says: "workers on it, where not the usual crew", min: 0.25, max: 200, heads: ["crew", "workers"] }),
  undefined,
  "",
);

/** The crew of a row, its own or that of all. */
export function crewOf(own: number | undefined, all: number | undefined, what: string): number {
  const crew = own ?? all;
  if (crew !== undefined) return crew;
  throw new BadInput(
    `The crew size of ${what} is missing`,
    "neither its row nor the call nor the basis gives it",
    "Fill in its crew size, or a row Crew size in the basis",
  );
}

const tasks = table(
  {
    task: text({ says: "name of the task", heads: ["name", "work"] }),
    quantity: number({
      says: "quantity, in the unit of the rate",
      min: 0,
      max: 1e7,
      usual: { min: 0.001, max: 1e7, ask: "is its cell blank?" },
      heads: ["qty", "count"],
    }),
    rate,
    crewSize: rowCrew,
    unit: optional(text({ says: "unit of the quantity, for the reader" }), "", ""),
  },
  { says: "the tasks: task, quantity, rate h/unit, crew size, unit", maxRows: 500, unlike: true },
);

const taskColumns = columnsOf<TaskRow>(
  ["task", "", (r) => r.task],
  ["hours", "h", (r) => r.hours],
  ["days", "days", (r) => r.days],
  ["cost", "$", (r) => r.cost],
);

export const schedule = familyFunction({
  name: "LABOR_SCHEDULE",
  summary: "Hours, days and cost of tasks done one after the other, and their sums.",
  params: { tasks },
  placed: {
    pace: orElse("pace"),
    crewSize: ifGiven("crew size", "each task's own crew"),
    productiveHours: needed("productive hours"),
    weatherDays: orElse("weather days"),
    crewWage: needed("crew wage"),
    laborBurden: orElse("labor burden"),
  },
  returns: taskColumns.table("labor hours, days of its crew and cost of each task; last the total"),
  sources: ["exact arithmetic", "Estimating textbook (about 2007), Example 15-4 p 193: hours x wage"],
  example: {
    args: { tasks: [["doors", 48, 1]], crewSize: 2, productiveHours: 8, crewWage: 13.5 },
    gives: [
      ["doors", 48, 3, 648],
      ["total", 48, 3, 648],
    ],
    within: 0.5,
    source: "Estimating textbook (construction estimating, ed. about 2007), Example 15-4 p 193: 48 h x 13.50 = 648",
  },
  refuses: [
    { args: { crewSize: null }, says: "neither its row nor the call nor the basis gives it" },
    { args: { crewSize: 0.2 }, says: "it must be from 0.25 to 200" },
  ],
  notFor: "Tasks that overlap or wait for each other need a schedule with links.",
  run(a, tape) {
    const rows = a.tasks.map((t) => ({
      task: t.task,
      quantity: t.quantity,
      ratePerUnit: t.rate,
      crewSize: crewOf(t.crewSize, a.crewSize, t.task),
    }));
    const day = { productiveHours: a.productiveHours, weatherShare: a.weatherDays };
    const cost = { wage: a.crewWage, burden: a.laborBurden };
    return spill(taskColumns, laborSchedule(rows, a.pace, day, cost, tape), "tasks", "hours, days, cost; total", tape);
  },
});
