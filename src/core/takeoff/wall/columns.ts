import { BadInput, plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { exceeds, isBetween, wholeAbove } from "./close.ts";
import { elevation } from "./elevation.ts";
import { type PlacedOpening, placedOpenings, rightFt } from "./opening.ts";
import { checkOpenings, heightAtFt, type OpenedWall } from "./wall.ts";

export interface ColumnRules {
  readonly spacingFt: number;
  /** "module": on multiples of the spacing from the left end; "even": equal bays between ends and openings */
  readonly layout: "module" | "even";
  /** across the wall face */
  readonly columnFt: number;
  /** farthest that the center line of the column beside an opening may stand from its edge */
  readonly jambFt: number;
}

export interface Column {
  readonly xFt: number;
  /** why it stands there: "end", "spacing", "left of W1", "right of W1" */
  readonly role: string;
}

/** A column in a list of all walls. */
export interface ColumnRow {
  readonly wall: string;
  readonly positionFt: number;
  /** to the column before, 0 for the first of a wall */
  readonly bayFt: number;
  readonly stands: string;
}

/** Most columns of one wall. */
const MOST = 2000;

/**
 * Column lines of walls, one wall after the other.
 * @throws BadInput as wallColumns, or where an opening does not fit in its wall
 */
export function columnRows(walls: readonly OpenedWall[], rules: ColumnRules, tape?: Tape): readonly ColumnRow[] {
  const rows = walls.flatMap((w) => {
    checkOpenings(w);
    const openings = placedOpenings(w.openings.map((o) => ({ ...o, sillFt: o.sillFt ?? 0 })));
    const columns = wallColumns(w.wall.name, w.wall.lengthFt, openings, rules, tape);
    cautionWideBays(w.wall.name, columns, rules.spacingFt, tape);
    tape?.show(
      elevation("columns", w.wall, openings, {
        uprights: columns.map(({ xFt }) => ({ xFt, bottomFt: 0, topFt: heightAtFt(w.wall, xFt) })),
        alt: `${columns.length} columns`,
      }),
    );
    return columns.map((c, i) => ({
      wall: w.wall.name,
      positionFt: c.xFt,
      bayFt: i === 0 ? 0 : c.xFt - (columns[i - 1]?.xFt ?? 0),
      stands: c.role,
    }));
  });
  tape?.step("n", "columns of all walls", rows.length, "columns", "");
  return rows;
}

function cautionWideBays(wall: string, columns: readonly Column[], spacingFt: number, tape: Tape | undefined): void {
  const widest = Math.max(...columns.map((c, i) => c.xFt - (columns[i - 1]?.xFt ?? 0)));
  if (!exceeds(widest, spacingFt)) return;
  tape?.caution(
    `The widest bay of ${wall} is ${plain(widest)} ft, over an opening: wider than the spacing of ${plain(spacingFt)} ft. Check the header and the columns beside it.`,
  );
}

/**
 * Column lines of one wall: one at each end, none inside an opening, on each side of every opening one whose center line is no farther from its
 * edge than the jamb distance, and between them no bay above the spacing but over openings. On a module the columns that the ones beside openings
 * make needless are left out.
 * @throws BadInput where there is no room for a column beside an opening
 */
export function wallColumns(
  wall: string,
  lengthFt: number,
  openings: readonly PlacedOpening[],
  rules: ColumnRules,
  tape?: Tape,
): readonly Column[] {
  within(`The number of spacings in ${wall}`, lengthFt / rules.spacingFt, 0, MOST, "", "columns of one wall");
  const placed = [...openings].sort((a, b) => a.leftFt - b.leftFt);
  checkRoom(wall, lengthFt, placed, rules.columnFt);
  const module = rules.layout === "module" ? rules.spacingFt : lengthFt;
  let columns = onModule(lengthFt, module, rules.columnFt).filter(
    (c) => c.role === "end" || !placed.some((o) => intrudes(c.xFt, o, rules.columnFt)),
  );
  const from = rules.layout === "module" ? "on the module" : "at the ends";
  tape?.step("n_0", `${wall}: columns ${from}, none in an opening`, columns.length, "columns", "");
  for (const o of placed) columns = besideOpening(columns, o, rules);
  tape?.step("n_1", "with one on each side of every opening", columns.length, "columns", "");
  return rules.layout === "even" ? evenBays(columns, placed, rules) : withoutNeedless(columns, placed, rules);
}

/** Columns on a module; where the last one would run into the end column it moves to the middle of what is left. */
function onModule(lengthFt: number, stepFt: number, columnFt: number): Column[] {
  const columns: Column[] = [{ xFt: 0, role: "end" }];
  for (let i = 1; exceeds(lengthFt, i * stepFt); i++) {
    const xFt = i * stepFt;
    const clear = lengthFt - xFt >= columnFt;
    columns.push({ xFt: clear ? xFt : ((i - 1) * stepFt + lengthFt) / 2, role: "spacing" });
  }
  return [...columns, { xFt: lengthFt, role: "end" }];
}

function intrudes(xFt: number, o: PlacedOpening, columnFt: number): boolean {
  return isBetween(xFt, o.leftFt - columnFt / 2, rightFt(o) + columnFt / 2);
}

/** Room for the end columns, and for one column between two openings side by side. Openings one over the other share their columns. */
function checkRoom(wall: string, lengthFt: number, placed: readonly PlacedOpening[], columnFt: number): void {
  const ends: PlacedOpening[] = [];
  for (const o of placed) {
    const right = rightFt(o);
    if (exceeds(columnFt / 2, o.leftFt) || exceeds(right, lengthFt - columnFt / 2)) {
      throw new BadInput(
        `The opening ${o.name} of ${wall} reaches from ${plain(o.leftFt)} to ${plain(right)} ft`,
        `the end columns leave ${plain(columnFt / 2)} to ${plain(lengthFt - columnFt / 2)} ft of the wall`,
        "Move the opening, or check its width and left edge in feet",
      );
    }
    for (const before of ends) {
      const gap = o.leftFt - rightFt(before);
      const stacked = !exceeds(o.leftFt, before.leftFt) && !exceeds(Math.abs(o.widthFt - before.widthFt), 0);
      if (exceeds(columnFt, gap) && !stacked) {
        throw new BadInput(
          `The openings ${before.name} and ${o.name} of ${wall} leave ${plain(Math.max(0, gap))} ft between them`,
          `a column of ${plain(columnFt)} ft has to stand there`,
          "Move one of them, or give both as one opening",
        );
      }
    }
    ends.push(o);
  }
}

/** Adds a column at each edge of an opening that has none within the jamb distance. */
function besideOpening(columns: readonly Column[], o: PlacedOpening, rules: ColumnRules): Column[] {
  const half = rules.columnFt / 2;
  const out = [...columns];
  const right = rightFt(o);
  if (!columns.some((c) => beside(o.leftFt - c.xFt, rules))) {
    out.push({ xFt: o.leftFt - half, role: `left of ${o.name}` });
  }
  if (!columns.some((c) => beside(c.xFt - right, rules))) {
    out.push({ xFt: right + half, role: `right of ${o.name}` });
  }
  return out.sort((a, b) => a.xFt - b.xFt);
}

/** Whether a center line so far from an edge is that of the column beside it: clear of the opening, and near enough. */
function beside(distanceFt: number, { columnFt, jambFt }: ColumnRules): boolean {
  const near = Math.max(jambFt, columnFt / 2);
  return !exceeds(columnFt / 2, distanceFt) && !exceeds(distanceFt, near);
}

/** Splits each bay that no opening fills into the fewest equal bays that the spacing allows. */
function evenBays(columns: readonly Column[], placed: readonly PlacedOpening[], rules: ColumnRules): Column[] {
  return columns.flatMap((c, i) => {
    const next = columns[i + 1];
    if (next === undefined) return [c];
    const gap = next.xFt - c.xFt;
    const open = placed.some((o) => !exceeds(c.xFt, o.leftFt) && !exceeds(rightFt(o), next.xFt));
    const bays = open ? 1 : Math.max(1, wholeAbove(gap / rules.spacingFt));
    const inner = Array.from({ length: bays - 1 }, (_, k) => ({
      xFt: c.xFt + (gap * (k + 1)) / bays,
      role: "spacing",
    }));
    return [c, ...inner];
  });
}

/** Leaves out columns of the module that neither the spacing nor an opening needs. */
function withoutNeedless(columns: readonly Column[], placed: readonly PlacedOpening[], rules: ColumnRules): Column[] {
  const kept = [...columns];
  for (let i = kept.length - 2; i > 0; i--) {
    const [before, c, after] = kept.slice(i - 1, i + 2) as [Column, Column, Column];
    if (c.role !== "spacing") continue;
    const without = kept.filter((_, k) => k !== i);
    const close = !exceeds(after.xFt - before.xFt, rules.spacingFt);
    if (close && placed.every((o) => besideOpening(without, o, rules).length === without.length)) kept.splice(i, 1);
  }
  return kept;
}
