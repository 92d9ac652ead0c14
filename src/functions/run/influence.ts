import type { CellFunction } from "../declare/cell-function.ts";
import type { Notes, RawArgument } from "../declare/param.ts";
import { readArguments } from "./arguments.ts";

/** How a result moves when one argument is taken a tenth lower and a tenth higher, as shares of the result. */
export interface Influence {
  readonly name: string;
  /** undefined where the calculation refuses there */
  readonly down: number | undefined;
  readonly up: number | undefined;
}

const TENTH = 0.1;
const SILENT: Notes = { assume: () => {}, caution: () => {} };
const KINDS = new Set(["number", "length", "quantity"]);

/**
 * What moves a number: each numeric argument a tenth down and up, the one that moves it most first.
 * Only for a function that gives a single number, and not for a search, which would run twice an argument.
 */
export function influences(fn: CellFunction, raw: readonly RawArgument[]): readonly Influence[] {
  if (fn.heavy || fn.returns.kind !== "number") return [];
  const run = (args: Readonly<Record<string, unknown>>): number | undefined => {
    try {
      const value = fn.run(args, undefined);
      return typeof value === "number" && Number.isFinite(value) ? value : undefined;
    } catch {
      // Outside what the method covers there is no answer, and the bar says so.
      return undefined;
    }
  };
  try {
    const args = readArguments(fn, raw, SILENT, undefined);
    const at = run(args);
    if (at === undefined || at === 0) return [];
    const share = (value: number | undefined) => (value === undefined ? undefined : value / at - 1);
    return [...fn.params, ...fn.named]
      .flatMap(({ name, param }): Influence[] => {
        const value = args[name];
        if (typeof value !== "number" || value === 0 || !KINDS.has(param.kind)) return [];
        const down = share(run({ ...args, [name]: value * (1 - TENTH) }));
        const up = share(run({ ...args, [name]: value * (1 + TENTH) }));
        return [{ name, down, up }];
      })
      .filter((i) => reach(i) > 1e-9)
      .sort((a, b) => reach(b) - reach(a));
  } catch {
    // A call that cannot be read has an error to show, and nothing to move.
    return [];
  }
}

/** The larger move of both. */
export function reach({ down, up }: Influence): number {
  return Math.max(Math.abs(down ?? 0), Math.abs(up ?? 0));
}
