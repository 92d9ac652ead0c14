import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";

const top = fileURLToPath(new URL("../..", import.meta.url));
const copy = join(top, ".cache/first-function");
const page = readFileSync(join(top, "DEVELOPERS.md"), "utf8");

/** The blocks of the page: a command to run, or a file to write. */
const BLOCKS = [...page.matchAll(/^ {3}```(\w+) (run|file=(\S+))\n([\s\S]*?)^ {3}```$/gm)].map(
  ([, , , file, text = ""]) => ({
    file,
    text: text.replace(/^ {3}/gm, ""),
  }),
);

afterAll(() => rmSync(copy, { recursive: true, force: true }));

/** A copy of the project that a test may write into. */
function copied(): void {
  rmSync(copy, { recursive: true, force: true });
  for (const path of [
    "src",
    "tests",
    ".ci",
    "package.json",
    "package-lock.json",
    "README.md",
    "tsconfig.json",
    ".biome.json",
  ]) {
    cpSync(join(top, path), join(copy, path), {
      recursive: true,
      filter: (from) => !from.includes("tests/bench/") || from.endsWith("FIGURES.md"),
    });
  }
}

test("what npm run new writes for a family, a picture and a template compiles", { timeout: 300_000 }, () => {
  copied();
  for (const args of [
    ["family", "roofing"],
    ["picture", "roof-plan", "--family", "wind"],
    ["template", "roof-takeoff"],
  ]) {
    execFileSync(process.execPath, ["src/publish/new/command.mjs", ...args], { cwd: copy });
  }
  const types = spawnSync("npx", ["--no-install", "tsc", "-p", "."], { cwd: copy, encoding: "utf8" });
  expect(types.stdout.split("\n").filter((line) => !line.includes("tests/bench"))).toEqual([""]);
});

test("the page's first function is green when its blocks are followed", { timeout: 300_000 }, () => {
  copied();
  expect(BLOCKS.length).toBe(6);
  for (const { file, text } of BLOCKS) {
    if (file === undefined) {
      const [, args = ""] = /^npm run new -- (.*)$/m.exec(text) ?? [];
      execFileSync(process.execPath, ["src/publish/new/command.mjs", ...args.trim().split(" ")], { cwd: copy });
    } else {
      mkdirSync(dirname(join(copy, file)), { recursive: true });
      writeFileSync(join(copy, file), text);
    }
  }
  // The dependencies are those of the project itself: the copy need not install them.
  mkdirSync(join(copy, "node_modules"));
  writeFileSync(join(copy, "node_modules/.package-lock.json"), "{}");
  execFileSync(process.execPath, ["src/publish/readme.mjs"], { cwd: copy });
  const unit = spawnSync(
    "npx",
    [
      "--no-install",
      "vitest",
      "run",
      "--config",
      "tests/vitest.config.ts",
      "-t",
      "GABLE_AREA",
      "tests/core/units",
      "tests/published/units",
      "tests/functions",
      "tests/complete",
    ],
    { cwd: copy, encoding: "utf8" },
  );
  expect(unit.status, unit.stdout).toBe(0);
  expect(unit.stdout).toMatch(/Tests .*\d+ passed/);
});
