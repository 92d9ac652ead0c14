// Bundles a TypeScript file of the tests and runs it in this process, which keeps its arguments.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

/** @param {URL} entry */
export async function runBundled(entry) {
  const dir = mkdtempSync(join(tmpdir(), "sillwork-"));
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
    logLevel: "warning",
  });
  await import(pathToFileURL(out).href);
}
