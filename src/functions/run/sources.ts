import { GLOSSARY, type TermName } from "../basis/glossary/index.ts";
import { capital } from "../declare/cell.ts";
import type { CellFunction, NamedParam } from "../declare/cell-function.ts";
import { isOptional, isTerm, type OptionalParam, type Param, type TermParam } from "../declare/param.ts";
import { isRange, type RawArgument } from "../declare/raw.ts";
import { sheetTerms } from "../declare/sheet-terms.ts";
import { spoken } from "../declare/words.ts";
import { Bases, type Found } from "./bases.ts";
import { divide, isOmitted } from "./places.ts";

/** Where one argument comes from, before it is read. */
export type Source =
  | { readonly kind: "own"; readonly raw: RawArgument }
  | { readonly kind: "basis"; readonly found: Found }
  | { readonly kind: "omitted"; readonly zero?: string };

const OMITTED: Source = { kind: "omitted" };

/** The places of a function, and in the same order where a call takes each from. */
export interface Sources {
  readonly places: readonly Place[];
  readonly from: readonly Source[];
  readonly bases: Bases;
}

/**
 * Finds for each argument of a call where it comes from: its place, else the first basis that holds its term.
 * Own arguments win over a nearer basis, a nearer basis over a farther one.
 */
export function sources(fn: CellFunction, raw: readonly RawArgument[]): Sources {
  const { own, bases: ranges } = divide(fn, raw);
  const bases = new Bases(fn, ranges);
  const places = placesOf(fn);
  return { places, from: places.map((place) => sourceOf(place, own[place.place] ?? null, bases)), bases };
}

/** An argument of a function with all that does not change from call to call: a cell is calculated again and again. */
export interface Place extends NamedParam {
  /** its number in the call, -1 for one that comes from a basis only */
  readonly place: number;
  /** its name as a sentence says it */
  readonly spoken: string;
  readonly optional: OptionalParam<unknown, unknown> | undefined;
  readonly term: TermParam<unknown, unknown> | undefined;
  /** the assumption where it is left out, "" where that assumes nothing */
  readonly leftOut: string;
  /** one host hands a blank cell over as 0, so here a 0 is a blank; `none` writes nothing */
  readonly zeroIsBlank: boolean;
}

function placeOf({ name, param }: NamedParam, place: number): Place {
  const optional = isOptional(param) ? param : undefined;
  const omitted = optional?.omitted ?? "";
  return {
    name,
    param,
    place,
    spoken: spoken(name),
    optional,
    term: isTerm(param) ? param : undefined,
    leftOut: omitted === "" ? "" : `${capital(spoken(name))} is left out: ${omitted}.`,
    zeroIsBlank: optional !== undefined && (param.kind !== "choice" || param.choices?.includes("0") !== true),
  };
}

const PLACES = new WeakMap<CellFunction, readonly Place[]>();

function placesOf(fn: CellFunction): readonly Place[] {
  const known = PLACES.get(fn);
  if (known !== undefined) return known;
  const sheet = sheetTerms(fn).map((term) => ({ name: term, param: sheetParam(term) }));
  const places = [
    ...fn.params.map(placeOf).filter(({ param }) => param.kind !== "basis"),
    ...[...fn.named, ...sheet].map((named) => placeOf(named, -1)),
  ];
  PLACES.set(fn, places);
  return places;
}

function sheetParam(term: "headings" | "lengths"): TermParam<unknown, unknown> {
  const param: Param<unknown, unknown> = GLOSSARY[term].param;
  return { ...param, optional: true, standIn: undefined, omitted: "", term, needed: false };
}

function sourceOf(place: Place, given: RawArgument, bases: Bases): Source {
  if (place.optional === undefined) return { kind: "own", raw: given };
  const zero = isBlankZero(given, place);
  if (!zero && !isOmitted(given)) return { kind: "own", raw: given };
  const found = place.term === undefined ? undefined : findTerm(place.term, bases);
  if (found !== undefined && !isBlankZero(found.value, place)) return { kind: "basis", found };
  if (zero) return { kind: "omitted", zero: `${capital(place.spoken)} is 0` };
  if (found !== undefined) return { kind: "omitted", zero: `Row ${found.row} of the ${found.at}, ${found.term}, is 0` };
  return OMITTED;
}

function findTerm(param: TermParam<unknown, unknown>, bases: Bases): Found | undefined {
  const found = bases.find(param.term as TermName);
  if (found !== undefined || param.fallback === undefined) return found;
  return bases.find(param.fallback as TermName);
}

function isBlankZero(raw: RawArgument, { zeroIsBlank }: Place): boolean {
  const cell = isRange(raw) ? (raw.length === 1 && raw[0]?.length === 1 ? raw[0][0] : undefined) : raw;
  return cell === 0 && zeroIsBlank;
}

/** What a call was given, as one text: own arguments and the terms taken, so that another row of a basis changes nothing. */
export function argumentsKey(fn: CellFunction, raw: readonly RawArgument[]): string {
  const plain = (_: string, value: unknown) =>
    typeof value === "number" && !Number.isFinite(value) ? String(value) : value;
  let given: unknown = raw;
  try {
    given = sources(fn, raw).from.map((source) =>
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
