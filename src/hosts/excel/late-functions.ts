import type { Association, ExcelFunction } from "./functions.ts";

/** Loads what calculates; a promise that fails may be asked again. */
export type LoadFunctions = () => Promise<ReadonlyMap<string, ExcelFunction>>;

/** What a cell is told when the calculations cannot be fetched. */
const NOT_LOADED =
  "The calculations could not be loaded: they are fetched from where the add-in came from. Check the connection, then calculate the cell again.";

/**
 * Tells Excel every id at once, before the calculations are there: what registers is small, what calculates is not. A call that comes early waits for them;
 * from then on calls answer at once.
 * @param fails makes the host's own error of a sentence
 */
export function associateLate(
  to: Association,
  ids: readonly string[],
  load: LoadFunctions,
  fails: (sentence: string) => Error,
): void {
  let loaded: ReadonlyMap<string, ExcelFunction> | undefined;
  let loading: Promise<ReadonlyMap<string, ExcelFunction>> | undefined;
  const once = () => {
    loading ??= load().then(
      (functions) => {
        loaded = functions;
        return functions;
      },
      () => {
        loading = undefined;
        throw fails(NOT_LOADED);
      },
    );
    return loading;
  };
  for (const id of ids) {
    to.associate(id, (...given) => {
      const fn = loaded?.get(id);
      if (fn !== undefined) return fn(...given);
      const kept = given.map(keptInvocation);
      return once().then((functions) => (functions.get(id) as ExcelFunction)(...kept));
    });
  }
}

/** Excel need not keep the invocation object until a late call is made, so what is read of it is read now. */
function keptInvocation(value: unknown): unknown {
  if (typeof value !== "object" || value === null || Array.isArray(value) || !("address" in value)) return value;
  const { address, isInValuePreview } = value as { address?: unknown; isInValuePreview?: unknown };
  return { address, isInValuePreview };
}
