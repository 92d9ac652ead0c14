import { cpSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const top = fileURLToPath(new URL("../..", import.meta.url));

const PARTS = ["src", "tests", ".ci", "package.json", "package-lock.json", "README.md", "tsconfig.json", ".biome.json"];

/** Of the benchmarks only their figures, which the README quotes: their peers are no part of the project. */
const BENCHMARKS = /tests[\\/]bench[\\/](?!FIGURES)/;

/** A copy of the project that a test may write into: the folder of this name in the cache, made anew. */
export function copyOf(name: string): string {
  const copy = join(top, ".cache", name);
  rmSync(copy, { recursive: true, force: true });
  for (const part of PARTS) {
    cpSync(join(top, part), join(copy, part), { recursive: true, filter: (from) => !BENCHMARKS.test(from) });
  }
  return copy;
}

/** The dependencies are those of the project itself, which are found from inside it: the copy need not install them. */
export function withDependencies(copy: string): void {
  mkdirSync(join(copy, "node_modules"));
  writeFileSync(join(copy, "node_modules/.package-lock.json"), "{}");
}
