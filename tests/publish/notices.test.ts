import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
// @ts-expect-error: a script of the build, which has no types
import { notices, packageFolder } from "../../src/publish/notices.mjs";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "sillwork-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function made(name: string, license: string, files: Readonly<Record<string, string>> = {}): string {
  const at = join(folder, name);
  mkdirSync(at, { recursive: true });
  writeFileSync(join(at, "package.json"), JSON.stringify({ name, version: "1.2.3", license, author: "A. Writer" }));
  for (const [file, text] of Object.entries(files)) writeFileSync(join(at, file), text);
  return at;
}

test("every package once, by name, with its license and notice", () => {
  const b = made("b", "Apache-2.0", { LICENSE: "Apache text", NOTICE: "made by b" });
  const text = notices([b, made("a", "MIT", { "license.md": "MIT text" }), b, made("c", "ISC")]);
  expect(text.match(/^\S+ 1\.2\.3 \(.*\)$/gm)).toEqual(["a 1.2.3 (MIT)", "b 1.2.3 (Apache-2.0)", "c 1.2.3 (ISC)"]);
  for (const part of ["MIT text", "Apache text", "made by b", "Copyright A. Writer"]) expect(text).toContain(part);
});

test.each(["GPL-3.0", "AGPL-3.0-only", "SEE LICENSE IN FILE"])("a package under %s stops the build", (license) => {
  expect(() => notices([made("odd", license)])).toThrow("odd 1.2.3");
});

test.each([
  ["/x/node_modules/lit-html/lib/a.js", "/x/node_modules/lit-html"],
  ["/x/node_modules/a/node_modules/@s/b/c.js", "/x/node_modules/a/node_modules/@s/b"],
  ["/x/src/a.ts", undefined],
])("%s belongs to %s", (file, wanted) => {
  expect(packageFolder(file)).toBe(wanted);
});
