// node tests/bench/run.mjs cutting [arguments]: runs tests/bench/<name>.ts
import { runBundled } from "../run-bundled.mjs";

const name = process.argv[2];
if (!name || !/^[\w-]+$/.test(name)) {
  console.error("usage: node tests/bench/run.mjs <name> [arguments]");
  process.exit(1);
}
await runBundled(new URL(`${name}.ts`, import.meta.url));
