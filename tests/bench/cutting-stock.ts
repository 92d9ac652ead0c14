import { nestSheets } from "../../src/core/cutting/index.ts";
import { faults } from "../core/cutting/verify.ts";
import { flags, type Row, report, search, timed } from "./cutting-report.ts";

interface Instance {
  id: string;
  W?: number;
  H?: number;
  bins?: [number, number, number][];
  items: [number, number, number][];
  best: Record<string, number>;
}

interface Stock2d {
  title: string;
  /** the best known value of an instance, undefined to leave it out */
  best: (inst: Instance) => number | undefined;
  group: (inst: Instance) => string;
  turns: boolean;
  goal: "sheets" | "cost";
}

/** Instances with quantities, with one or with several sheet sizes. */
export function stock2d(file: unknown, { title, best, group, turns, goal }: Stock2d): readonly Row[] {
  const { instances } = file as { instances: Instance[] };
  const rows: Row[] = [];
  instances.forEach((inst, i) => {
    const known = best(inst);
    if (known === undefined || i % flags.every !== flags.offset) return;
    if (flags.only !== "" && !flags.only.split(",").includes(inst.id)) return;
    const parts = inst.items.map(([w, h, quantity], k) => ({
      id: `p${k}`,
      lengthIn: w,
      widthIn: h,
      quantity,
      turns,
    }));
    const bins = inst.bins ?? [[inst.W!, inst.H!, 1]];
    const stocks = bins.map(([w, h, cost], k) => ({
      id: `s${k}`,
      lengthIn: w!,
      widthIn: h!,
      cost: cost!,
      quantity: null,
    }));
    const options = { kerfIn: 0, trimIn: 0, goal, ...search() };
    const { found: n, ms } = timed(() => nestSheets(parts, stocks, options));
    const ours = goal === "cost" ? n.cost : n.count;
    rows.push({
      ...n,
      group: group(inst),
      id: inst.id,
      best: known,
      ours,
      ms,
      wrong: faults(n, parts, stocks, options),
    });
  });
  return report(title, rows);
}

/** The guillotine instances as stock of one size, fixed. */
export const guillotineStock = (file: unknown): readonly Row[] =>
  stock2d(file, {
    title: "guillotine stock, fixed: best known 3-stage",
    best: (i) => (i.bins ? undefined : Math.min(...Object.values(i.best))),
    group: (i) => i.id,
    turns: false,
    goal: "sheets",
  });
