// Runs a command that is written in TypeScript: bundles it when a source has changed, then runs it.
import { existsSync, mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { installDependencies, top } from "../../../../.ci/prepare.mjs";

const folder = `${top}node_modules/.cache/sillwork`;

/** The record names each file that a bundle was made of, with the time of its last change; the lock file stands for the dependencies. */
function isFresh(bundle, record) {
  if (!existsSync(bundle) || !existsSync(record)) return false;
  const inputs = Object.entries(JSON.parse(readFileSync(record, "utf8")));
  return inputs.every(([path, changed]) => statSync(`${top}${path}`, { throwIfNoEntry: false })?.mtimeMs === changed);
}

async function makeBundle(name, bundle, record) {
  const { build } = await import("esbuild");
  mkdirSync(folder, { recursive: true });
  const draft = `${bundle}.${process.pid}`;
  const { metafile } = await build({
    absWorkingDir: top,
    entryPoints: [fileURLToPath(new URL(`${name}.ts`, import.meta.url))],
    outfile: draft,
    bundle: true,
    minify: true,
    format: "esm",
    platform: "node",
    target: "node20",
    metafile: true,
    define: { SILLWORK_VERSION: JSON.stringify(JSON.parse(readFileSync(`${top}package.json`, "utf8")).version) },
    logLevel: "error",
    // Parts of the engine's own dependencies ask for modules by `require`.
    banner: { js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);' },
  });
  const own = Object.keys(metafile.inputs).filter((path) => !path.startsWith("node_modules/"));
  const inputs = [...own, "package.json", "package-lock.json"];
  renameSync(draft, bundle);
  const times = Object.fromEntries(inputs.map((path) => [path, statSync(`${top}${path}`).mtimeMs]));
  writeFileSync(record, JSON.stringify(times));
}

/** @param {string} name of the TypeScript file beside this one */
export async function runBundled(name) {
  installDependencies();
  const [bundle, record] = [`${folder}/${name}.mjs`, `${folder}/${name}.json`];
  if (!isFresh(bundle, record)) await makeBundle(name, bundle, record);
  await import(pathToFileURL(bundle).href);
}
