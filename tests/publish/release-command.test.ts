import { execFileSync, spawnSync } from "node:child_process";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { copyOf, top, withDependencies } from "./copy.ts";

const copy = join(top, ".cache/release-command");
afterAll(() => rmSync(copy, { recursive: true, force: true }));

const git = (...args: string[]) =>
  execFileSync("git", ["-c", "user.name=tests", "-c", "user.email=tests@example.com", ...args], { cwd: copy });

function commit(): void {
  git("add", "--all");
  git("commit", "--quiet", "--no-verify", "--message", "as it is");
}

function release(...args: string[]): { readonly status: number | null; readonly says: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, ["src/publish/release.mjs", ...args], {
    cwd: copy,
    encoding: "utf8",
  });
  return { status, says: `${stdout}${stderr}` };
}

test("the release command refuses before it changes anything", { timeout: 120_000 }, () => {
  copyOf("release-command");
  writeFileSync(join(copy, ".gitignore"), "node_modules/\n.cache/\n");
  git("init", "--quiet");
  commit();
  withDependencies(copy);
  const before = readFileSync(join(copy, "package.json"), "utf8");
  const refused = (args: readonly string[], says: string) => {
    const found = release(...args);
    expect(found.says).toContain(says);
    expect(found.status).toBe(1);
    expect(readFileSync(join(copy, "package.json"), "utf8")).toBe(before);
  };
  const origin = ["--origin", "https://tools.example.com/sillwork"];

  refused([], "Usage: npm run release");
  refused(["minor"], "Usage: npm run release");
  refused(["newest", ...origin], "three numbers");

  writeFileSync(
    join(copy, "src/publish/released.json"),
    JSON.stringify({ version: "0.1.0", signatures: { WIND_KZ: "another", GABLE_AREA: "gone" } }),
  );
  refused(["patch", ...origin], "not committed");
  commit();
  refused(["patch", ...origin], "gone GABLE_AREA; changed WIND_KZ; new");
  refused(["0.1.0", ...origin], "0.1.0 is not above 0.1.0");

  rmSync(join(copy, "tests/functions/signatures/WIND_KZ.txt"));
  commit();
  refused(["minor", ...origin], "npm run readme writes them");
});
