import { registry } from "../functions/registry.ts";
import { filledManifest, type Variant, variant } from "./manifest.ts";
import { excelMetadata } from "./metadata.ts";
import { helpPages } from "./pages.ts";

/** A file of the built add-in; the path is relative to its folder. */
export interface Asset {
  readonly path: string;
  readonly content: string;
}

export interface AssetOptions {
  /** https address under which an office will serve the files, without a final slash */
  readonly base: string;
  /** https address of the development server; its manifest is written beside the other */
  readonly localBase: string;
  /** version of the package: three parts */
  readonly version: string;
  /** text of manifest/manifest.template.xml */
  readonly manifestTemplate: string;
  /** text of src/docs/pages.css */
  readonly css: string;
}

/** Office's own script; it has to come from this address in production. */
export const OFFICE_SCRIPT = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

/** The manifest's format asks for a script of the functions; in a shared runtime Excel takes them from the page. */
const SCRIPT = "// The functions come with taskpane.html, which Excel loads for functions, pane and ribbon alike.\n";

/** Everything of the add-in that is made from the declarations, apart from the bundle: metadata, help pages, manifests. */
export function buildAssets(o: AssetOptions): Asset[] {
  const manifest = (which: Variant, base: string): string =>
    filledManifest(o.manifestTemplate, variant(which, base, o.version));
  return [
    { path: "functions.js", content: SCRIPT },
    {
      path: "functions.json",
      content: `${JSON.stringify(excelMetadata(registry, variant("production", o.base, o.version).base), null, 2)}\n`,
    },
    ...helpPages(registry, o.version),
    { path: "help/pages.css", content: o.css },
    { path: "manifest.xml", content: manifest("production", o.base) },
    { path: "manifest.local.xml", content: manifest("local", o.localBase) },
  ];
}

/**
 * The policy of the pane's page. Scripts come from the add-in's own files and from Office's address only; nothing is sent anywhere.
 * Styles: Excel on the web writes style attributes and elements into the page, so inline styles are let through; text never becomes markup in the pane.
 * Who may frame the page (Excel on the web does) can only be said in a header of the server, not here.
 * @param officeScript address of office.js; a relative one is a copy beside the page, for tests
 */
export function contentSecurityPolicy(officeScript: string): string {
  const office = /^https:\/\/[^/]+/.exec(officeScript)?.[0] ?? "";
  return [
    "default-src 'none'",
    `script-src 'self' ${office}`.trim(),
    "style-src 'self' 'unsafe-inline'",
    // data: for the arrows and ticks that a style sheet may hold
    "img-src 'self' data:",
    "font-src 'self'",
    // office.js reads its tables of hosts and texts from where it came from
    `connect-src 'self' ${office}`.trim(),
    "worker-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}
