import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/browser/**", "tests/bench/**", "node_modules/**"],
    testTimeout: 30_000,
  },
});
