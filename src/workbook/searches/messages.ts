import type { CellFunction } from "../../functions/declare/cell-function.ts";
import type { RawArgument } from "../../functions/declare/param.ts";
import type { Outcome, Working } from "../../functions/run/invoke.ts";
import { answered, explained } from "../../functions/run/tables-on-demand.ts";

/** What a page asks of the search worker. */
export interface SearchRequest {
  readonly turn: number;
  readonly wants: "outcome" | "working";
  /** function id */
  readonly id: string;
  readonly args: readonly RawArgument[];
}

/** What the worker says when it can be asked. */
export const READY = "ready";

/** What the worker answers; nothing but the turn where it could not. */
export interface SearchReply {
  readonly turn: number;
  readonly found?: Outcome | Working;
}

/** The worker's part; never fails. */
export async function reply(
  { turn, wants, id, args }: SearchRequest,
  functions: readonly CellFunction[],
): Promise<SearchReply> {
  const fn = functions.find((f) => f.id === id);
  if (fn === undefined) return { turn };
  return { turn, found: await (wants === "outcome" ? answered(fn, args) : explained(fn, args)) };
}
