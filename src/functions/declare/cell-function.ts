import type { Cell, Table, Tape } from "../../core/kit/tape.ts";
import { BASIS_PLACE } from "./basis-place.ts";
import { idOf } from "./names.ts";
import type { OptionalParam, Param, TermParam } from "./param.ts";

/** Set by the build of a trial copy, which may stand in one Excel beside the installed add-in. */
declare const SILLWORK_NAMESPACE: string | undefined;

/** In cells: =SILL.WIND_PRESSURE(...) */
export const NAMESPACE: string = typeof SILLWORK_NAMESPACE === "string" ? SILLWORK_NAMESPACE : "SILL";

export type Family =
  | "Lengths and units"
  | "Wind"
  | "Loads"
  | "Wood members"
  | "Fasteners and furring"
  | "Anchorage"
  | "Enclosure"
  | "Takeoff and cutting"
  | "Lifting and hauling"
  | "Labor and cost";

type AnyParam = Param<unknown, unknown> | OptionalParam<unknown, unknown>;
export type Params = Readonly<Record<string, AnyParam>>;
/** Arguments after the bar: each a term of the basis, or an own argument that is seldom given. */
export type Placed = Readonly<Record<string, TermParam<unknown, unknown> | OptionalParam<unknown, unknown>>>;
/** Terms without a place in the call: they come from a basis only. */
export type Named = Readonly<Record<string, TermParam<unknown, unknown>>>;

/** What the calculation gets: each parameter as read. */
export type ArgumentsOf<P extends Params> = {
  readonly [K in keyof P]: P[K] extends Param<infer T, unknown> ? T : never;
};

type ExampleOf<A> = A extends Param<unknown, infer E> ? E : never;
type RequiredKeys<P extends Params> = { [K in keyof P]: P[K] extends { optional: true } ? never : K }[keyof P];

/** What an example writes, by name: required parameters must be there, others may. */
export type ExampleArguments<P extends Params> = { readonly [K in RequiredKeys<P>]: ExampleOf<P[K]> } & {
  readonly [K in keyof P]?: ExampleOf<P[K]>;
};

/** A column of a table result. */
export interface ResultColumn {
  readonly name: string;
  readonly unit: string;
}

export interface Returns<R extends Cell | Table> {
  readonly kind: "number" | "text" | "table";
  readonly says: string;
  readonly unit: string;
  /** of a table */
  readonly columns?: readonly ResultColumn[];
  /** carries `R` for the compiler; never set */
  readonly result?: R;
}

/** A single number in `unit`. */
export function quantityOf(unit: string, says: string): Returns<number> {
  return { kind: "number", unit, says };
}

/** A text. */
export function textOf(says: string): Returns<string> {
  return { kind: "text", unit: "", says };
}

/** A number or a text, such as a capacity or "none". */
export function numberOrText(unit: string, says: string): Returns<number | string> {
  return { kind: "text", unit, says };
}

/** A table that spills: columns as [name, unit]. */
export function tableOf(
  says: string,
  columns: readonly [readonly [string, string], ...(readonly [string, string])[]],
): Returns<Table> {
  return { kind: "table", unit: "", says, columns: columns.map(([name, unit]) => ({ name, unit })) };
}

/** An example names arguments of any place; terms without a place then stand in a basis. */
export interface Example<P extends Params, R extends Cell | Table> {
  readonly args: ExampleArguments<P>;
  readonly gives: NoInfer<R>;
  /** half of the last printed digit of `gives`, or the accuracy that the source claims; 0 for exact */
  readonly within: number;
  /** where the printed answer stands; "exact arithmetic" where it follows from definitions */
  readonly source: string;
}

/** A call that is refused, as a change to the example, and a part of the sentence that says why. */
interface Refused<P extends Params> {
  /** what differs from the example; null leaves an argument out */
  readonly args: { readonly [K in keyof P]?: unknown };
  readonly says: string;
}

/** A change of the answer for the same arguments: what an office with saved workbooks must know. */
export interface Change {
  readonly since: string;
  readonly what: string;
}

/** The version in which a function came that does not say another. */
const FIRST_VERSION = "0.1.0";

/** One function, declared once. Everything a host, the pane, the help and the tests know of it comes from here. */
export interface Declaration<P extends Params, B extends Placed, N extends Named, R extends Cell | Table> {
  /** name in cells, without the namespace: upper case, words joined by _ */
  readonly name: string;
  /** one sentence */
  readonly summary: string;
  /** own arguments, in order: what differs from cell to cell */
  readonly params: P;
  /** what a basis can hold and has a place in the call, in order of use; with it (also empty) a function takes a basis last */
  readonly placed?: B;
  /** terms that come from a basis only */
  readonly named?: N;
  readonly returns: Returns<R>;
  /** a table that always has one row, so that it has no headings unless asked */
  readonly oneRow?: true;
  /** document, edition, clause or table; at least one */
  readonly sources: readonly [string, ...string[]];
  /** taken as given whatever the arguments */
  readonly assumptions?: readonly string[];
  readonly cautions?: readonly string[];
  readonly example: Example<P & B & N, R>;
  /** one for each kind of refusal that a user can meet; each is run */
  readonly refuses: readonly [Refused<NoInfer<P & B & N>>, ...Refused<NoInfer<P & B & N>>[]];
  /** when to go elsewhere, in one sentence; or "none, because ..." */
  readonly notFor: string;
  /** the version in which it came; the first unless told */
  readonly since?: string;
  readonly changed?: readonly Change[];
  /** a search that may take longer than a keystroke: hosts run it off the page's main thread */
  readonly heavy?: true;
  /** what is asked of a search's arguments before it is made; the list of cautions asks it without making the search */
  asks?(args: ArgumentsOf<P & B & N>, tape: Tape): void;
  run(args: ArgumentsOf<P & B & N>, tape: Tape | undefined): NoInfer<R>;
}

/** A declaration that says its family itself. */
export interface FamilyDeclaration<P extends Params, B extends Placed, N extends Named, R extends Cell | Table>
  extends Declaration<P, B, N, R> {
  readonly family: Family;
}

/** A declared function with its types erased, as the registry holds it. */
export interface CellFunction {
  readonly name: string;
  /** what the host stores in files: letters and digits only; never changes after release */
  readonly id: string;
  readonly family: Family;
  readonly summary: string;
  /** every place of the call, in order; the last is the basis where the function takes one */
  readonly params: readonly NamedParam[];
  /** terms without a place */
  readonly named: readonly NamedParam[];
  readonly takesBasis: boolean;
  readonly oneRow: boolean;
  readonly returns: Returns<Cell | Table>;
  readonly sources: readonly string[];
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
  readonly example: ErasedExample;
  readonly refuses: readonly ErasedRefusal[];
  readonly notFor: string;
  readonly since: string;
  readonly changed: readonly Change[];
  readonly heavy: boolean;
  asks(args: Readonly<Record<string, unknown>>, tape: Tape): void;
  run(args: Readonly<Record<string, unknown>>, tape: Tape | undefined): Cell | Table;
}

export interface NamedParam {
  readonly name: string;
  readonly param: AnyParam;
}

export interface ErasedExample {
  readonly args: Readonly<Record<string, unknown>>;
  readonly gives: Cell | Table;
  readonly within: number;
  readonly source: string;
}

export interface ErasedRefusal {
  readonly args: Readonly<Record<string, unknown>>;
  readonly says: string;
}

/**
 * Declares a function. One with `placed` takes a basis in its last place, and from it `headings` and `lengths` too.
 */
export function cellFunction<
  const P extends Params,
  R extends Cell | Table,
  const B extends Placed = Record<never, never>,
  const N extends Named = Record<never, never>,
>(d: FamilyDeclaration<P, B, N, R>): CellFunction {
  const params: NamedParam[] = entries({ ...d.params, ...(d.placed ?? {}) });
  if (d.placed !== undefined) params.push({ name: "basis", param: BASIS_PLACE });
  return {
    name: d.name,
    id: idOf(d.name),
    family: d.family,
    summary: d.summary,
    params,
    named: entries(d.named ?? {}),
    takesBasis: d.placed !== undefined,
    oneRow: d.oneRow === true,
    returns: d.returns as Returns<Cell | Table>,
    sources: d.sources,
    assumptions: d.assumptions ?? [],
    cautions: d.cautions ?? [],
    example: d.example as unknown as ErasedExample,
    refuses: d.refuses as readonly ErasedRefusal[],
    notFor: d.notFor,
    since: d.since ?? FIRST_VERSION,
    changed: d.changed ?? [],
    heavy: d.heavy === true,
    asks: (args, tape) => d.asks?.(args as ArgumentsOf<P & B & N>, tape),
    // The reader fills exactly the parameters that are declared, so the erased record is ArgumentsOf.
    run: (args, tape) => d.run(args as ArgumentsOf<P & B & N>, tape),
  };
}

/** What declares the functions of a family, so that it is said once. */
export function declaring(family: Family) {
  return <
    const P extends Params,
    R extends Cell | Table,
    const B extends Placed = Record<never, never>,
    const N extends Named = Record<never, never>,
  >(
    d: Declaration<P, B, N, R>,
  ): CellFunction => cellFunction<P, R, B, N>({ ...d, family });
}

function entries(params: Params): NamedParam[] {
  return Object.entries(params).map(([name, param]) => ({ name, param }));
}

/** The caution that every preliminary result carries. */
export function preliminary(subject: string): string {
  return `Preliminary ${subject} figures for planning: the adopted code with its local amendments and a licensed professional decide.`;
}
