import { BadInput } from "../../core/kit/refusal.ts";
import { saysBasis } from "../basis/read.ts";
import { termOf } from "../basis/words.ts";
import { capital } from "../declare/cell.ts";
import type { CellFunction, NamedParam } from "../declare/cell-function.ts";
import { isOptional } from "../declare/param.ts";
import { isBlank, isRange, type Raw, type RawArgument } from "../declare/raw.ts";
import { spoken } from "../declare/words.ts";

export type Cells = readonly (readonly Raw[])[];

/** A call divided into own arguments, by place, and the bases that follow them. */
export interface Divided {
  readonly own: readonly RawArgument[];
  readonly bases: readonly Cells[];
}

/**
 * Divides a call from the left: the first basis ends the own arguments, and after it only bases follow, blank places aside.
 * What makes a range a basis is where it stands, and in a place for a list or table its first cell: never its contents.
 */
export function divide(fn: CellFunction, raw: readonly RawArgument[]): Divided {
  const own: RawArgument[] = [];
  const bases: Cells[] = [];
  for (let i = 0; i < raw.length; i++) {
    const given = raw[i] ?? null;
    const place = fn.params[i];
    if (bases.length > 0) {
      if (isWide(given)) bases.push(given);
      else if (!isOmitted(given)) throw afterBasis(i, place);
      own.push(null);
    } else if (place === undefined) {
      if (!isOmitted(given)) throw tooMany(fn, raw.length);
    } else if (isWide(given) && isBasis(fn, given, place)) {
      bases.push(given);
      own.push(null);
    } else own.push(place.param.kind === "basis" && !isOmitted(given) ? refuseOne(place) : given);
  }
  return { own, bases };
}

/** Whether a range in a place is a basis. */
function isBasis(fn: CellFunction, given: Cells, { name, param }: NamedParam): boolean {
  if (!fn.takesBasis) return false;
  const takesRange = param.kind === "list" || param.kind === "table";
  if (!isOptional(param)) {
    if (takesRange && saysBasis(given)) throw basisInItsPlace(name);
    return false;
  }
  if (!takesRange) return true;
  if (saysBasis(given)) return true;
  if (namesOnlyTerms(given)) {
    throw new BadInput(
      `${capital(spoken(name))} holds nothing but terms of a basis`,
      "in this place a range is a basis only if its first cell says so",
      "Write Basis in its first cell",
    );
  }
  return false;
}

/** More than one cell. */
function isWide(raw: RawArgument): raw is Cells {
  return isRange(raw) && (raw.length > 1 || (raw[0]?.length ?? 0) > 1);
}

/** Left out, a blank cell, or a range of nothing but blanks. */
export function isOmitted(raw: RawArgument): boolean {
  return isRange(raw) ? raw.every((row) => row.every(isBlank)) : isBlank(raw);
}

function namesOnlyTerms(cells: Cells): boolean {
  const names = cells.map((row) => row[0]).filter((name) => !isBlank(name) && name !== 0);
  return names.length > 0 && names.every((name) => typeof name === "string" && termOf(name) !== undefined);
}

/** Whether a range that could not be read might be a basis that does not say so. */
export function looksLikeBasis(raw: RawArgument): boolean {
  return isWide(raw) && raw.some(([name]) => typeof name === "string" && termOf(name) !== undefined);
}

function refuseOne(place: NamedParam): never {
  throw new BadInput(
    `The ${place.name} is one cell`,
    "a basis is a range of rows: name, value, unit",
    "Point at the range, such as the name Basis",
  );
}

function basisInItsPlace(name: string): BadInput {
  return new BadInput(
    `${capital(spoken(name))} is missing`,
    "a basis stands in its place",
    "Give it first; the basis comes last",
  );
}

function afterBasis(index: number, place: NamedParam | undefined): BadInput {
  return new BadInput(
    `Argument ${index + 1}${place === undefined ? "" : `, ${spoken(place.name)},`} follows the basis`,
    "after a basis only bases follow",
    "Move it before the basis",
  );
}

function tooMany(fn: CellFunction, count: number): BadInput {
  return new BadInput(
    `${fn.name} was given ${count} arguments`,
    `it takes at most ${fn.params.length}: ${fn.params.map((p) => p.name).join(", ")}`,
    "Take the extra ones away",
  );
}
