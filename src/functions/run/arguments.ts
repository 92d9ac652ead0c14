import { BadInput } from "../../core/kit/refusal.ts";
import type { TermName } from "../basis/glossary/index.ts";
import { readRow } from "../basis/value.ts";
import { capital } from "../declare/cell.ts";
import type { CellFunction } from "../declare/cell-function.ts";
import { inside } from "../declare/limits.ts";
import { isOptional, type Notes, type OptionalParam, type Reading } from "../declare/param.ts";
import type { RawArgument } from "../declare/raw.ts";
import type { Bases } from "./bases.ts";
import { looksLikeBasis } from "./places.ts";
import { type Place, type Source, sources } from "./sources.ts";

/** An argument as the pane shows it. */
export interface ShownArgument {
  readonly name: string;
  readonly says: string;
  readonly unit: string;
  /** what was read; for an omitted argument what stands in for it; "" when it was not reached */
  readonly shown: string;
  readonly omitted: boolean;
  /** "basis, row 6" where the value came from there, else "" */
  readonly from: string;
}

/** Reads the arguments of a call; notes what stands in for what is left out. @throws Refusal */
export function readArguments(
  fn: CellFunction,
  raw: readonly RawArgument[],
  notes: Notes,
  shown: ShownArgument[] | undefined,
): Record<string, unknown> {
  const args: Record<string, unknown> = {};
  const { places, from, bases } = sources(fn, raw);
  if (shown !== undefined) bases.warn(fn, notes);
  places.forEach((place, i) => {
    const source = from[i] as Source;
    if (source.kind === "omitted") {
      args[place.name] = standInOf(place, source.zero, bases, notes);
      shown?.push(inWords(place, place.optional?.omitted ?? "", true, ""));
      return;
    }
    const reading =
      source.kind === "basis"
        ? readRow(
            source.found,
            place.param,
            `${place.spoken} in row ${source.found.row} of the ${source.found.at}`,
            notes,
          )
        : readOwn(place, source.raw, notes, fn.takesBasis);
    args[place.name] = reading.value;
    const where = source.kind === "basis" ? `${source.found.at}, row ${source.found.row}` : "";
    shown?.push(inWords(place, reading.shown, false, where));
  });
  return args;
}

function inWords({ name, param }: Place, shown: string, omitted: boolean, from: string): ShownArgument {
  return { name, says: param.says, unit: param.unit, shown, omitted, from };
}

function readOwn({ param, spoken }: Place, raw: RawArgument, notes: Notes, takesBasis: boolean): Reading<unknown> {
  try {
    return param.read(raw, spoken, notes);
  } catch (error) {
    const range = param.kind === "list" || param.kind === "table";
    if (!(error instanceof BadInput && takesBasis && range && isOptional(param) && looksLikeBasis(raw))) throw error;
    throw new BadInput(error.what, error.why, `${error.todo}; if this is a basis, write Basis in its first cell`);
  }
}

function standInOf(place: Place, zero: string | undefined, bases: Bases, notes: Notes): unknown {
  const { optional, term, leftOut } = place;
  if (term !== undefined) {
    bases.askShared(term.term as TermName);
    if (term.needed) throw missing(term.term, zero !== undefined, term.unit);
  }
  if (optional === undefined) return undefined;
  if (zero !== undefined && couldBeMeant(optional)) {
    const taken = optional.omitted === "" ? "left out" : optional.omitted;
    notes.caution(`${zero} and is read as a blank cell: ${taken}. To write nothing, type none.`);
  }
  if (leftOut !== "") notes.assume(leftOut);
  return optional.standIn;
}

/** Whether a 0 that is read as blank could have been meant. */
function couldBeMeant(param: OptionalParam<unknown, unknown>): boolean {
  const numeric = param.kind === "number" || param.kind === "length" || param.kind === "quantity";
  return numeric && param.standIn !== 0 && inside(param.limits ?? {}, 0);
}

function missing(term: string, zero: boolean, unit: string): BadInput {
  return new BadInput(
    `${capital(term)} is missing`,
    zero
      ? "a 0 is read as a blank cell, which one host hands over as 0"
      : "it stands neither in the call nor in the basis",
    zero && unit !== ""
      ? `Write the 0 with its unit, "0 ${unit}", or give a row ${capital(term)} in the basis`
      : `Give it, or a row ${capital(term)} in the basis`,
  );
}
