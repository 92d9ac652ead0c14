import { BadInput, OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { CRITICAL_LIFT } from "./tables/rules.ts";

/** A row of the crane's load chart. */
export interface ChartRow {
  readonly radiusFt: number;
  readonly capacityLb: number;
  /** length of the boom, where the chart says it */
  readonly boomFt: number | undefined;
}

const CRANE_VERDICTS = ["within the limit", "above the limit", "above the chart"] as const;

export interface CraneCheck {
  readonly capacityLb: number;
  /** radius of the row that is read */
  readonly atRadiusFt: number;
  readonly loadLb: number;
  readonly ratio: number;
  readonly verdict: (typeof CRANE_VERDICTS)[number];
}

const NO_INTERPOLATION =
  "crane safety body, load-chart quiz: the smaller value at the next larger radius, no interpolation";

/**
 * A lift against a load chart: the chart's value at the next larger radius, never one between rows; rigging and jib are part of the load.
 * @param weightLb static weight of the load, above 0
 * @param radiusFt from the center of rotation to the load's center of gravity, inside the chart
 * @param riggingLb hook block, slings, spreader and what the chart deducts for a jib, 0 or more
 * @param limitShare greatest share of the chart that the plan allows, above 0 to 1
 * @throws OutOfRange for a radius outside the chart; BadInput for a chart that cannot be
 * Source: the user's own chart; reading between rows as published crane practice.
 */
export function liftCrane(
  weightLb: number,
  radiusFt: number,
  chart: readonly ChartRow[],
  riggingLb: number,
  limitShare: number,
  tape?: Tape,
): CraneCheck {
  const row = chartRow(sortedChart(chart), radiusFt);
  tape?.step("R", `next radius of the chart from ${plain(radiusFt)} ft on`, row.radiusFt, "ft", NO_INTERPOLATION);
  tape?.step("C", "capacity at R", row.capacityLb, "lb", "the chart given");
  const loadLb = weightLb + riggingLb;
  tape?.step("P", `weight ${plain(weightLb)} + rigging ${plain(riggingLb)}`, loadLb, "lb", "rigging counts as load");
  const ratio = loadLb / row.capacityLb;
  tape?.step("P/C", "load / capacity", ratio, "", "arithmetic");
  const verdict = verdictOf(ratio, limitShare);
  cautionCrane(ratio, limitShare, tape);
  tape?.step("verdict", `P/C against ${plain(limitShare)} of the chart`, verdict, "", CRITICAL_LIFT.source);
  return { capacityLb: row.capacityLb, atRadiusFt: row.radiusFt, loadLb, ratio, verdict };
}

function verdictOf(ratio: number, limitShare: number): CraneCheck["verdict"] {
  if (ratio > 1) return "above the chart";
  return ratio > limitShare ? "above the limit" : "within the limit";
}

function cautionCrane(ratio: number, limitShare: number, tape: Tape | undefined): void {
  const percent = `${plain(ratio * 100)} % of the chart`;
  if (ratio > 1) tape?.caution(`The load is ${percent}: this crane cannot lift it at this radius.`);
  else if (ratio > limitShare)
    tape?.caution(`The load is ${percent}, above the ${plain(limitShare * 100)} % that the plan allows.`);
  if (limitShare > CRITICAL_LIFT.share) {
    tape?.caution(
      `Above ${plain(CRITICAL_LIFT.share * 100)} % of the chart a lift is a critical one (${CRITICAL_LIFT.source}).`,
    );
  }
}

/** The chart from the smallest radius on, checked. */
function sortedChart(chart: readonly ChartRow[]): readonly ChartRow[] {
  const booms = new Set(chart.map((row) => row.boomFt));
  if (booms.size > 1) {
    const [a, b] = [...booms].map((ft) => (ft === undefined ? "no length" : `${plain(ft)} ft`));
    throw new BadInput(
      `The chart has several boom lengths, ${a} and ${b}`,
      "one lift has one boom length",
      "Give the rows of the boom that will be used",
    );
  }
  const rows = [...chart].sort((a, b) => a.radiusFt - b.radiusFt);
  rows.forEach((row, i) => {
    const before = rows[i - 1];
    if (before === undefined) return;
    if (row.radiusFt === before.radiusFt) {
      throw new BadInput(
        `The chart gives ${plain(row.radiusFt)} ft twice`,
        "one radius has one capacity",
        "Leave one of the rows out",
      );
    }
    if (row.capacityLb > before.capacityLb) {
      throw new BadInput(
        `The chart's capacity rises from ${plain(before.capacityLb)} lb at ${plain(before.radiusFt)} ft to ${plain(row.capacityLb)} lb at ${plain(row.radiusFt)} ft`,
        "a crane lifts less the farther it reaches",
        "Check these rows against the maker's chart",
      );
    }
  });
  return rows;
}

function chartRow(rows: readonly ChartRow[], radiusFt: number): ChartRow {
  const [first, last] = [rows[0], rows.at(-1)];
  const row = rows.find((r) => r.radiusFt >= radiusFt);
  if (first !== undefined && row !== undefined && radiusFt >= first.radiusFt) return row;
  throw new OutOfRange(
    `The radius is ${plain(radiusFt)} ft`,
    first === undefined || last === undefined
      ? "the chart has no row"
      : `the chart goes from ${plain(first.radiusFt)} to ${plain(last.radiusFt)} ft and is not read beyond its rows`,
    "Use a radius of the chart, or the chart for this reach",
  );
}
