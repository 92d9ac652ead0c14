import { COST_KINDS, type CostLine } from "../../core/cost/lines.ts";
import { BadInput, plain } from "../../core/kit/refusal.ts";
import type { Notes, Param } from "../declare/param.ts";
import { optional } from "../declare/param.ts";
import { isRange, type RawArgument } from "../declare/raw.ts";
import { measure } from "../declare/scalar.ts";
import { type ExampleRows, table } from "../declare/table.ts";
import { choice, text } from "../declare/word.ts";

const end = (says: string, heads: readonly string[]) =>
  optional(measure("$", { says, above: 0, max: 1e9, heads }), undefined, "");

const lineTable = table(
  {
    line: text({ says: "name of the line", heads: ["cost line", "task", "item", "name"] }),
    amount: measure("$", {
      says: "its cost",
      min: -1e9,
      max: 1e9,
      usual: { min: 0.01, max: 1e8, ask: "is it a credit, or a blank?" },
      heads: ["cost"],
    }),
    kind: optional(
      choice(COST_KINDS, {
        says: "what it is for: sales tax falls on material",
        also: { materials: "material", subcontractor: "subcontract", sub: "subcontract" },
      }),
      undefined,
      "",
    ),
    low: end("the least it may come to", ["least"]),
    high: end("the most it may come to", ["most", "greatest"]),
  },
  { says: "the lines of cost: line, amount $, kind, low $, high $", maxRows: 100, knowsTotals: true, unlike: true },
);

/** Columns of a schedule or a priced order that a list of costs does not take. */
const LEFT_OUT = ["hours", "days", "packs", "price"];

const word = (cell: unknown) => (typeof cell === "string" ? (cell.split(",")[0] ?? "").trim().toLowerCase() : "");

/** The range without the columns that LABOR_SCHEDULE and COST_ORDER give beside name and amount. */
function ownColumns(raw: RawArgument): RawArgument {
  if (!isRange(raw)) return raw;
  const heads = (raw[0] ?? []).map(word);
  const kept = heads.map((head, i) => (LEFT_OUT.includes(head) ? -1 : i)).filter((i) => i >= 0);
  const named = heads.includes("amount") || heads.includes("cost");
  return named && kept.length < heads.length ? raw.map((row) => kept.map((i) => row[i])) : raw;
}

/**
 * A list of costs, also as LABOR_SCHEDULE and COST_ORDER give it: further columns are left out by their headings, and a row named total that sums the rows
 * above is no line.
 */
export const costLines: Param<readonly CostLine[], ExampleRows> = {
  ...lineTable,
  read(raw, at, notes) {
    const { value } = lineTable.read(ownColumns(raw), at, notes);
    const lines = withoutTotal(value, at, notes);
    return { value: lines, shown: `${lines.length} ${lines.length === 1 ? "line" : "lines"}` };
  },
};

function withoutTotal(lines: readonly CostLine[], at: string, notes: Notes): readonly CostLine[] {
  const named = lines.findIndex((l) => l.line.toLowerCase() === "total");
  if (named < 0) return lines;
  const above = lines.slice(0, named);
  const sum = above.reduce((total, l) => total + l.amount, 0);
  const total = lines[named]?.amount ?? 0;
  if (named < lines.length - 1 || named === 0 || Math.abs(sum - total) > 0.01) {
    throw new BadInput(
      `The row total of ${at} is ${plain(total)}`,
      named < lines.length - 1 ? "lines stand below it" : `the lines above it sum to ${plain(sum)}`,
      "Leave the row of the total out, or call the line otherwise",
    );
  }
  notes.assume(`The row total of ${at} is left out: it sums the lines above.`);
  return above;
}
