// `npm run release -- minor --origin https://tools.example.com/sillwork`: raises the version, builds what an office uploads into dist/ and notes the signatures
// that went out. Refuses a changed signature without a raised version, a working copy that is not committed, and a manifest that does not say the new version.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, utimesSync, writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { getPackageJsonScript, logErrorMessage } from "office-addin-cli";
import { OfficeAddinManifest } from "office-addin-manifest";
import { installDependencies, top } from "../../.ci/prepare.mjs";
import { loadDocs } from "./load.mjs";

const USAGE = "Usage: npm run release -- patch|minor|major|1.4.0 --origin https://tools.example.com/sillwork";
const RELEASED = `${top}src/publish/released.json`;
const PACKAGES = ["package.json", "package-lock.json"].map((name) => `${top}${name}`);

installDependencies();
const before = PACKAGES.map((file) => readFileSync(file, "utf8"));
let raisedTo;
try {
  await release();
} catch (error) {
  // A release that failed leaves the version as it was.
  if (raisedTo !== undefined) write((text) => text);
  logErrorMessage(error);
  process.exitCode = 1;
}

async function release() {
  const { values, positionals } = parseArgs({ options: { origin: { type: "string" } }, allowPositionals: true });
  const [asked] = positionals;
  if (asked === undefined || positionals.length > 1 || values.origin === undefined) throw new Error(USAGE);
  const { manifestVersion, raised, refusal, registry, signatureText } = await loadDocs();
  const dirty = spawnSync("git", ["status", "--porcelain"], { cwd: top, encoding: "utf8" }).stdout?.trim();
  if (dirty !== "") throw new Error("There are changes that are not committed: a release is what is committed.");

  const signatures = Object.fromEntries(registry.map((fn) => [fn.name, hashOf(signatureText(fn))]));
  const onFile = readdirSync(`${top}tests/functions/signatures`).map((name) => name.replace(/\.txt$/, ""));
  const missing = registry.filter(({ name }) => !onFile.includes(name));
  if (missing.length > 0) throw new Error("Signature files are missing: npm run readme writes them.");
  const last = JSON.parse(readFileSync(RELEASED, "utf8"));
  const version = raised(last.version, asked);
  const why = refusal(last, signatures, version);
  if (why !== undefined) throw new Error(why);

  raisedTo = version;
  write((text) => withVersion(text, version));
  if ((await getPackageJsonScript("build")) === undefined) throw new Error("package.json has no script named build.");
  const build = spawnSync("npm", ["run", "build", "--", "--env", `origin=${values.origin}`], {
    cwd: top,
    stdio: "inherit",
    shell: process.platform === "win32",
  });
  if (build.status !== 0) throw new Error("The build failed: see the lines above.");
  const manifest = await OfficeAddinManifest.readManifestFile(`${top}dist/manifest.xml`);
  if (manifest.version !== manifestVersion(version)) {
    throw new Error(`dist/manifest.xml says ${manifest.version}, not ${manifestVersion(version)}.`);
  }
  writeFileSync(RELEASED, `${JSON.stringify({ version, signatures }, null, 2)}\n`);
  console.log(`
dist/ holds ${manifest.displayName} ${version} (manifest ${manifest.version}).
Next: npm test, then commit package.json, package-lock.json and src/publish/released.json, tag v${version}, and upload dist/ as DEVELOPERS.md says.`);
}

/** @param {(text: string) => string} change */
function write(change) {
  for (const [i, file] of PACKAGES.entries()) writeFileSync(file, change(before[i]));
  // Only the version differs: nothing is to be installed anew for it.
  utimesSync(`${top}node_modules/.package-lock.json`, new Date(), new Date());
}

function hashOf(text) {
  return createHash("sha256").update(text).digest("hex").slice(0, 16);
}

/** The first two version lines of a lock file and the first of a package file are the package's own. */
function withVersion(text, version) {
  const own = text.includes('"lockfileVersion"') ? 2 : 1;
  let seen = 0;
  return text.replace(/"version": "[^"]+"/g, (line) => (seen++ < own ? `"version": "${version}"` : line));
}
