// Gives scripts that run in plain Node (the command below, the build) the functions of src/publish, bundled from TypeScript when a source is newer.
import { existsSync, mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const top = fileURLToPath(new URL("../..", import.meta.url));
const folder = join(top, "node_modules/.cache/sillwork");
const bundle = join(folder, "docs.mjs");
const inputsFile = join(folder, "docs.inputs.json");

function isStale() {
  if (!existsSync(bundle) || !existsSync(inputsFile)) return true;
  const made = statSync(bundle).mtimeMs;
  const inputs = JSON.parse(readFileSync(inputsFile, "utf8"));
  return inputs.some((file) => !existsSync(join(top, file)) || statSync(join(top, file)).mtimeMs > made);
}

/** @returns {Promise<typeof import("./index.ts")>} */
export async function loadDocs() {
  if (isStale()) {
    const { build } = await import("esbuild");
    // A name of its own for each process, then one rename: two commands at once never see half a file.
    const fresh = `${bundle}.${process.pid}.tmp`;
    mkdirSync(folder, { recursive: true });
    const { metafile } = await build({
      entryPoints: [join(top, "src/publish/index.ts")],
      absWorkingDir: top,
      outfile: fresh,
      bundle: true,
      format: "esm",
      platform: "node",
      target: "node20",
      metafile: true,
      logLevel: "error",
    });
    writeFileSync(inputsFile, JSON.stringify([...Object.keys(metafile.inputs), "package-lock.json"]));
    renameSync(fresh, bundle);
  }
  return import(`${pathToFileURL(bundle).href}?made=${statSync(bundle).mtimeMs}`);
}

const ICONS = ["icon-16.png", "icon-32.png", "icon-64.png", "icon-80.png"];

/**
 * Every file of the add-in beside the page and its bundle: metadata, help pages, manifests, icons.
 * @param {{ origin?: string, trial: boolean }} options https address under which the files will be served, may end in a folder; whether this is a trial copy
 * @returns {Promise<{ path: string, content: string | Buffer }[]>} paths relative to the folder of the build
 */
export async function loadAssets({ origin, trial }) {
  const { buildAssets } = await loadDocs();
  const text = (path) => readFileSync(join(top, path), "utf8");
  const made = buildAssets({
    origin,
    trial,
    version: JSON.parse(text("package.json")).version,
    manifestTemplate: text("manifest/manifest.template.xml"),
    css: text("src/publish/help/pages.css"),
    searchScript: text("src/publish/help/search.js"),
  });
  return [
    ...made,
    ...ICONS.map((name) => ({ path: `icons/${name}`, content: readFileSync(join(top, "manifest/icons", name)) })),
  ];
}
