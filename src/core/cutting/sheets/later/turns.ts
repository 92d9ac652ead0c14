import type { Random } from "../../../kit/random.ts";
import type { Effort } from "../../engine/effort.ts";
import { kindOf } from "../plan/alike.ts";
import type { Layout } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";
import { leftoverOf, sawnLayout } from "../plan/sawn.ts";
import { largestOf, largestRest } from "./leftover.ts";
import { Relay } from "./relay.ts";

/** More turns than any sheet has. */
const MANY = 1e6;

/**
 * The same parts on the same sheets with fewer turns of the saw: each kind of sheet is laid again, in strips where that
 * can be. The largest leftover of all stays as large.
 */
export function fewerTurns(
  model: SheetModel,
  layouts: readonly Layout[],
  random: Random,
  effort: Effort,
): readonly Layout[] {
  const keep = largestOf(model, layouts);
  const guarded = layouts.filter((l) => largestRest(model, l) >= keep).map(kindOf);
  const kinds = new Map<string, Layout>();
  const each = effort.remaining / (layouts.length + 1);
  return layouts.map((l) => {
    const kind = kindOf(l);
    const known = kinds.get(kind);
    if (known) return known;
    const least = guarded.includes(kind) ? keep : 0;
    const better = effort.stage(each, (e) => laidWithFewer(model, l, least, random, e));
    kinds.set(kind, better);
    return better;
  });
}

function laidWithFewer(model: SheetModel, l: Layout, least: number, random: Random, effort: Effort): Layout {
  let best = l;
  let fewest = sawnLayout(model, l).turns;
  const types = l.placed.map((p) => p.type);
  const value = (other: Layout): number => {
    const plan = sawnLayout(model, other);
    const good = leftoverOf(plan, model.kerf) >= least && plan.stages <= (model.stages ?? MANY);
    return good ? MANY - plan.turns : 1;
  };
  const stages = model.stages === undefined ? ([2, 3, undefined] as const) : ([2, model.stages] as const);
  for (const limit of stages) {
    if (fewest === 0) break;
    const found = effort.stage(effort.remaining / 2, (e) =>
      new Relay({ ...model, stages: limit }, random, e).best(l.stock, types, value),
    );
    if (!found || value(found) <= 1) continue;
    const turns = MANY - value(found);
    if (turns >= fewest) continue;
    best = found;
    fewest = turns;
  }
  return best;
}
