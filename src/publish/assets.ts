import { registry } from "../functions/registry.ts";
import { helpPages } from "./help/pages.ts";
import { filledManifest, variant } from "./manifest.ts";
import { excelMetadata } from "./metadata.ts";

/** Where `npm run sideload` serves the files. */
const LOCAL = "https://localhost:3000";

/** A file of the built add-in; the path is relative to its folder. */
export interface Asset {
  readonly path: string;
  readonly content: string;
}

export interface AssetOptions {
  /** https address under which an office will serve the files; may end in a folder */
  readonly origin: string;
  /** version of the package: three parts */
  readonly version: string;
  /** text of manifest/manifest.template.xml */
  readonly manifestTemplate: string;
  /** text of src/publish/help/pages.css */
  readonly css: string;
}

/** The manifest's format asks for a script of the functions; in a shared runtime Excel takes them from the page. */
const SCRIPT = "// The functions come with taskpane.html, which Excel loads for functions, pane and ribbon alike.\n";

/** Everything of the add-in that is made from the declarations, apart from the bundle: metadata, help pages, manifests. */
export function buildAssets(o: AssetOptions): Asset[] {
  const production = variant("production", o.origin, o.version);
  const local = variant("local", LOCAL, o.version);
  return [
    { path: "functions.js", content: SCRIPT },
    {
      path: "functions.json",
      content: `${JSON.stringify(excelMetadata(registry, production.base), null, 2)}\n`,
    },
    ...helpPages(registry, o.version),
    { path: "help/pages.css", content: o.css },
    { path: "manifest.xml", content: filledManifest(o.manifestTemplate, production) },
    { path: "manifest.local.xml", content: filledManifest(o.manifestTemplate, local) },
  ];
}
