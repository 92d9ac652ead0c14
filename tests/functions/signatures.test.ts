import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { registry } from "../../src/functions/registry.ts";
import { signatureText } from "../../src/publish/signature.ts";

const folder = new URL("signatures/", import.meta.url);
const present = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")).version as string;

/** A version as a number that sorts as versions do. */
function order(version: string): number {
  expect(version).toMatch(/^\d+\.\d+\.\d+$/);
  const [major = 0, minor = 0, patch = 0] = version.split(".").map(Number);
  return (major * 1000 + minor) * 1000 + patch;
}

describe.each(registry.map((fn) => [fn.name, fn] as const))("%s", (name, fn) => {
  test("its signature is the one on file; where the change is meant, `npm run readme` writes it", () => {
    const file = new URL(`${name}.txt`, folder);
    expect(existsSync(file) ? readFileSync(file, "utf8") : "").toBe(signatureText(fn));
  });

  test("came and changed in versions that there are, in their order", () => {
    const versions = [fn.since, ...fn.changed.map((change) => change.since), present].map(order);
    expect(versions).toEqual([...versions].sort((a, b) => a - b));
  });
});

test("no signature is left of a function that is gone", () => {
  const known = new Set(registry.map((fn) => `${fn.name}.txt`));
  expect(readdirSync(folder).filter((file) => !known.has(file))).toEqual([]);
});
