/**
 * Cutting against published instances; each layout is checked by tests/core/cutting/verify.ts. The sizes of the data
 * are taken as inches, without kerf.
 * node tests/bench/run.mjs cutting [sets] [--every n] [--limit ms] [--effort x] [--each]
 */
import { readFileSync } from "node:fs";
import { classes } from "./cutting-classes.ts";
import { lengths } from "./cutting-lengths.ts";
import { setFlags } from "./cutting-report.ts";

export const data = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`file://${process.cwd()}/tests/bench/data/${name}.json`), "utf8"));

const sets: Record<string, () => void> = {
  fixed: () => classes(data("bpp2d_classes"), false),
  turning: () => classes(data("bpp2d_classes"), true),
  lengths: () => lengths(data("bpp1d")),
};

const wanted = setFlags(process.argv.slice(3));
for (const [name, run] of Object.entries(sets)) if (wanted.length === 0 || wanted.includes(name)) run();
