import { Refusal, type Said } from "../../core/kit/refusal.ts";
import type { Cell } from "../../core/kit/tape.ts";
import type { Entry } from "../../functions/basis/glossary/entry.ts";
import { GLOSSARY, GROUPS, type TermName } from "../../functions/basis/glossary/index.ts";
import { type BasisRow, readBasis } from "../../functions/basis/read.ts";
import { readRow } from "../../functions/basis/value.ts";
import { capital } from "../../functions/declare/cell.ts";
import { hintOf } from "../../functions/declare/describe.ts";
import type { Param, ParamFacts } from "../../functions/declare/param.ts";
import { isNone } from "../../functions/declare/scalar.ts";
import type { NamedRows } from "../../workbook/host.ts";
import { BASIS_COLUMNS } from "../../workbook/named-rows.ts";
import { fullText } from "../parts/numbers.ts";
import { typed } from "./typed.ts";

/** What somebody typed in the view and has not written yet, by term. */
export type Drafts = ReadonlyMap<TermName, string>;

/** A term with what the workbook and the view hold of it. */
export interface TermState {
  readonly term: TermName;
  readonly label: string;
  readonly param: Param<unknown, unknown>;
  readonly hint: string;
  /** unit of a bare number in its row */
  readonly unit: string;
  /** what stands in the control */
  readonly text: string;
  /** the choice that the text is read as, where the term has choices */
  readonly chosen: string;
  /** how the value is read, "" where it is read as it stands */
  readonly read: string;
  readonly refused: Said | undefined;
  readonly cautions: readonly string[];
  readonly drafted: boolean;
  /** rows of the range that give the term, from 1 */
  readonly rows: readonly number[];
  /** whether its value comes from a formula, which the view does not write over */
  readonly formula: boolean;
}

export interface Group {
  readonly name: string;
  readonly terms: readonly TermName[];
}

/** The terms as the glossary groups them. */
export const SITE_GROUPS: readonly Group[] = Object.entries(GROUPS).map(([name, terms]) => ({
  name,
  terms: Object.keys(terms) as TermName[],
}));

export function entryOf(term: TermName): Entry<unknown, unknown> {
  return GLOSSARY[term];
}

/** A basis that is there, or the refusal of a range that is none. */
export type Held =
  | { readonly ok: true; readonly at: NamedRows | undefined; readonly places: ReadonlyMap<TermName, readonly Place[]> }
  | { readonly ok: false; readonly at: NamedRows; readonly said: Said };

/** A row of the range that names a term, filled in or not. */
export interface Place {
  readonly row: number;
  readonly value: Cell;
  readonly unit: string;
  readonly formula: boolean;
}

/** Reads what the name Basis stands for; `at` is undefined where there is no such name. */
export function heldIn(at: NamedRows | undefined): Held {
  const places = new Map<TermName, Place[]>();
  if (at === undefined) return { ok: true, at, places };
  try {
    readBasis(at.rows, "range Basis");
    if ((at.rows[0]?.length ?? 0) < BASIS_COLUMNS) throw new TwoColumns();
    for (const [i, line] of at.rows.entries()) {
      const place = placeOf(line, i, at);
      if (place !== undefined) places.set(place.term, [...(places.get(place.term) ?? []), place]);
    }
    return { ok: true, at, places };
  } catch (refusal) {
    if (refusal instanceof Refusal) return { ok: false, at, said: refusal };
    throw refusal;
  }
}

class TwoColumns extends Refusal {
  constructor() {
    super("The range Basis has two columns", "units stand in a third", "Give the name Basis to all three columns");
  }
}

/** A row by itself as a basis reads it; a blank value is held by a stand-in, so that the row is found. */
function placeOf(line: readonly Cell[], index: number, at: NamedRows): (Place & { term: TermName }) | undefined {
  const [name = "", value = "", unit = ""] = line;
  const blank = value === "" || value === 0;
  const basis = readBasis(
    [
      ["Basis", "Value", "Unit"],
      [name, blank ? "?" : value, unit],
    ],
    "range Basis",
  );
  const [found] = [...basis.rows.values()].flat();
  if (found === undefined) return undefined;
  const formula = (at.formulas[index]?.[1] ?? "") !== "";
  return { term: found.term, row: index + 1, value, unit: found.unit, formula };
}

/** A term as the view shows it. */
export function stateOf(term: TermName, held: Held, drafts: Drafts): TermState {
  const { param } = entryOf(term);
  const places = held.ok ? (held.places.get(term) ?? []) : [];
  const place = places.find(({ value }) => value !== "") ?? places[0];
  const draft = drafts.get(term);
  const value = draft === undefined ? (place?.value ?? "") : typed(draft, param.kind);
  const unit = place?.unit || param.unit;
  const { chosen, ...reading } = readingOf({ term, value, unit: place?.unit ?? "", row: place?.row ?? 0 }, param);
  const text = draft ?? (place === undefined || place.value === "" ? "" : fullText(place.value));
  return {
    term,
    label: capital(term),
    param,
    hint: hintOf(withoutChoices(param)),
    unit,
    text,
    chosen: chosen ?? text,
    ...reading,
    drafted: draft !== undefined,
    rows: places.filter(({ value }) => value !== "").map(({ row }) => row),
    formula: place?.formula ?? false,
  };
}

/** The choices stand in the control. */
function withoutChoices({ choices: _, ...facts }: ParamFacts): ParamFacts {
  return facts;
}

type Reading = Pick<TermState, "read" | "refused" | "cautions"> & { readonly chosen?: string };

/** What the term's own reader makes of a value. */
function readingOf(row: BasisRow, param: Param<unknown, unknown>): Reading {
  const nothing = { read: "", refused: undefined, cautions: [] };
  if (row.value === "") return nothing;
  if (row.value === 0 && param.choices?.includes("0") !== true) {
    return { ...nothing, cautions: ["A 0 counts as left out. To write nothing, type none."] };
  }
  const cautions: string[] = [];
  const notes = { assume: () => {}, caution: (sentence: string) => cautions.push(sentence) };
  try {
    const { shown } = readRow(row, param, row.term, notes);
    const chosen = param.choices?.includes(shown) ? { chosen: shown } : {};
    const read = shown.includes(" = ") || isNone(row.value) ? shown : "";
    return { read, refused: undefined, cautions, ...chosen };
  } catch (refusal) {
    if (refusal instanceof Refusal) return { ...nothing, refused: refusal };
    throw refusal;
  }
}
