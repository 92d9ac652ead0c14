// `npm run bench` writes the table of figures; `npm run bench -- cutting [arguments]` runs tests/bench/<name>.ts
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { runBundled } from "../run-bundled.mjs";

const name = process.argv[2] ?? "figures";
if (!/^[\w-]+$/.test(name)) {
  console.error("usage: node tests/bench/run.mjs [name] [arguments]");
  process.exit(1);
}
// Memory is measured after the garbage is gone.
setFlagsFromString("--expose-gc");
globalThis.gc = runInNewContext("gc");
await runBundled(new URL(`${name}.ts`, import.meta.url));
