import { BadInput } from "../../core/kit/refusal.ts";
import { isBlank, isCellError, quote, type Raw } from "../declare/raw.ts";
import { SHARED_WORDS, type TermName } from "./glossary/index.ts";
import { onceForEach } from "./once.ts";
import { plainName, termOf } from "./words.ts";

/** A row of a basis that names a term. */
export interface BasisRow {
  readonly term: TermName;
  readonly value: Raw;
  /** unit of a bare number, "" where none is given */
  readonly unit: string;
  /** number in the range, from 1 */
  readonly row: number;
}

/** A basis as read. */
export interface Basis {
  readonly rows: ReadonlyMap<TermName, readonly BasisRow[]>;
  /** rows with a word that several terms share */
  readonly shared: readonly { readonly word: string; readonly row: number }[];
  /** rows whose name is no term, for the search of near misses */
  readonly unknown: readonly { readonly name: string; readonly row: number }[];
  /** rows with a value and no name */
  readonly nameless: readonly number[];
  /** whether any row names a term, filled in or not */
  readonly known: boolean;
}

const MOST_ROWS = 500;
const HEADINGS = new Set(["basis", "name", "term", "item"]);

/** Whether a range says of itself that it is a basis: its first cell is the word. */
export function saysBasis(cells: readonly (readonly Raw[])[]): boolean {
  const first = cells[0]?.[0];
  return typeof first === "string" && plainName(first) === "basis";
}

/**
 * Reads rows of name, value, unit. A row without a name and a value is no row; names that are no terms are left alone.
 * @param at how a sentence names the range
 */
export function readBasis(cells: readonly (readonly Raw[])[], at: string): Basis {
  const filled = lastFilled(cells);
  if (filled > MOST_ROWS) {
    throw new BadInput(`The ${at} has ${filled} rows`, `at most ${MOST_ROWS} are read`, "Point at the rows that count");
  }
  if (cells.every((row) => row.length < 2)) {
    throw new BadInput(`The ${at} has one column`, "a row is a name, a value and a unit", "Point at all three columns");
  }
  const rows = new Map<TermName, BasisRow[]>();
  const shared: { word: string; row: number }[] = [];
  const unknown: { name: string; row: number }[] = [];
  const nameless: number[] = [];
  let known = false;
  for (let i = 0; i < filled; i++) {
    const cellsOf = cells[i] ?? [];
    const name = cellsOf[0];
    const value = cellsOf[1];
    const row = i + 1;
    const empty = isBlank(value) || value === undefined;
    if (isBlank(name) || name === 0) {
      if (!empty && value !== 0) nameless.push(row);
      continue;
    }
    if (typeof name !== "string") {
      throw new BadInput(
        `Row ${row} of the ${at} has ${quote(name)} for a name`,
        "names stand in the first column, values in the second",
        "Point at the columns name, value, unit",
      );
    }
    const { plain, term, spelled, word, unit: named } = understood(name);
    if (i === 0 && HEADINGS.has(plain)) continue;
    if (term === undefined) {
      if (Object.hasOwn(SHARED_WORDS, word)) {
        if (!empty) shared.push({ word, row });
      } else unknown.push({ name: spelled, row });
      continue;
    }
    known = true;
    if (empty) continue;
    const own = unitText(cellsOf[2]);
    agree(own, named, row, at);
    const read = { term, value, unit: own === "" ? named : own, row };
    const before = rows.get(term);
    if (before === undefined) rows.set(term, [read]);
    else before.push(read);
  }
  return { rows, shared, unknown, nameless, known };
}

/** What a name in the first column says. */
interface Understood {
  /** the whole of it, as compared */
  readonly plain: string;
  readonly term: TermName | undefined;
  /** without a unit beside it: as typed, and as compared */
  readonly spelled: string;
  readonly word: string;
  /** the unit beside the term */
  readonly unit: string;
}

/** Every cell of a workbook reads the same few names again. */
const understood = onceForEach((name): Understood => {
  const whole = termOf(name);
  const split = whole === undefined ? nameAndUnit(name) : { name, unit: "" };
  return {
    plain: plainName(name),
    term: whole ?? termOf(split.name),
    spelled: split.name,
    word: plainName(split.name),
    unit: split.unit,
  };
});

function lastFilled(cells: readonly (readonly Raw[])[]): number {
  let last = cells.length;
  while (last > 0 && isNothing(cells[last - 1]?.[0]) && isNothing(cells[last - 1]?.[1])) last--;
  return last;
}

function isNothing(cell: Raw): boolean {
  return cell === 0 || isBlank(cell);
}

/** `Wind speed, mph` and `Wind speed (mph)` name the unit beside the term. */
function nameAndUnit(name: string): { readonly name: string; readonly unit: string } {
  const match = /^(.*?)\s*(?:[([]([^)\]]*)[)\]]|,\s*([^,]*))\s*:?$/.exec(name.trim());
  return match === null ? { name, unit: "" } : { name: match[1] ?? name, unit: (match[2] ?? match[3] ?? "").trim() };
}

function unitText(cell: Raw): string {
  if (isBlank(cell) || cell === 0 || isCellError(cell ?? null)) return "";
  return String(cell).trim();
}

function agree(own: string, named: string, row: number, at: string): void {
  if (own === "" || named === "" || own.toLowerCase() === named.toLowerCase()) return;
  throw new BadInput(
    `Row ${row} of the ${at} gives two units, ${named} beside the name and ${own} in its column`,
    "they must agree",
    "Keep one of them",
  );
}
