// `npm run -s workbooks -- FOLDER`: opens an office's .xlsx files, calculates them again and says what is wrong or differs.
import { runBundled } from "./bundled.mjs";

await runBundled("workbooks");
