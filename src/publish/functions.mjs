// `npm run -s functions`: every declaration as JSON on stdout, nothing else.
import { installDependencies } from "../../.ci/prepare.mjs";
import { loadDocs } from "./load.mjs";

installDependencies();
// A reader that has seen enough (head, a pager) closes the pipe: that is no fault.
process.stdout.on("error", (error) => process.exit(error.code === "EPIPE" ? 0 : 1));
const { describe, registry } = await loadDocs();
process.stdout.write(`${JSON.stringify(registry.map(describe), null, 2)}\n`);
