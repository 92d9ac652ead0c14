// `npm run mutate -- FAMILY [--count 60] [--seed 1] [--from 0] [--only N,N] [--in PATTERN] [--own] [--tests PATTERN]`: changes one thing at a time in src/core/FAMILY and runs the tests that should see it.
import { fork } from "node:child_process";
import { once } from "node:events";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { sitesOf } from "./sites.mjs";

const top = fileURLToPath(new URL("../..", import.meta.url));
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    count: { type: "string", default: "60" },
    seed: { type: "string", default: "1" },
    from: { type: "string", default: "0" },
    only: { type: "string" },
    in: { type: "string", default: "" },
    own: { type: "boolean", default: false },
    // only the test files whose paths match: quick, for what a few tests are to see; the figure counts them all
    tests: { type: "string", default: "" },
  },
});
const [family] = positionals;
if (family === undefined || !existsSync(join(top, "src/core", family))) {
  const known = readdirSync(join(top, "src/core"), { withFileTypes: true }).filter((e) => e.isDirectory());
  console.error(
    `usage: npm run mutate -- FAMILY [--count 60] [--seed 1] [--from 0] [--only N,N] [--in PATTERN] [--own] [--tests PATTERN]\nfamilies: ${known.map((e) => e.name).join(", ")}`,
  );
  process.exit(1);
}

const files = (folder) =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return files(path);
    return entry.name.endsWith(".ts") ? [path] : [];
  });

/** Seeded, so that a run can be made again. */
function random(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const all = [];
for (const file of files(join(top, "src/core", family)).sort()) {
  const { code, sites } = await sitesOf(readFileSync(file, "utf8"));
  if (new RegExp(values.in).test(file)) for (const site of sites) all.push({ file, code, ...site });
}
const next = random(Number(values.seed));
for (let i = all.length - 1; i > 0; i--) {
  const j = Math.floor(next() * (i + 1));
  [all[i], all[j]] = [all[j], all[i]];
}
const chosen = all.slice(0, Number(values.count));
const only = values.only === undefined ? undefined : new Set(values.only.split(",").map(Number));
const name = (m) =>
  `${relative(top, m.file)}: ${m.kind}: ${m.was.replace(/\s+/g, " ").slice(0, 70)} -> ${m.text.replace(/\s+/g, " ").slice(0, 70)} | ${m.place}`;
const equal = JSON.parse(readFileSync(new URL("equal.json", import.meta.url), "utf8"));

/** The engine ends each test that runs too long; this is for what it cannot end. */
const LONGEST_MS = 300_000;

let engine;

async function started() {
  engine = fork(new URL("engine.mjs", import.meta.url), [family, values.own ? "own" : "all", values.tests], {
    stdio: ["ignore", "ignore", "inherit", "ipc"],
  });
  engine.once("exit", () => console.error("The engine has ended"));
  const [{ failing }] = await once(engine, "message");
  engine.removeAllListeners("exit");
  for (const test of failing) console.error(`left out, red without any change: ${test}`);
}

async function killed(mutant) {
  if (engine === undefined) await started();
  const code = mutant.code.slice(0, mutant.start) + mutant.text + mutant.code.slice(mutant.end);
  const late = setTimeout(() => engine.kill("SIGKILL"), LONGEST_MS);
  const seen = await new Promise((says) => {
    const died = () => {
      engine = undefined;
      says(true);
    };
    engine.once("exit", died);
    engine.once("message", (said) => {
      engine.off("exit", died);
      says(said.killed);
    });
    engine.send({ file: mutant.file, code, before: mutant.code, start: mutant.start });
  });
  clearTimeout(late);
  return seen;
}

let dead = 0;
let counted = 0;
const survivors = [];
for (const [i, mutant] of chosen.entries()) {
  if (i < Number(values.from) || (only !== undefined && !only.has(i))) continue;
  const said = name(mutant);
  const reason = equal[said];
  if (reason !== undefined) {
    console.log(`${i} equal (${reason}) ${said}`);
    continue;
  }
  counted++;
  const seen = await killed(mutant);
  if (seen) dead++;
  else survivors.push(`${i} ${said}`);
  console.log(`${i} ${seen ? "killed" : "SURVIVES"} ${said}`);
}
console.log(
  `\n${family}: ${dead} of ${counted} killed (${((100 * dead) / Math.max(1, counted)).toFixed(0)} %), ${all.length} places in all, seed ${values.seed}`,
);
for (const s of survivors) console.log(`  ${s}`);
engine?.kill();
