import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: ["tests/browser/**/*.test.ts"],
    // One browser at a time: the machines that run this have two cores.
    fileParallelism: false,
    // Keys typed into a real page can be lost on a machine that is busy with something else.
    retry: 1,
    testTimeout: 40_000,
    hookTimeout: 180_000,
  },
});
