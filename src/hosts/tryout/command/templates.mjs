// `npm run -s templates`: every template and the demo with its cells, formulas and values as JSON; `-- --save FOLDER` writes them as .xlsx.
import { runBundled } from "./bundled.mjs";

await runBundled("templates");
