import { at } from "../../engine/at.ts";
import { ColumnGeneration } from "../../engine/column-generation.ts";
import type { Effort } from "../../engine/effort.ts";
import { type Column, NO_STOCK } from "../../engine/master.ts";
import { cuttingProblem } from "../../engine/problem.ts";
import type { LengthModel } from "../model/model.ts";
import { LengthPricer } from "../model/pricing.ts";

/** Multipliers of the linear problem: what a part of each type is worth, and what a length of limited stock saves (0 or less). */
export interface Values {
  readonly parts: Float64Array;
  readonly stocks: Float64Array;
}

/**
 * Multipliers of the linear problem in which a longer part may stand for a shorter one: the bound is the same, and no
 * part is worth less than a shorter one (J. Valerio de Carvalho, INFORMS J. Comput. 17 (2005) 175-182, from memory).
 * @param known columns that are good already
 * @returns undefined where the effort does not suffice
 */
export function fallingValues(model: LengthModel, known: readonly Column[], effort: Effort): Values | undefined {
  const generation = new ColumnGeneration(cuttingProblem(model), new LengthPricer(model), {
    smoothing: 0,
    stepsPerUnit: 1,
  });
  const { master } = generation;
  for (const c of known) master.add(c);
  for (let t = 1; t < model.types.length; t++)
    master.add({ stock: NO_STOCK, cost: 0, types: [t - 1, t], counts: [-1, 1] });
  const needs = model.types.map((t) => t.need);
  const limits = model.stocks.map((s) => s.limit);
  if (!generation.run(needs, limits, false, 0, effort)) return undefined;
  const parts = Float64Array.from(needs, (_, t) => Math.max(0, at(master.duals, t)));
  for (let t = parts.length - 2; t >= 0; t--) parts[t] = Math.max(at(parts, t), at(parts, t + 1));
  return { parts, stocks: Float64Array.from(limits, (_, s) => Math.min(0, master.stockDual(s))) };
}

/** The bound of the multipliers: no plan costs less than its parts are worth, less what limited stock saves. */
export const worthOf = (model: LengthModel, values: Values): number =>
  model.types.reduce((sum, t, i) => sum + t.need * at(values.parts, i), 0) +
  model.stocks.reduce((sum, s, i) => sum + s.limit * Math.min(0, at(values.stocks, i)), 0);
