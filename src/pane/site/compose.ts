import type { Cell, Table } from "../../core/kit/tape.ts";
import type { TermName } from "../../functions/basis/glossary/index.ts";
import { capital } from "../../functions/declare/cell.ts";
import { BASIS_COLUMNS } from "../../workbook/named-rows.ts";
import { type Drafts, entryOf, type Held, SITE_GROUPS } from "./terms.ts";
import { typed } from "./typed.ts";

const HEADING: readonly Cell[] = ["Basis", "Value", "Unit", "What it is"];

/**
 * The rows of the basis with what is drafted: a term that has a row gets its value there, whatever else stands in the range stays as it is; a new term
 * takes a free row at the end, or a row below it. Where there is no basis yet, all rows, by groups.
 */
export function composed(held: Held & { ok: true }, drafts: Drafts): Table {
  if (held.at === undefined) return freshRows(drafts);
  const rows = held.at.rows.map((row) => [...row]);
  let free = rows.length;
  while (free > 0 && (rows[free - 1] ?? []).every((cell) => cell === "")) free--;
  for (const [term, text] of drafts) {
    const place = placeToWrite(held, term);
    if (place !== undefined) {
      const row = rows[place];
      if (row !== undefined) row[1] = typed(text, entryOf(term).param.kind);
    } else if (text.trim() !== "") {
      const fresh = termRow(term, text);
      const width = rows[0]?.length ?? BASIS_COLUMNS;
      const inside = padded(fresh.slice(0, BASIS_COLUMNS), width);
      if (free < rows.length) rows[free] = inside;
      // The note stands outside of the name, so it goes into no column of it.
      else rows.push(width === BASIS_COLUMNS ? fresh : inside);
      free++;
    }
  }
  return rows;
}

/** Index of the row whose value the view shows. */
function placeToWrite(held: Held & { ok: true }, term: TermName): number | undefined {
  const places = held.places.get(term);
  const place = places?.find(({ value }) => value !== "") ?? places?.[0];
  return place === undefined ? undefined : place.row - 1;
}

function freshRows(drafts: Drafts): Table {
  const rows: Cell[][] = [[...HEADING]];
  for (const { name, terms } of SITE_GROUPS) {
    const filled = terms.filter((term) => (drafts.get(term) ?? "").trim() !== "");
    if (filled.length > 0) rows.push([name, "", "", ""]);
    for (const term of filled) rows.push(termRow(term, drafts.get(term) ?? ""));
  }
  return rows;
}

function termRow(term: TermName, text: string): Cell[] {
  const { kind, unit, says } = entryOf(term).param;
  const value = typed(text, kind);
  // A text brings its own unit; feet and inches are lengths in the unit of the row all the same.
  const counts = typeof value === "number" || kind === "length";
  return [capital(term), value, counts ? unit : "", says];
}

function padded(row: readonly Cell[], width: number): Cell[] {
  return Array.from({ length: width }, (_, i) => row[i] ?? "");
}
