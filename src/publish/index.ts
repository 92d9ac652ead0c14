/** What the build and the command line take from here; see load.mjs. */

export { describe } from "../functions/declare/describe.ts";
export { find } from "../functions/find/find.ts";
export { registry } from "../functions/registry.ts";
export { buildAssets } from "./assets.ts";
export { withFigures } from "./figures.ts";
export { manifestVersion } from "./manifest.ts";
export { withFunctionTable } from "./readme.ts";
export { raised, refusal } from "./release.ts";
export { countRows, withRowCounts } from "./rows.ts";
export { signatureText } from "./signature.ts";
