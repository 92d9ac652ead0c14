import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: ["tests/browser/**/*.test.ts"],
    globalSetup: ["tests/browser/setup.ts"],
    // One browser at a time: the machines that run this have two cores.
    fileParallelism: false,
    testTimeout: 90_000,
    hookTimeout: 180_000,
  },
});
