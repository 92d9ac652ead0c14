import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: ["tests/office/**/*.test.ts"],
    fileParallelism: false,
    testTimeout: 240_000,
    hookTimeout: 300_000,
  },
});
