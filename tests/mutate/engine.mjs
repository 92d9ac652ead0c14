// The tests in one process that stays: each mutant is one module whose text comes from elsewhere, and only what changed is read anew.
import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import { createVitest } from "vitest/node";

const top = fileURLToPath(new URL("../..", import.meta.url));
const [family] = process.argv.slice(2);

let changed;
const mutant = {
  name: "mutant",
  enforce: "pre",
  load: (id) => (id.split("?")[0] === changed?.file ? changed.code : undefined),
};

const vitest = await createVitest(
  "test",
  {
    config: false,
    root: top,
    watch: true,
    include: ["tests/**/*.test.ts"],
    // The test of the command bundles the sources as they are on the disk, so it sees no mutant, and may install dependencies.
    exclude: ["tests/browser/**", "tests/bench/**", "tests/functions/declare/describe.test.ts", "node_modules/**"],
    setupFiles: ["src/functions/run/tables-at-once.ts"],
    testTimeout: 60_000,
    bail: 1,
    reporters: [{}],
    pool: "threads",
    maxWorkers: 1,
    isolate: false,
    update: "none",
  },
  { plugins: [mutant], server: { watch: null } },
);

const specifications = await vitest.globTestSpecifications();
const inFolders = (...starts) =>
  specifications.filter((s) => starts.some((start) => relative(top, s.moduleId).startsWith(start)));
/** First the family's own tests, then those of all declarations. */
const RUNS = [inFolders(`tests/core/${family}/`, `tests/published/${family}`), inFolders("tests/functions/")];

/** Files with a test that fails by itself: it would kill everything. */
const leftOut = new Set();

/** The first test that fails: its file, its name and what it says. */
async function failing(all) {
  const tests = all.filter((t) => !leftOut.has(relative(top, t.moduleId)));
  if (tests.length === 0) return undefined;
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(tests);
  const module = testModules.find((m) => m.state() === "failed");
  if (module === undefined)
    return unhandledErrors.length > 0 ? { file: "", says: String(unhandledErrors[0]) } : undefined;
  const [test] = module.children.allTests("failed");
  const says =
    test === undefined ? module.errors()[0]?.message : `${test.fullName}: ${test.result().errors[0]?.message}`;
  return { file: relative(top, module.moduleId), says };
}

process.on("message", async (asked) => {
  if (asked.leaveOut !== undefined) leftOut.add(asked.leaveOut);
  changed = asked;
  vitest.invalidateFile(asked.file);
  let by;
  for (const tests of RUNS) by ??= await failing(tests);
  vitest.invalidateFile(asked.file);
  process.send({ by });
});
process.send({ ready: true });
