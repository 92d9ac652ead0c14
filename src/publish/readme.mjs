// `npm run readme`: writes the table of functions and the figures of the published rows into the README.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { installDependencies, top } from "../../.ci/prepare.mjs";
import { loadDocs } from "./load.mjs";

installDependencies();
const { countRows, registry, withFunctionTable, withRowCounts } = await loadDocs();
const file = `${top}README.md`;
const rows = readdirSync(`${top}tests/published`)
  .filter((name) => name.endsWith(".csv"))
  .map((name) => readFileSync(`${top}tests/published/${name}`, "utf8"));
writeFileSync(file, withRowCounts(withFunctionTable(readFileSync(file, "utf8"), registry), countRows(rows)));
