import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { laborDays, type WorkingDay } from "./days.ts";
import { laborHours } from "./hours.ts";
import { burdened } from "./rate.ts";

export interface Task {
  readonly task: string;
  readonly quantity: number;
  /** labor hours for one unit */
  readonly ratePerUnit: number;
  readonly crewSize: number;
}

export interface LaborCost {
  /** $/h of one worker, without burden */
  readonly wage: number;
  readonly burden: number;
}

export interface TaskRow {
  readonly task: string;
  readonly hours: number;
  readonly days: number;
  readonly cost: number;
}

/**
 * Hours, days and cost of tasks done one after the other, and their sums.
 * Arithmetic, as LABOR_HOURS and LABOR_DAYS.
 */
export function laborSchedule(
  tasks: readonly Task[],
  pace: number,
  day: WorkingDay,
  cost: LaborCost,
  tape?: Tape,
): readonly TaskRow[] {
  const wage = burdened(cost.wage, cost.burden);
  tape?.step("w", `wage ${plain(cost.wage)} x (1 + burden ${plain(cost.burden)})`, wage, "$/h", "arithmetic");
  const rows = tasks.map((task): TaskRow => {
    const hours = laborHours(task.quantity, task.ratePerUnit, pace);
    const days = laborDays(hours, { ...day, crewSize: task.crewSize });
    tape?.step(
      "t",
      `${task.task}: ${plain(task.quantity)} x ${plain(task.ratePerUnit)} h / ${plain(pace)}, crew of ${plain(task.crewSize)}`,
      hours,
      "h",
      "arithmetic",
    );
    return { task: task.task, hours, days, cost: hours * wage };
  });
  if (tasks.length > 1)
    tape?.assume("The tasks follow one another: the days of tasks done side by side do not add up.");
  const sum = (of: (r: TaskRow) => number) => rows.reduce((total, r) => total + of(r), 0);
  return [...rows, { task: "total", hours: sum((r) => r.hours), days: sum((r) => r.days), cost: sum((r) => r.cost) }];
}
