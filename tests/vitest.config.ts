import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/browser/**", "tests/office/**", "tests/bench/**", "node_modules/**"],
    // The tables that hosts load later.
    setupFiles: ["src/functions/run/tables-at-once.ts"],
    testTimeout: 180_000,
  },
});
