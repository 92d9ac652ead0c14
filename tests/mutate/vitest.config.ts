import { readFileSync } from "node:fs";
import { defineConfig } from "vitest/config";

const { MUTANT_FILE = "", MUTANT_CODE = "" } = process.env;

/** The unit tests with one module changed: its text comes from elsewhere. */
export default defineConfig({
  plugins: [
    {
      name: "mutant",
      enforce: "pre",
      load: (id) => (id.split("?")[0] === MUTANT_FILE ? readFileSync(MUTANT_CODE, "utf8") : undefined),
    },
  ],
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: ["tests/**/*.test.ts"],
    // The test of the command bundles the sources as they are on the disk, so it sees no mutant, and may install dependencies.
    exclude: ["tests/browser/**", "tests/bench/**", "tests/functions/declare/describe.test.ts", "node_modules/**"],
    setupFiles: ["src/functions/run/tables-at-once.ts"],
    testTimeout: 60_000,
    bail: 1,
    reporters: ["dot"],
    maxWorkers: 1,
    isolate: false,
  },
});
