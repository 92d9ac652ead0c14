import { readFileSync } from "node:fs";
import { acceptance } from "../cutting-acceptance.ts";
import { classes } from "../cutting-classes.ts";
import { lengths } from "../cutting-lengths.ts";
import { besidePeers } from "../cutting-peers.ts";
import { LONGEST_MS, type Row } from "../cutting-report.ts";
import { jigsaws, patterns, shop, timber } from "../cutting-shop.ts";
import { guillotineStock } from "../cutting-stock.ts";
import { type Line, line } from "./line.ts";

/** All 500 beside the libraries and all lists of lengths take long: every 25th of them. */
const EVERY = 25;

const data = (name: string): unknown => JSON.parse(readFileSync(`tests/bench/data/${name}.json`, "utf8"));

const total = (rows: readonly Row[]): number => rows.reduce((sum, r) => sum + r.ours, 0);
const longest = (rows: readonly Row[]): number => Math.max(...rows.map((r) => r.ms));
const seconds = (ms: number): string => `${(ms / 1000).toFixed(2)} s`;
const share = (rows: readonly Row[]): number => (100 * rows.filter((r) => r.proven).length) / rows.length;
const wrong = (rows: readonly Row[]): number => rows.filter((r) => r.wrong.length > 0).length;
/** Above the best known value, in hundredths of it. */
const over = (r: Row): number => (100 * (r.ours - r.best)) / r.best;

/** Cutting: totals over published instances and over invented work of a shop, and general libraries in the same run. */
export function cutting(): Line[] {
  const fixed = classes(data("bpp2d_classes"), false);
  const turning = classes(data("bpp2d_classes"), true);
  const stock = guillotineStock(data("csp2d_gcutd"));
  const accepted = acceptance(data("acceptance"));
  const shops = shop();
  const jigsaw = jigsaws();
  const priced = timber();
  const bars = lengths(data("bpp1d"), EVERY);
  const later = patterns();
  const all = [...fixed, ...turning, ...stock, ...accepted, ...shops, ...jigsaw, ...priced, ...bars];
  const most = Math.max(later.ms, longest(all));
  const missed = jigsaw.filter((r) => over(r) > 0);
  const worst = Math.max(0, ...missed.map(over));
  const optimal = priced.filter((r) => r.proven).length;
  return [
    line("500 published instances, parts as they lie: sheets", ...atMost(fixed, 7239, 94)),
    line("the same, parts may turn", ...atMost(turning, 6990, 93.5)),
    line("12 published instances of guillotine stock: sheets", ...atMost(stock, 5054, 100)),
    line(
      "7 invented lists of a timber shell: cost over the proven bound",
      `${((100 * total(accepted)) / accepted.reduce((sum, r) => sum + r.bound, 0) - 100).toFixed(2)} %, ${accepted.filter((r) => r.proven).length} of ${accepted.length} proven`,
    ),
    line(
      "Two sheet sizes at cost, 40 puzzles with a known plan: missed",
      `${missed.length}, worst ${worst.toFixed(1)} %`,
      "at most 1, none over 5 %",
      missed.length <= 1 && worst <= 5,
    ),
    line(
      "Several lengths at cost, 40 lists: proven least",
      `${optimal} of ${priced.length}`,
      "all",
      optimal === priced.length,
    ),
    line(
      `Every ${EVERY}th of 1,618 published lists of lengths: above the optimum`,
      `${bars.filter((r) => over(r) > 0).length} of ${bars.length}, by ${Math.max(...bars.map((r) => r.ours - r.best))} at most`,
      "only of the 28 hardest, by 1",
      bars.every((r) => r.ours <= r.best + Number(r.group === "H")),
    ),
    line(
      `One length, ${later.instances} lists with the same bars: longest leftovers together`,
      `${later.leftovers.toFixed(0)} in, proven the most in ${later.leftoversProven}`,
      "all proven",
      later.leftoversProven === later.instances,
    ),
    line(
      "patterns then",
      `${later.patterns}, proven the least beside that leftover in ${later.patternsProven} of ${later.instances}`,
    ),
    line(
      "The longest of all these, processor time (over the goal: the least of three)",
      seconds(most),
      seconds(LONGEST_MS),
      most <= LONGEST_MS,
    ),
    line("Plans of these that the independent checker refuses", String(wrong(all)), "none", wrong(all) === 0),
    ...besidePeers(data("bpp2d_classes"), EVERY).map(({ turns, name, toOurs, timeToOurs }) =>
      line(
        `${name}, every ${EVERY}th of the 500, ${turns ? "turning" : "as they lie"}: sheets and time to ours`,
        `${toOurs.toFixed(3)} and ${timeToOurs.toFixed(2)} times`,
        "no fewer sheets",
        toOurs >= 1,
      ),
    ),
  ];
}

/** What was found, the goal, and whether it is met. */
function atMost(rows: readonly Row[], sheets: number, proven: number): [string, string, boolean] {
  return [
    `${total(rows)}, ${share(rows).toFixed(1)} % proven, longest ${seconds(longest(rows))}`,
    `${sheets}, ${proven} % proven`,
    total(rows) <= sheets && share(rows) >= proven,
  ];
}
