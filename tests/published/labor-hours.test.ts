import { expect, test } from "vitest";
import { laborDays } from "../../src/core/labor/days.ts";
import { laborHours } from "../../src/core/labor/hours.ts";
import { laborSchedule } from "../../src/core/labor/schedule.ts";
import { halfLastDigit, rows } from "./rows.ts";

type Row = Readonly<Record<string, string>>;

const ratio = (text: string) =>
  text
    .split("/")
    .map(Number)
    .reduce((a, b) => a / b);

function answer(row: Row): number {
  const [quantity, ratePerUnit] = [Number(row.quantity), ratio(row.rate ?? "")];
  const crew = { crewSize: 1, productiveHours: Number(row.hours_a_day || 8), weatherShare: 0 };
  if (row.what === "hours") return laborHours(quantity, ratePerUnit, 1);
  if (row.what === "days") return laborDays(laborHours(quantity, ratePerUnit, 1), crew);
  const task = { task: "task", quantity, ratePerUnit, crewSize: 1 };
  return laborSchedule([task], 1, crew, { wage: Number(row.wage), burden: 0 }).at(-1)?.cost ?? 0;
}

test.each(rows("labor-hours.csv").map((r) => [`${r.what} of ${r.quantity} x ${r.rate}: ${r.source}`, r] as const))(
  "%s",
  (_name, row) => {
    const { printed = "" } = row;
    expect(Math.abs(answer(row) - Number(printed))).toBeLessThanOrEqual(halfLastDigit(printed) * (1 + 1e-9));
  },
);
