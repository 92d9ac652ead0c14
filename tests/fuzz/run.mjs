// `npm run fuzz -- [NAME or family or all] [runs] [seed]`
import { runBundled } from "../run-bundled.mjs";

await runBundled(new URL("fuzz.ts", import.meta.url));
