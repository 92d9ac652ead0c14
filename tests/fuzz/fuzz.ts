/** `npm run fuzz -- [NAME or family] [runs] [seed]`: random calls of every function; what is found wrong goes into tests/found. */
import { mkdirSync, writeFileSync } from "node:fs";
import "../../src/functions/run/tables-at-once.ts";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import { registry } from "../../src/functions/registry.ts";
import { Calls, seedOf } from "./generate.ts";
import { faultOf } from "./verdict.ts";

const RUNS = 10_000;
const RUNS_OF_A_SEARCH = 200;
/** Inputs kept of one function in one go. */
const MOST_KEPT = 3;

const [wanted = "", runs = "", seedGiven = ""] = process.argv.slice(2);
const seed = seedGiven === "" ? Date.now() % 2 ** 31 : Number(seedGiven);
const functions = registry.filter(
  (fn) => wanted === "" || wanted === "all" || fn.name === wanted || fn.family === wanted,
);

/** Runs one function; says what was found. */
function fuzz(fn: CellFunction): {
  readonly calls: number;
  readonly faults: ReadonlyMap<string, { run: number; args: unknown }>;
} {
  const faults = new Map<string, { run: number; args: unknown }>();
  const calls = fn.heavy ? RUNS_OF_A_SEARCH : Number(runs || RUNS);
  for (let run = 0; run < calls; run++) {
    const args = new Calls(seedOf(fn.name, seed, run)).argumentsOf(fn, !fn.heavy);
    const fault = faultOf(fn, args, true);
    const kind = fault?.replace(/\d+/g, "#").slice(0, 60);
    if (kind !== undefined && !faults.has(kind)) faults.set(kind, { run, args: { says: fault, args } });
  }
  return { calls, faults };
}

console.log(`seed ${seed}`);
let wrong = 0;
for (const fn of functions) {
  const started = performance.now();
  const { calls, faults } = fuzz(fn);
  console.log(
    `${fn.name}: ${calls} calls in ${((performance.now() - started) / 1000).toFixed(1)} s, ${faults.size} faults`,
  );
  let kept = 0;
  for (const [kind, { run, args }] of faults) {
    wrong++;
    console.log(`  run ${run}: ${kind}\n    ${JSON.stringify(args).slice(0, 600)}`);
    const text = JSON.stringify({ function: fn.name, ...(args as object) }, null, 1);
    if (kept++ >= MOST_KEPT || text.length > 20_000) continue;
    mkdirSync("tests/found", { recursive: true });
    writeFileSync(`tests/found/${fn.name.toLowerCase()}-${seed}-${run}.json`, `${text}\n`);
  }
}
process.exit(wrong === 0 ? 0 : 1);
