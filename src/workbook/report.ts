import type { Table } from "../core/kit/tape.ts";

/** What a row of a report is: its title; a sentence, which runs on over empty cells; the heading of a list; a row of a list, whose texts wrap in their columns. */
export type ReportRole = "title" | "sentence" | "heading" | "row";

/** Widths of columns in characters: the one with the longest texts is the wide one, so that a page holds them all in a size that is read. */
const NARROWEST = 10;
const USUAL_MOST = 28;
const WIDEST = 70;

/** How a table of the pane stands on a worksheet, so that it reads and prints: each list begins with its heading behind an empty row. */
export interface ReportLook {
  readonly roles: readonly ReportRole[];
  readonly widths: readonly number[];
}

export function reportLook(rows: Table): ReportLook {
  const roles = rows.map((row, r) => roleOf(row, r === 0 ? undefined : rows[r - 1]));
  const listed = rows.filter((_, r) => roles[r] === "heading" || roles[r] === "row");
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const longest = Array.from({ length: columns }, (_, c) =>
    Math.max(0, ...listed.map((row) => String(row[c] ?? "").length)),
  );
  const wide = longest.indexOf(Math.max(...longest));
  const widths = longest.map((length, c) => Math.max(NARROWEST, Math.min(c === wide ? WIDEST : USUAL_MOST, length)));
  return { roles, widths };
}

function roleOf(row: Table[number], before: Table[number] | undefined): ReportRole {
  if (before === undefined) return "title";
  if (row.slice(1).every((cell) => cell === "")) return "sentence";
  return before.every((cell) => cell === "") ? "heading" : "row";
}

/** Rows of one kind that follow each other. */
export interface ReportRun {
  readonly role: ReportRole;
  readonly start: number;
  readonly count: number;
}

/** The rows of a report in runs of one kind. */
export function reportRuns(roles: readonly ReportRole[]): ReportRun[] {
  const runs: ReportRun[] = [];
  roles.forEach((role, start) => {
    const last = runs.at(-1);
    if (last?.role === role) runs[runs.length - 1] = { ...last, count: last.count + 1 };
    else runs.push({ role, start, count: 1 });
  });
  return runs;
}
