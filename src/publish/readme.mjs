// `npm run readme`: writes the table of functions into the README.
import { readFileSync, writeFileSync } from "node:fs";
import { installDependencies, top } from "../../.ci/prepare.mjs";
import { loadDocs } from "./load.mjs";

installDependencies();
const { registry, withFunctionTable } = await loadDocs();
const file = `${top}README.md`;
writeFileSync(file, withFunctionTable(readFileSync(file, "utf8"), registry));
