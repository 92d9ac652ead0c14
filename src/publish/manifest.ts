import { NAMESPACE } from "../functions/declare/cell-function.ts";
import { escaped } from "./help/html.ts";

export type Variant = "production" | "trial";

/** What differs between the manifests made from the template. */
export interface ManifestValues {
  /** two add-ins never share an id, so that a trial copy can stand beside the installed one */
  readonly id: string;
  readonly displayName: string;
  readonly version: string;
  readonly namespace: string;
  /** https address of the files, without a final slash */
  readonly base: string;
  readonly origin: string;
}

const IDENTITY: Readonly<Record<Variant, Pick<ManifestValues, "id" | "displayName" | "namespace">>> = {
  production: { id: "08a04e67-e541-4fd0-ba1f-168f88f4e446", displayName: "Sillwork", namespace: NAMESPACE },
  // The bundle of a trial copy has this namespace too: see webpack.config.js.
  trial: { id: "23a724dd-e536-452c-8994-3ccaa2fa372f", displayName: "Sillwork (trial)", namespace: `${NAMESPACE}TRY` },
};

/**
 * The values of a variant.
 * @param packageVersion three parts
 */
export function variant(which: Variant, base: string, packageVersion: string): ManifestValues {
  const url = new URL(base);
  if (url.protocol !== "https:") throw new Error(`The add-in's address must begin with https:// but is ${base}`);
  return {
    ...IDENTITY[which],
    version: manifestVersion(packageVersion),
    base: url.href.replace(/[?#].*$/, "").replace(/\/+$/, ""),
    origin: url.origin,
  };
}

/**
 * Four parts, and not below 1.0, which Office refuses: 0.1.0 becomes 1.0.1.0. A higher package version gives a higher one, which makes Excel read the
 * list of functions again.
 */
export function manifestVersion(packageVersion: string): string {
  const parts = /^(\d+)\.(\d+)\.(\d+)$/.exec(packageVersion);
  if (parts === null) throw new Error(`The package version must be three numbers but is ${packageVersion}`);
  return `1.${parts[1]}.${parts[2]}.${parts[3]}`;
}

/** Puts the values into the template's {{placeholders}}. */
export function filledManifest(template: string, values: ManifestValues): string {
  return template.replace(/\{\{(\w+)\}\}/g, (placeholder, name: string) => {
    if (!Object.hasOwn(values, name))
      throw new Error(`The manifest template has an unknown placeholder ${placeholder}`);
    return escaped(values[name as keyof ManifestValues]);
  });
}
