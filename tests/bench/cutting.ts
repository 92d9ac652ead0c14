/**
 * Cutting against published instances; each layout is checked by tests/core/cutting/verify.ts. The sizes of the data
 * are taken as inches, without kerf.
 * node tests/bench/run.mjs cutting [sets] [--every n] [--limit ms] [--effort x] [--each]
 */
import { readFileSync } from "node:fs";
import { acceptance } from "./cutting-acceptance.ts";
import { classes } from "./cutting-classes.ts";
import { lengths } from "./cutting-lengths.ts";
import { besidePeers } from "./cutting-peers.ts";
import { setFlags } from "./cutting-report.ts";
import { jigsaws, patterns, shop, timber } from "./cutting-shop.ts";
import { guillotineStock, stock2d } from "./cutting-stock.ts";

const data = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`file://${process.cwd()}/tests/bench/data/${name}.json`), "utf8"));

const sets: Record<string, () => unknown> = {
  fixed: () => classes(data("bpp2d_classes"), false),
  turning: () => classes(data("bpp2d_classes"), true),
  peers: () => besidePeers(data("bpp2d_classes")),
  acceptance: () => acceptance(data("acceptance")),
  gcut: () => guillotineStock(data("csp2d_gcutd")),
  sizes: () =>
    stock2d(data("csp2d_gcutd"), {
      title: "guillotine stock, three sheet sizes at cost = area, fixed: best known 2-stage",
      best: (i) => (i.bins ? i.best.cost_2stage_oriented : undefined),
      group: (i) => i.id,
      turns: false,
      goal: "cost",
    }),
  classical: () =>
    stock2d(data("csp2d_misc"), {
      title: "classical small guillotine instances as stock, fixed: best known 3-stage",
      best: (i) => i.best.og3,
      group: () => "all",
      turns: false,
      goal: "sheets",
    }),
  variable: () =>
    stock2d(data("vsbpp2d_pisinger"), {
      title: "variable sheet sizes, fixed: best known free (not guillotine)",
      best: (i) => i.best.cost_of,
      group: (i) => i.id.slice(0, 5),
      turns: false,
      goal: "cost",
    }),
  shop,
  jigsaws,
  timber,
  patterns,
  lengths: () => lengths(data("bpp1d")),
};

const wanted = setFlags(process.argv.slice(3));
for (const [name, run] of Object.entries(sets)) if (wanted.length === 0 || wanted.includes(name)) run();
