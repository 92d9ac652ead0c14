import { registry } from "../functions/registry.ts";
import type { Asset } from "./help/asset.ts";
import { helpPages } from "./help/pages.ts";
import { filledManifest, variant } from "./manifest.ts";
import { excelMetadata } from "./metadata.ts";

export interface AssetOptions {
  /** https address under which an office will serve the files; may end in a folder. Without it no manifest is made. */
  readonly origin: string | undefined;
  /** a copy to try out beside the installed add-in, with an id, a name and a namespace of its own */
  readonly trial: boolean;
  /** version of the package: three parts */
  readonly version: string;
  /** text of manifest/manifest.template.xml */
  readonly manifestTemplate: string;
  /** text of src/publish/help/pages.css */
  readonly css: string;
  /** text of src/publish/help/search.js */
  readonly searchScript: string;
}

/** Stands in the help links of a build that does not know its address, and that Excel cannot load for want of a manifest. */
const UNKNOWN = "https://localhost:3000";

/** Everything of the add-in that is made from the declarations, apart from the bundle: metadata, help pages, manifest. */
export function buildAssets(o: AssetOptions): Asset[] {
  const values = o.origin === undefined ? undefined : variant(o.trial ? "trial" : "production", o.origin, o.version);
  return [
    {
      path: "functions.json",
      content: `${JSON.stringify(excelMetadata(registry, values?.base ?? UNKNOWN), null, 2)}\n`,
    },
    ...helpPages(registry, o.version),
    { path: "help/pages.css", content: o.css },
    { path: "help/search.js", content: o.searchScript },
    ...(values === undefined ? [] : [{ path: "manifest.xml", content: filledManifest(o.manifestTemplate, values) }]),
  ];
}
