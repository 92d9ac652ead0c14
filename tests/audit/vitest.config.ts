import { defineConfig } from "vitest/config";

/** The published checks alone, with their misses noted; then the report on them. */
const report = process.env.AUDIT === "report";

export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: [report ? "tests/audit/report.ts" : "tests/published/**/*.test.ts"],
    // A search finds the printed optimum or fails: there is no miss to note, and it takes minutes on a busy machine.
    exclude: ["tests/published/guillotine-patterns.test.ts"],
    setupFiles: ["src/functions/run/tables-at-once.ts", ...(report ? [] : ["tests/audit/setup.ts"])],
    testTimeout: 180_000,
  },
});
