import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { registry } from "../../src/functions/registry.ts";
import { withFunctionTable } from "../../src/publish/readme.ts";

const top = fileURLToPath(new URL("../..", import.meta.url));
const readme = readFileSync(`${top}README.md`, "utf8");

test("the README's table of functions is what `npm run readme` writes", () => {
  expect(withFunctionTable(readme, registry)).toBe(readme);
});

test("every file that the README shows or links is there", () => {
  for (const [, target] of readme.matchAll(/\]\(([^)#:]+)\)/g))
    expect(existsSync(`${top}${target}`), target).toBe(true);
});
