import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { raised, refusal, signatureChanges } from "../../src/publish/release.ts";

const last = { version: "0.4.1", signatures: { BEAD: "a", CUT: "b" } };

describe("the next version", () => {
  test.each([
    ["patch", "0.4.2"],
    ["minor", "0.5.0"],
    ["major", "1.0.0"],
    ["0.7.3", "0.7.3"],
  ])("%s of 0.4.1 is %s", (asked, version) => expect(raised("0.4.1", asked)).toBe(version));

  test.each(["", "1.2", "v1.2.3", "1.2.3-beta", "newest"])("%j is none", (asked) => {
    expect(() => raised("0.4.1", asked)).toThrow(/three numbers/);
  });
});

describe("a release", () => {
  test("goes out where no signature changed, by any raise", () => {
    for (const version of ["0.4.2", "0.5.0", "1.0.0"]) expect(refusal(last, last.signatures, version)).toBeUndefined();
  });

  test("is refused where the version is not raised", () => {
    for (const version of ["0.4.1", "0.4.0", "0.3.9"]) {
      expect(refusal(last, last.signatures, version)).toContain(`${version} is not above 0.4.1`);
    }
  });

  test.each([
    ["changed", { BEAD: "x", CUT: "b" }, "changed BEAD"],
    ["new", { BEAD: "a", CUT: "b", DEW: "c" }, "new DEW"],
    ["gone", { BEAD: "a" }, "gone CUT"],
  ])("of a function that is %s is refused as a patch and taken as minor", (_, now, names) => {
    expect(refusal(last, now, "0.4.2")).toContain(names);
    expect(refusal(last, now, "0.4.2")).toContain("npm run release -- minor");
    expect(refusal(last, now, "0.5.0")).toBeUndefined();
  });

  test("from 1.0.0 on a function that is gone asks for a major version", () => {
    const one = { ...last, version: "1.4.1" };
    expect(refusal(one, { BEAD: "a" }, "1.5.0")).toContain("npm run release -- major");
    expect(refusal(one, { BEAD: "a" }, "2.0.0")).toBeUndefined();
    expect(refusal(one, { BEAD: "x", CUT: "b" }, "1.5.0")).toBeUndefined();
  });
});

test("changes are told apart", () => {
  expect(signatureChanges({ A: "1", B: "1", C: "1" }, { A: "1", B: "2", D: "1" })).toEqual({
    gone: ["C"],
    changed: ["B"],
    added: ["D"],
  });
});

test("the office tools of the command are pinned, and nothing of them is shipped", () => {
  const file = new URL("../../package.json", import.meta.url);
  const { devDependencies, dependencies } = JSON.parse(readFileSync(file, "utf8")) as Record<
    string,
    Record<string, string>
  >;
  for (const tool of ["office-addin-cli", "office-addin-manifest"]) {
    expect(devDependencies?.[tool]).toMatch(/^\d+\.\d+\.\d+$/);
    expect(dependencies?.[tool]).toBeUndefined();
  }
});
