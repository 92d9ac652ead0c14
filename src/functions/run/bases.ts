import { BadInput } from "../../core/kit/refusal.ts";
import { GLOSSARY, SHARED_WORDS, type TermName } from "../basis/glossary/index.ts";
import { type Basis, type BasisRow, readBasis } from "../basis/read.ts";
import { nearTerm } from "../basis/words.ts";
import { capital } from "../declare/cell.ts";
import type { CellFunction } from "../declare/cell-function.ts";
import { isTerm, type Notes, type TermParam } from "../declare/param.ts";
import { sheetTerms } from "../declare/sheet-terms.ts";
import type { Cells } from "./places.ts";

/** A row that was found for a term, and how a sentence says where. */
export interface Found extends BasisRow {
  /** "basis", or "first basis" where there are several */
  readonly at: string;
}

/** The bases of one call, in the order in which they win. */
export class Bases {
  readonly #bases: readonly { readonly at: string; readonly basis: Basis }[];

  /** @throws BadInput for a range that is no basis, or one that could change nothing before another */
  constructor(fn: CellFunction, cells: readonly Cells[]) {
    const named = (i: number) => (cells.length === 1 ? "basis" : `${ORDINALS[i] ?? `${i + 1}th`} basis`);
    if (cells.length === 0) {
      this.#bases = [];
      return;
    }
    this.#bases = cells.map((range, i) => ({ at: named(i), basis: readBasis(range, named(i)) }));
    const taken = termsOf(fn);
    this.#bases.forEach(({ at, basis }, i) => {
      if (!basis.known) {
        throw new BadInput(
          `The ${at} holds no term that a basis can hold`,
          "it seems to be another range",
          "Point at the rows of name, value, unit, such as the name Basis",
        );
      }
      if (i < this.#bases.length - 1 && ![...basis.rows.keys()].some((term) => taken.has(term))) {
        throw new BadInput(
          `The ${at} holds nothing that ${fn.name} takes`,
          "it stands before another basis, so it was meant to change something",
          `Give one of ${[...taken].filter((term) => term !== "headings" && term !== "lengths").join(", ")}`,
        );
      }
    });
  }

  /** The first row that holds a term, or undefined. @throws BadInput where one basis holds it twice */
  find(term: TermName): Found | undefined {
    for (const { at, basis } of this.#bases) {
      const rows = basis.rows.get(term);
      const row = rows?.[0];
      const second = rows?.[1];
      if (row === undefined) continue;
      if (second !== undefined) {
        throw new BadInput(
          `${capital(term)} is given twice, in rows ${row.row} and ${second.row} of the ${at}`,
          "a term has one row",
          "Clear one of them",
        );
      }
      return { term, value: row.value, unit: row.unit, row: row.row, at };
    }
    return undefined;
  }

  /** Refuses where a row has only a word that this term shares with others. */
  askShared(term: TermName): void {
    for (const { at, basis } of this.#bases) {
      const row = basis.shared.find(({ word }) => SHARED_WORDS[word]?.includes(term));
      if (row === undefined) continue;
      const terms = SHARED_WORDS[row.word] ?? [];
      throw new BadInput(
        `Row ${row.row} of the ${at} says ${row.word}`,
        `is ${terms.join(" or ")} meant?`,
        "Write the whole term",
      );
    }
  }

  /** Cautions for rows that may be slips; looked for only where somebody reads them. */
  warn(fn: CellFunction, notes: Notes): void {
    const taken = termsOf(fn);
    for (const { at, basis } of this.#bases) {
      for (const row of basis.nameless) notes.caution(`Row ${row} of the ${at} has a value without a name.`);
      for (const { name, row } of basis.unknown) {
        const near = nearTerm(name);
        if (near !== undefined) {
          notes.caution(`Row ${row} of the ${at}, "${name}", is no term and is left alone: is ${near} meant?`);
        }
      }
      if (![...basis.rows.keys()].some((term) => taken.has(term))) {
        notes.caution(`The ${at} holds nothing that ${fn.name} takes.`);
      }
    }
  }
}

const ORDINALS = ["first", "second", "third", "fourth"];

const TERMS = new WeakMap<CellFunction, ReadonlySet<TermName>>();

/** Every term that a function takes, found once. */
export function termsOf(fn: CellFunction): ReadonlySet<TermName> {
  const known = TERMS.get(fn);
  if (known !== undefined) return known;
  const terms = foundTerms(fn);
  TERMS.set(fn, terms);
  return terms;
}

function foundTerms(fn: CellFunction): ReadonlySet<TermName> {
  const terms = [...fn.params, ...fn.named]
    .map(({ param }) => param)
    .filter(isTerm)
    .flatMap((param: TermParam<unknown, unknown>) =>
      param.fallback === undefined ? [param.term] : [param.term, param.fallback],
    );
  return new Set([...terms, ...sheetTerms(fn)].filter((term): term is TermName => Object.hasOwn(GLOSSARY, term)));
}
