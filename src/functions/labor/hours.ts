import { laborDays } from "../../core/labor/days.ts";
import { laborHours } from "../../core/labor/hours.ts";
import { learningHours } from "../../core/labor/learning.ts";
import { needed, orElse } from "../basis/term.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { measure, number, whole } from "../declare/scalar.ts";
import { familyFunction } from "./family.ts";

const NAVY = "US Navy Builder Advanced course NAVEDTRA 14045, pp 2-27, 2-28 (public domain)";

export const rate = number({
  says: "labor hours for one unit, h",
  above: 0,
  max: 10_000,
  usual: { min: 0.001, max: 200, ask: "is it hours for one unit, not units an hour?" },
  heads: ["h/unit", "hours a unit", "hours each"],
});

export const hours = familyFunction({
  name: "LABOR_HOURS",
  summary: "Labor hours of a task from its quantity, the hours of one unit and the pace.",
  params: {
    quantity: number({ says: "quantity, in the unit of the rate", min: 0, max: 1e7 }),
    rate,
  },
  placed: { pace: orElse("pace") },
  returns: quantityOf("h", "labor hours, of one worker whatever the crew"),
  sources: [`${NAVY}: man-hours = quantity x man-hours of a unit`],
  assumptions: [
    "Efficiency above 1 means slower in one book and faster in another: pace is output an hour, 0.8 is a fifth less.",
  ],
  example: {
    args: { quantity: 16_000, rate: 0.033 },
    gives: 528,
    within: 4,
    source: `${NAVY}: 16,000 sf at 33 man-hours a 1000 sf are 66 man-days of 8 hours`,
  },
  refuses: [
    { args: { quantity: 16000000 }, says: "it must be from 0 to 10000000" },
    { args: { rate: null }, says: "Rate is missing" },
  ],
  notFor: "Work that the office has never done has no rate in any book: time a first piece.",
  run: (a, tape) => laborHours(a.quantity, a.rate, a.pace, tape),
});

export const days = familyFunction({
  name: "LABOR_DAYS",
  summary: "Days that a crew takes for labor hours, with productive hours a day and days lost to weather.",
  params: { hours: measure("h", { says: "labor hours", min: 0, max: 1e7 }) },
  placed: {
    crewSize: needed("crew size"),
    productiveHours: needed("productive hours"),
    weatherDays: orElse("weather days"),
  },
  returns: quantityOf("days", "days, not rounded; the working has the whole days"),
  sources: [
    `${NAVY}: duration = man-days / crew / availability / man-day equivalent`,
    "US Navy NAVEDTRA 14233, ch. 2 (public domain): man-day equivalent of a 9-hour day 1.125",
  ],
  assumptions: [
    "One manual counts the whole workday, the other takes off lunch, travel and breaks: productive hours are what is left for the work.",
  ],
  example: {
    args: { hours: 528, crewSize: 1, productiveHours: 8 },
    gives: 66,
    within: 0.5,
    source: `${NAVY}: 66 man-days of 8 hours`,
  },
  refuses: [
    { args: { crewSize: 0.1 }, says: "it must be from 0.25 to 200" },
    { args: { hours: null }, says: "Hours is missing" },
  ],
  notFor: "Tasks that overlap or wait for each other need a schedule with links, not a sum of days.",
  run(a, tape) {
    const crew = { crewSize: a.crewSize, productiveHours: a.productiveHours, weatherShare: a.weatherDays };
    return laborDays(a.hours, crew, tape);
  },
});

export const learning = familyFunction({
  name: "LABOR_LEARNING",
  summary: "Hours of a number of units by a learning curve, unit curve or cumulative average.",
  params: {
    first: measure("h", { says: "hours of the first unit", above: 0, max: 1e6 }),
    count: whole({ says: "number of units", min: 1, max: 100_000 }),
  },
  placed: { learningRate: needed("learning rate"), learningCurveKind: orElse("learning curve kind") },
  returns: quantityOf("h", "hours of all units together"),
  sources: [
    "Unit curve: operations notes, 80 % curve; unit x takes first x^b, b = log2(rate)",
    "Average curve: managerial accounting textbook ch. 15, 80 % curve; the mean of x units is first x^b",
  ],
  assumptions: [
    "Both curves are called by the same percent and differ much: unit 2 of an 80 % average curve takes 60 %.",
  ],
  example: {
    args: { first: 100, count: 4, learningRate: 0.8, learningCurveKind: "average" },
    gives: 256,
    within: 0.5,
    source: "Managerial accounting textbook ch. 15, 80 % cumulative average curve, 100 h first unit: 4 units, 256 h",
  },
  refuses: [
    { args: { count: 0.4 }, says: "it must be from 1 to 100000" },
    { args: { first: null }, says: "First is missing" },
  ],
  notFor: "Work of changing crews or long breaks is learned anew: no curve holds then.",
  run: (a, tape) => learningHours(a.first, a.count, a.learningRate, a.learningCurveKind, tape),
});
