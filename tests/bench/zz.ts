import { writeFileSync } from "node:fs";
import { ColumnGeneration, cuttingProblem } from "../../src/core/cutting/engine/column-generation.ts";
import { Effort } from "../../src/core/cutting/engine/effort.ts";
import { nestLengths } from "../../src/core/cutting/index.ts";
import { lengthModel } from "../../src/core/cutting/lengths/model.ts";
import { LengthPricer } from "../../src/core/cutting/lengths/pricing.ts";
import { Random } from "../../src/core/kit/random.ts";
import { timberProblem } from "./cutting-shop.ts";

const out: unknown[] = [];
for (let i = 0; i < 40; i++) {
  const { parts, stocks, options } = timberProblem(i);
  const m = lengthModel(parts, stocks, options);
  const g = new ColumnGeneration(cuttingProblem(m), new LengthPricer(m), { smoothing: 0, stepsPerUnit: 1 });
  const e = new Effort(1e9);
  g.run(
    m.types.map((t) => t.need),
    m.stocks.map((s) => s.limit),
    true,
    0,
    e,
  );
  const n = nestLengths(parts, stocks, options);
  if (n.proven) {
    out.push({ i, opt: n.cost });
    continue;
  }
  const u = m.types.map((_, t) => Math.max(0, g.master.duals[t]!));
  const lb = m.types.reduce((s, t, k) => s + u[k]! * t.need, 0);
  const gap = n.cost * 10000 - lb;
  const cols: { cost: number; a: number[] }[] = [];
  const order = m.types.map((_, t) => t).sort((a, b) => u[b]! / m.types[b]!.size - u[a]! / m.types[a]!.size);
  for (const s of m.stocks) {
    const a = m.types.map(() => 0);
    const rec = (k: number, room: number, worth: number): void => {
      if (cols.length > 400000) return;
      if (k === order.length) {
        if (s.cost - worth <= gap + 1e-6) cols.push({ cost: s.cost, a: [...a] });
        return;
      }
      const t = order[k]!;
      if (worth + (room * u[t]!) / m.types[t]!.size < s.cost - gap - 1e-6) return;
      for (let c = Math.min(m.types[t]!.need, Math.floor(room / m.types[t]!.size)); c >= 0; c--) {
        a[t] = c;
        rec(k + 1, room - c * m.types[t]!.size, worth + c * u[t]!);
      }
      a[t] = 0;
    };
    rec(0, s.size, 0);
  }
  out.push({ i, ours: n.cost, lb: lb / 10000, cols, needs: m.types.map((t) => t.need) });
  console.log(i, n.cost, lb / 10000, cols.length);
}
writeFileSync("/tmp/cb/dump.json", JSON.stringify(out));
