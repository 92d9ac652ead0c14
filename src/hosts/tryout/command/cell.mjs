// `npm run -s cell -- '=FORMULA'`
import { runBundled } from "./bundled.mjs";

await runBundled("cell");
