import { Effort } from "../../src/core/cutting/engine/effort.ts";
import { Joining } from "../../src/core/cutting/sheets/joining.ts";
import { sheetModel } from "../../src/core/cutting/sheets/model.ts";
import { Random } from "../../src/core/kit/random.ts";
import { plant } from "../core/cutting/planted.ts";

for (const i of [4, 6, 8, 13, 14, 17, 20, 33, 37, 38]) {
  const random = new Random(300 + i);
  const second = { l: 60 + 12 * random.below(6), w: 30 + 6 * random.below(4), cost: 0 };
  second.cost = Math.round(((42 * second.l * second.w) / (96 * 48)) * (0.85 + 0.3 * random.unit()) + 1);
  const p = plant(
    9000 + i,
    2 + random.below(9),
    [{ l: 96, w: 48, cost: 42 }, second],
    0.125,
    0.25,
    random.unit() < 0.5,
    5,
  );
  const m = sheetModel(p.parts, p.stocks, { kerfIn: 0.125, trimIn: 0.25, goal: "cost" });
  const j = new Joining(m);
  const t = process.cpuUsage().user;
  const r = j.search(new Effort(Number(process.env.E ?? 24e6)));
  const small = m.types.filter((t) => Math.min(t.w, t.h) <= 8).length;
  console.log(
    i,
    p.sheets,
    p.parts.length,
    small,
    m.types.filter((t) => t.turns).length,
    r?.cost,
    j.harvest.size,
    (process.cpuUsage().user - t) / 1000,
    [...j.harvest.values()].map((l) => l.placed.length).join(" "),
  );
}
