import type { Cell, Table, Tape } from "../../core/kit/tape.ts";
import type { OptionalParam, Param } from "./param.ts";
import { optional } from "./param.ts";
import { flag } from "./scalar.ts";

/** In cells: =SILL.WIND_PRESSURE(...) */
export const NAMESPACE = "SILL";

export type Family =
  | "Lengths and units"
  | "Wind"
  | "Loads"
  | "Wood members"
  | "Fasteners"
  | "Anchorage"
  | "Enclosure"
  | "Takeoff and cutting"
  | "Lifting and hauling"
  | "Labor and cost";

type AnyParam = Param<unknown, unknown> | OptionalParam<unknown, unknown>;
export type Params = Readonly<Record<string, AnyParam>>;

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

export interface Example<P extends Params, R extends Cell | Table> {
  readonly args: ExampleArguments<P>;
  readonly gives: NoInfer<R>;
  /** half of the last printed digit of `gives`, or the accuracy that the source claims; 0 for exact */
  readonly within: number;
  /** where the printed answer stands; "exact arithmetic" where it follows from definitions */
  readonly source: string;
}

/** One function, declared once. Everything a host, the pane, the help and the tests know of it comes from here. */
export interface Declaration<P extends Params, R extends Cell | Table> {
  /** name in cells, without the namespace: upper case, words joined by _ */
  readonly name: string;
  readonly family: Family;
  /** one sentence */
  readonly summary: string;
  readonly params: P;
  readonly returns: Returns<R>;
  /** document, edition, clause or table; at least one */
  readonly sources: readonly [string, ...string[]];
  /** taken as given whatever the arguments */
  readonly assumptions?: readonly string[];
  readonly cautions?: readonly string[];
  readonly example: Example<P, R>;
  /** a search that may take longer than a keystroke: hosts run it off the page's main thread */
  readonly heavy?: true;
  run(args: ArgumentsOf<P>, tape: Tape | undefined): NoInfer<R>;
}

/** A declared function with its types erased, as the registry holds it. */
export interface CellFunction {
  readonly name: string;
  /** what the host stores in files: letters and digits only; never changes after release */
  readonly id: string;
  readonly family: Family;
  readonly summary: string;
  readonly params: readonly NamedParam[];
  readonly returns: Returns<Cell | Table>;
  readonly sources: readonly string[];
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
  readonly example: ErasedExample;
  readonly heavy: boolean;
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

/** Name of the parameter that every table function ends with. */
export const HEADERS = "headers";

/**
 * Declares a function. A function that returns a table gets one more optional parameter, `headers`, at the end.
 */
export function cellFunction<const P extends Params, R extends Cell | Table>(d: Declaration<P, R>): CellFunction {
  const params: NamedParam[] = Object.entries(d.params).map(([name, param]) => ({ name, param }));
  if (d.returns.kind === "table") {
    params.push({
      name: HEADERS,
      param: optional(flag({ says: "TRUE to put a row of headings on top" }), false, ""),
    });
  }
  return {
    name: d.name,
    id: d.name.replaceAll("_", ""),
    family: d.family,
    summary: d.summary,
    params,
    returns: d.returns as Returns<Cell | Table>,
    sources: d.sources,
    assumptions: d.assumptions ?? [],
    cautions: d.cautions ?? [],
    example: d.example as ErasedExample,
    heavy: d.heavy === true,
    // The reader fills exactly the parameters that `P` declares, so the erased record is ArgumentsOf<P>.
    run: (args, tape) => d.run(args as ArgumentsOf<P>, tape),
  };
}

/** The caution that every preliminary result carries. */
export function preliminary(subject: string): string {
  return `Preliminary ${subject} figures for planning: the adopted code with its local amendments and a licensed professional decide.`;
}
