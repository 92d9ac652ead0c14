import { nestLengths } from "../../src/core/cutting/lengths/nest.ts";
import { lengthFaults } from "../core/cutting/verify-lengths.ts";
import { flags, type Row, report, search, timed } from "./cutting-report.ts";

interface Instance {
  id: string;
  C: number;
  items: [number, number][];
  ub: number;
}

/** Sources of the instances, by the first letters of their names. */
const GROUP = /^(?:F_[a-z]|SW\d|W\d?|[A-Z])/;

/** Every n-th of 1,618 one-dimensional instances with known optimum. */
export function lengths(file: unknown, every = flags.every): readonly Row[] {
  const { instances } = file as { instances: Instance[] };
  const rows: Row[] = [];
  instances.forEach((inst, i) => {
    if (i % every !== flags.offset || !inst.id.startsWith(flags.only)) return;
    // the data reach 100000 units: a sixty-fourth each keeps them within the longest stock
    const parts = inst.items.map(([size, quantity], k) => ({ id: `p${k}`, lengthIn: size / 64, quantity }));
    const stocks = [{ id: "s", lengthIn: inst.C / 64, cost: 1, quantity: null }];
    const options = { kerfIn: 0, trimIn: 0, goal: "sheets" as const, ...search() };
    const { found: nesting, ms } = timed(() => nestLengths(parts, stocks, options));
    rows.push({
      group: GROUP.exec(inst.id)?.[0] ?? inst.id,
      id: inst.id,
      best: inst.ub,
      ours: nesting.count,
      bound: nesting.bound,
      proven: nesting.proven,
      ms,
      cutShort: nesting.cutShort,
      wrong: lengthFaults(nesting, parts, stocks, options),
    });
  });
  return report("one-dimensional: 1618 instances, best known is the optimum", rows);
}
