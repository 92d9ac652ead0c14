// `npm run readme`: writes the table of functions and the figures of the published rows into the README, and the signature of each function into its file.
import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { installDependencies, top } from "../../.ci/prepare.mjs";
import { loadDocs } from "./load.mjs";

installDependencies();
const { countRows, registry, signatureText, withFunctionTable, withRowCounts } = await loadDocs();
const file = `${top}README.md`;
const rows = readdirSync(`${top}tests/published`)
  .filter((name) => name.endsWith(".csv"))
  .map((name) => readFileSync(`${top}tests/published/${name}`, "utf8"));
writeFileSync(file, withRowCounts(withFunctionTable(readFileSync(file, "utf8"), registry), countRows(rows)));

const signatures = `${top}tests/functions/signatures/`;
for (const name of readdirSync(signatures)) {
  if (!registry.some((fn) => name === `${fn.name}.txt`)) rmSync(`${signatures}${name}`);
}
for (const fn of registry) writeFileSync(`${signatures}${fn.name}.txt`, signatureText(fn));
