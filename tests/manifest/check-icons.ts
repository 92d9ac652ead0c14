import { all, defaultOf, resourceLists } from "./parts.ts";
import type { Element } from "./xml.ts";

/** Where the checker finds the files that a manifest points at. */
export interface ManifestFiles {
  /** content of a file below the manifest's address, or undefined */
  read(path: string): Uint8Array | undefined;
}

/** Every icon is there, a PNG of the size that is said. */
export function checkIcons(app: Element, files: ManifestFiles): string[] {
  const faults: string[] = [];
  const base = (defaultOf(app, "IconUrl") ?? "").replace(/icons\/[^/]*$/, "");
  const check = (address: string | undefined, pixels: number): void => {
    const path = address?.startsWith(base) ? address.slice(base.length) : undefined;
    const size = path === undefined ? undefined : pngSize(files.read(path));
    if (size === undefined) faults.push(`There is no PNG at ${address}`);
    else if (size.width !== pixels || size.height !== pixels) {
      faults.push(`${path} is ${size.width} x ${size.height}, not ${pixels} x ${pixels} pixels`);
    }
  };
  check(defaultOf(app, "IconUrl"), 32);
  check(defaultOf(app, "HighResolutionIconUrl"), 64);
  const images = resourceLists(app).find(({ name }) => name === "bt:Images")?.children ?? [];
  for (const icon of all(app).filter(({ name }) => name === "Icon")) {
    const sizes = icon.children.map(({ attributes }) => Number(attributes.size));
    for (const size of [16, 32, 80]) if (!sizes.includes(size)) faults.push(`An icon lacks the size ${size}`);
    for (const { attributes } of icon.children) {
      const image = images.find((candidate) => candidate.attributes.id === attributes.resid);
      if (image !== undefined) check(image.attributes.DefaultValue, Number(attributes.size));
    }
  }
  return [...new Set(faults)];
}

/** Width and height stand in a PNG's first chunk, after the signature. */
function pngSize(file: Uint8Array | undefined): { width: number; height: number } | undefined {
  if (file === undefined || file.length < 24) return undefined;
  const view = new DataView(file.buffer, file.byteOffset);
  if (view.getUint32(0) !== 0x89504e47 || view.getUint32(4) !== 0x0d0a1a0a) return undefined;
  return { width: view.getUint32(16), height: view.getUint32(20) };
}
