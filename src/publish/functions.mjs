// `npm run -s functions`: every declaration as JSON on stdout, nothing else; `-- --find "drywall"` gives the names that match, best first.
import { installDependencies } from "../../.ci/prepare.mjs";
import { loadDocs } from "./load.mjs";

installDependencies();
// A reader that has seen enough (head, a pager) closes the pipe: that is no fault.
process.stdout.on("error", (error) => process.exit(error.code === "EPIPE" ? 0 : 1));
const { describe, find, registry } = await loadDocs();
const at = process.argv.indexOf("--find");
const shown = at < 0 ? registry.map(describe) : find(registry, process.argv[at + 1] ?? "").map((fn) => fn.name);
process.stdout.write(`${JSON.stringify(shown, null, 2)}\n`);
