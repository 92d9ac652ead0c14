// One process that stays and runs all mutants. Which functions of the family each test enters is seen once; a mutant then meets the tests that
// enter the function that it changes, the quickest first, and the others only when those let it live.
import { existsSync, readdirSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { Script } from "node:vm";
import { functionAt, modules } from "./modules.mjs";
import { collect, vitest } from "./shim.mjs";

const top = fileURLToPath(new URL("../..", import.meta.url));
const [family, only, some] = process.argv.slice(2);
const TABLES = join(top, "src/functions/run/tables-at-once.ts");
/** One bundles the sources as they are on the disk, so it sees no mutant; the other changes modules by itself, which only vitest can. */
const LEFT_OUT = ["tests/functions/declare/describe.test.ts", "tests/functions/run/tables.test.ts"];
/** A test that runs so many times longer than by itself, and this much more, never ends: it has seen the mutant. */
const LONGER = 20;
const AND_MORE_MS = 3000;

const testFiles = (folder) =>
  readdirSync(join(top, folder), { withFileTypes: true, recursive: true })
    .filter((e) => e.isFile() && e.name.endsWith(".test.ts"))
    .map((e) => join(e.parentPath, e.name))
    .filter((file) => !LEFT_OUT.includes(relative(top, file)) && new RegExp(some).test(file));

const ours = join(top, "src/core", family, "/");
const { entered, fresh, reach, forget } = modules({
  watch: (file) => file.startsWith(ours),
  given: { vitest },
});

const FOLDERS = [`tests/core/${family}`, "tests/published", ...(only === "own" ? [] : ["tests/functions"])].filter(
  (f) => existsSync(join(top, f)),
);
const FILES = FOLDERS.flatMap(testFiles).filter((file) => [...reach(file)].some((f) => f.startsWith(ours)));

const call = new Script("__call()");
/** Runs code that may never end. */
async function bounded(run, ms) {
  globalThis.__call = run;
  const given = call.runInThisContext({ timeout: Math.ceil(ms) });
  if (!(given instanceof Promise)) return;
  let late;
  await Promise.race([given, new Promise((_, fails) => (late = setTimeout(fails, ms, new Error("never ends"))))]);
  clearTimeout(late);
}

/** The tests of each file as a set of modules has them, read when they are first asked for. */
function suite(changed) {
  const read = fresh(changed);
  const tests = new Map();
  let begun = false;
  return (file) => {
    if (!begun) read(TABLES);
    begun = true;
    if (!tests.has(file))
      tests.set(
        file,
        collect(() => read(file), file),
      );
    return tests.get(file);
  };
}

/** All tests without a change: how long each runs and what it enters. Those that fail by themselves would kill everything. */
async function baseline() {
  const known = [];
  const failing = [];
  const atReading = new Set();
  const testsOf = suite();
  for (const file of FILES) {
    entered();
    const tests = testsOf(file);
    for (const name of entered()) atReading.add(name);
    for (const [index, { name, run }] of tests.entries()) {
      entered();
      const from = performance.now();
      try {
        await bounded(run, 120_000);
        known.push({ file, index, name, ms: performance.now() - from, enters: entered() });
      } catch (error) {
        failing.push(`${relative(top, file)} ${name}: ${error.message}`);
      }
    }
  }
  forget();
  return { known: known.sort((a, b) => a.ms - b.ms), failing, atReading };
}

const { known, failing, atReading } = await baseline();
const alone = new Map();
const killers = new Map();

async function fails(test, testsOf) {
  const ms = LONGER * test.ms + AND_MORE_MS;
  try {
    let tests = [];
    await bounded(() => {
      tests = testsOf(test.file);
    }, 20_000);
    const [mine] = tests.slice(test.index, test.index + 1);
    if (mine === undefined || mine.name !== test.name) {
      // The change has made other tests of the rows: all of them count.
      for (const { run } of tests) await bounded(run, ms);
      return false;
    }
    await bounded(mine.run, ms);
    return false;
  } catch {
    return true;
  }
}

/** Whether a test passes alone without a change: one that needs another before it tells nothing. */
async function passesAlone(test) {
  if (!alone.has(test)) {
    alone.set(test, !(await fails(test, suite())));
    if (!alone.get(test)) console.error(`It fails by itself, so it counts for nothing: ${test.file} ${test.name}`);
  }
  return alone.get(test);
}

/** The tests that a mutant meets, in turn; what runs when a module is read may tell in any test that reads it. */
function inTurn({ file, start, before }) {
  const name = functionAt(before, file, start);
  const near = known.filter((t) => reach(t.file).has(file) && (name === undefined || t.enters.size > 0));
  const above = (entered) => reach(entered.slice(0, entered.lastIndexOf(":"))).has(file);
  const enters = name === undefined ? (t) => [...t.enters].some(above) : (t) => t.enters.has(name);
  const lately = (killers.get(file) ?? []).filter((t) => near.includes(t));
  const first = [...lately, ...near.filter(enters)];
  // A table that only a reader outside the family looks into is below no function of it that a test enters: all near tests count for it, and
  // for a function that runs while modules are read. Any other function is seen by no test that does not enter it.
  const all = name === undefined || atReading.has(name);
  return [...new Set(all ? [...first, ...near] : first)];
}

async function killerOf(mutant) {
  const testsOf = suite(mutant);
  for (const test of inTurn(mutant)) {
    if (alone.get(test) === false) continue;
    if (!(await fails(test, testsOf)) || !(await passesAlone(test))) continue;
    killers.set(mutant.file, [test, ...(killers.get(mutant.file) ?? [])].slice(0, 5));
    return test;
  }
  return undefined;
}

process.on("unhandledRejection", () => {});
// Whoever asked has gone.
process.on("disconnect", () => process.exit());
process.on("message", async (mutant) => {
  const test = await killerOf(mutant);
  process.send({ killed: test !== undefined });
});
process.send({ failing });
