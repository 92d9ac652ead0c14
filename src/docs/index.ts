/** What the build and the command line take from here; see load.mjs. */
export { registry } from "../functions/registry.ts";
export { buildAssets } from "./assets.ts";
export { describe } from "./describe.ts";
export { withFunctionTable } from "./readme.ts";
