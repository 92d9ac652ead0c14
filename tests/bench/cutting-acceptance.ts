import { type NestOptions, nestLengths, nestSheets } from "../../src/core/cutting/index.ts";
import { faults } from "../core/cutting/verify.ts";
import { lengthFaults } from "../core/cutting/verify-lengths.ts";
import { flags, type Row, report, search, timed } from "./cutting-report.ts";

interface Instance {
  id: string;
  kind: "sheet" | "length" | "course";
  kerf: number;
  trim: number;
  stock: { id: string; L: number; W: number; cost: number; qty: number | null }[];
  parts: { id: string; L: number; W: number; q: number; grain: "L" | "free" }[];
  lowerBound: { cost: number };
}

/** The invented sheets and lengths of a timber shell; the three with courses are in tests/core/takeoff/courses.test.ts. */
export function acceptance(file: unknown): readonly Row[] {
  const { instances } = file as { instances: Instance[] };
  const rows: Row[] = [];
  for (const inst of instances) {
    if (flags.only !== "" && !flags.only.split(",").includes(inst.id)) continue;
    if (inst.kind === "course") continue;
    const stocks = inst.stock.map((s) => ({
      id: s.id,
      lengthIn: s.L,
      widthIn: s.W,
      cost: s.cost,
      quantity: s.qty,
    }));
    const parts = inst.parts.map((p) => ({
      id: p.id,
      lengthIn: p.L,
      widthIn: p.W,
      quantity: p.q,
      turns: p.grain === "free",
    }));
    const options: NestOptions = { kerfIn: inst.kerf, trimIn: inst.trim, goal: "cost", ...search() };
    const base = { group: inst.id, id: inst.id, best: inst.lowerBound.cost };
    if (inst.kind === "sheet") {
      const { found: n, ms } = timed(() => nestSheets(parts, stocks, options));
      rows.push({ ...base, ...n, ours: n.cost, ms, wrong: faults(n, parts, stocks, options) });
    } else {
      const { found: n, ms } = timed(() => nestLengths(parts, stocks, options));
      rows.push({ ...base, ...n, ours: n.cost, ms, wrong: lengthFaults(n, parts, stocks, options) });
    }
  }
  return report("acceptance: best is the proven lower bound in cost", rows);
}
