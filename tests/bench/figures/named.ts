import type { CellFunction } from "../../../src/functions/declare/cell-function.ts";
import { functionNamed } from "../../../src/functions/registry.ts";

export const named = (name: string): CellFunction => {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no ${name}`);
  return fn;
};
