import { BadInput } from "../../core/kit/refusal.ts";
import { GLOSSARY, type TermName } from "../basis/glossary/index.ts";
import { readRow } from "../basis/value.ts";
import type { CellFunction, NamedParam } from "../declare/cell-function.ts";
import { isOptional, isTerm, type Notes, type OptionalParam, type Param, type TermParam } from "../declare/param.ts";
import { isRange, type RawArgument } from "../declare/raw.ts";
import { capital, inside } from "../declare/scalar.ts";
import { sheetTerms } from "../declare/sheet-terms.ts";
import { spoken } from "../declare/words.ts";
import { Bases, type Found } from "./bases.ts";
import { divide, isOmitted, looksLikeBasis } from "./places.ts";

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

/** Where one argument comes from, before it is read. */
type Source =
  | { readonly kind: "own"; readonly raw: RawArgument }
  | { readonly kind: "basis"; readonly found: Found }
  | { readonly kind: "omitted"; readonly zero?: string };

interface Sourced extends NamedParam {
  readonly source: Source;
}

/**
 * Finds for each argument of a call where it comes from: its place, else the first basis that holds its term.
 * Own arguments win over a nearer basis, a nearer basis over a farther one.
 */
function sources(
  fn: CellFunction,
  raw: readonly RawArgument[],
): { readonly all: readonly Sourced[]; readonly bases: Bases } {
  const { own, bases: ranges } = divide(fn, raw);
  const bases = new Bases(fn, ranges);
  const all = placesOf(fn).map(
    ({ place, name, param }): Sourced => ({
      name,
      param,
      source: sourceOf(name, param, place < 0 ? null : own[place], bases),
    }),
  );
  return { all, bases };
}

/** An argument of a function with its place in the call, -1 for one that comes from a basis only. */
interface Place extends NamedParam {
  readonly place: number;
}

/** A cell is calculated again and again: what does not change from call to call is found once. */
const PLACES = new WeakMap<CellFunction, readonly Place[]>();

function placesOf(fn: CellFunction): readonly Place[] {
  const known = PLACES.get(fn);
  if (known !== undefined) return known;
  const sheet = sheetTerms(fn).map((term) => ({ name: term, param: sheetParam(term) }));
  const places = [
    ...fn.params
      .map(({ name, param }, place) => ({ name, param, place }))
      .filter(({ param }) => param.kind !== "basis"),
    ...[...fn.named, ...sheet].map(({ name, param }) => ({ name, param, place: -1 })),
  ];
  PLACES.set(fn, places);
  return places;
}

function sheetParam(term: "headings" | "lengths"): TermParam<unknown, unknown> {
  const param: Param<unknown, unknown> = GLOSSARY[term].param;
  return { ...param, optional: true, standIn: undefined, omitted: "", term, needed: false };
}

function sourceOf(name: string, param: NamedParam["param"], raw: RawArgument | undefined, bases: Bases): Source {
  const given = raw ?? null;
  if (!isOptional(param)) return { kind: "own", raw: given };
  const zero = zeroOf(given, param);
  if (!isOmitted(given) && !zero) return { kind: "own", raw: given };
  const found = isTerm(param) ? findTerm(param, bases) : undefined;
  if (found !== undefined && !zeroOf(found.value, param)) return { kind: "basis", found };
  if (zero) return { kind: "omitted", zero: `${capital(spoken(name))} is 0` };
  if (found !== undefined) return { kind: "omitted", zero: `Row ${found.row} of the ${found.at}, ${found.term}, is 0` };
  return { kind: "omitted" };
}

function findTerm(param: TermParam<unknown, unknown>, bases: Bases): Found | undefined {
  const found = bases.find(param.term as TermName);
  if (found !== undefined || param.fallback === undefined) return found;
  return bases.find(param.fallback as TermName);
}

/** One host hands a blank cell over as 0, so in a place that may be left out a 0 is a blank; `none` writes nothing. */
function zeroOf(raw: RawArgument, param: OptionalParam<unknown, unknown>): boolean {
  const cell = isRange(raw) ? (raw.length === 1 && raw[0]?.length === 1 ? raw[0][0] : undefined) : raw;
  if (cell !== 0) return false;
  return param.kind !== "choice" || param.choices?.includes("0") !== true;
}

/** Whether a 0 that is read as blank could have been meant. */
function couldBeMeant(param: OptionalParam<unknown, unknown>): boolean {
  const numeric = param.kind === "number" || param.kind === "length" || param.kind === "quantity";
  return numeric && param.standIn !== 0 && inside(param.limits ?? {}, 0);
}

/** What a call was given, as one text: own arguments and the terms taken, so that another row of a basis changes nothing. */
export function argumentsKey(fn: CellFunction, raw: readonly RawArgument[]): string {
  const plain = (_: string, value: unknown) =>
    typeof value === "number" && !Number.isFinite(value) ? String(value) : value;
  let given: unknown = raw;
  try {
    given = sources(fn, raw).all.map(({ source }) =>
      source.kind === "own"
        ? source.raw
        : source.kind === "basis"
          ? { term: source.found.value, unit: source.found.unit }
          : null,
    );
  } catch {
    // A call that cannot be divided is its own key: it gives its refusal.
  }
  return JSON.stringify(given, plain);
}

/** Reads the arguments of a call; notes what stands in for what is left out. @throws Refusal */
export function readArguments(
  fn: CellFunction,
  raw: readonly RawArgument[],
  notes: Notes,
  shown: ShownArgument[] | undefined,
): Record<string, unknown> {
  const args: Record<string, unknown> = {};
  const { all, bases } = sources(fn, raw);
  if (shown !== undefined) bases.warn(fn, notes);
  for (const { name, param, source } of all) {
    if (source.kind === "omitted") {
      const omitted = param as OptionalParam<unknown, unknown>;
      args[name] = standInOf(name, omitted, source.zero, bases, notes);
      shown?.push({ name, says: param.says, unit: param.unit, shown: omitted.omitted, omitted: true, from: "" });
    } else if (source.kind === "basis") {
      const { found } = source;
      const reading = readRow(found, param, `${spoken(name)} in row ${found.row} of the ${found.at}`, notes);
      args[name] = reading.value;
      shown?.push({
        name,
        says: param.says,
        unit: param.unit,
        shown: reading.shown,
        omitted: false,
        from: `${found.at}, row ${found.row}`,
      });
    } else {
      const reading = readOwn(name, param, source.raw, notes, fn.takesBasis);
      args[name] = reading.value;
      shown?.push({ name, says: param.says, unit: param.unit, shown: reading.shown, omitted: false, from: "" });
    }
  }
  return args;
}

function readOwn(name: string, param: Param<unknown, unknown>, raw: RawArgument, notes: Notes, takesBasis: boolean) {
  try {
    return param.read(raw, spoken(name), notes);
  } catch (error) {
    const range = param.kind === "list" || param.kind === "table";
    if (!(error instanceof BadInput && takesBasis && range && isOptional(param) && looksLikeBasis(raw))) throw error;
    throw new BadInput(error.what, error.why, `${error.todo}; if this is a basis, write Basis in its first cell`);
  }
}

function standInOf(
  name: string,
  param: OptionalParam<unknown, unknown>,
  zero: string | undefined,
  bases: Bases,
  notes: Notes,
): unknown {
  if (isTerm(param)) {
    bases.askShared(param.term as TermName);
    if (param.needed) throw missing(param.term, zero !== undefined, param.unit);
  }
  if (zero !== undefined && couldBeMeant(param)) {
    const taken = param.omitted === "" ? "left out" : param.omitted;
    notes.caution(`${zero} and is read as a blank cell: ${taken}. To write nothing, type none.`);
  }
  if (param.omitted !== "") notes.assume(`${capital(spoken(name))} is left out: ${param.omitted}.`);
  return param.standIn;
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
