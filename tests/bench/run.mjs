// Bundles tests/bench/<name>.ts and runs it: node tests/bench/run.mjs cutting [arguments]
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";

const name = process.argv[2];
if (!name || !/^[\w-]+$/.test(name)) {
  console.error("usage: node tests/bench/run.mjs <name> [arguments]");
  process.exit(1);
}
const dir = mkdtempSync(join(tmpdir(), "bench-"));
const out = join(dir, `${name}.mjs`);
process.on("exit", () => rmSync(dir, { recursive: true, force: true }));
await build({
  entryPoints: [new URL(`${name}.ts`, import.meta.url).pathname],
  outfile: out,
  bundle: true,
  platform: "node",
  format: "esm",
  mainFields: ["module", "main"],
  // some peers are CommonJS and ask for modules of Node
  banner: { js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);' },
  logLevel: "warning",
});
await import(pathToFileURL(out).href);
