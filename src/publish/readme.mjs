// `npm run readme`: writes the table of functions, the figures of the published rows and those of the benchmarks into the README, and the signature of each function into its file.
import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { installDependencies, top } from "../../.ci/prepare.mjs";
import { loadDocs } from "./load.mjs";

installDependencies();
const { countRows, registry, signatureText, withFigures, withFunctionTable, withRowCounts } = await loadDocs();
const file = `${top}README.md`;
const rows = readdirSync(`${top}tests/published`)
  .filter((name) => name.endsWith(".csv"))
  .map((name) => readFileSync(`${top}tests/published/${name}`, "utf8"));
const figures = readFileSync(`${top}tests/bench/FIGURES.md`, "utf8");
const withTables = withFigures(withFunctionTable(readFileSync(file, "utf8"), registry), figures);
writeFileSync(file, withRowCounts(withTables, countRows(rows)));

const signatures = `${top}tests/functions/signatures/`;
for (const name of readdirSync(signatures)) {
  if (!registry.some((fn) => name === `${fn.name}.txt`)) rmSync(`${signatures}${name}`);
}
for (const fn of registry) writeFileSync(`${signatures}${fn.name}.txt`, signatureText(fn));
