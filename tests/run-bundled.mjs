// Bundles a TypeScript file of the tests and runs it in this process, which keeps its arguments.
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

/** @param {URL} entry */
export async function runBundled(entry) {
  // Inside the project, so that a package left out of the bundle is found.
  const cache = fileURLToPath(new URL("../.cache/", import.meta.url));
  mkdirSync(cache, { recursive: true });
  const dir = mkdtempSync(join(cache, "run-"));
  const out = join(dir, "bundle.mjs");
  process.on("exit", () => rmSync(dir, { recursive: true, force: true }));
  await build({
    entryPoints: [fileURLToPath(entry)],
    outfile: out,
    bundle: true,
    platform: "node",
    format: "esm",
    mainFields: ["module", "main"],
    // some peers are CommonJS and ask for modules of Node
    banner: {
      js: 'import { createRequire as requireOf } from "node:module"; const require = requireOf(import.meta.url);',
    },
    // it starts a program beside its own files
    external: ["playwright-core"],
    logLevel: "warning",
  });
  await import(pathToFileURL(out).href);
}
