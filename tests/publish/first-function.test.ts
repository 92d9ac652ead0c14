import { execFileSync, spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { copyOf, top, withDependencies } from "./copy.ts";

const page = readFileSync(join(top, "DEVELOPERS.md"), "utf8");

/** The blocks of the page: a command to run, or a file to write. */
const BLOCKS = [...page.matchAll(/^ {3}```(\w+) (run|file=(\S+))\n([\s\S]*?)^ {3}```$/gm)].map(
  ([, , , file, text = ""]) => ({
    file,
    text: text.replace(/^ {3}/gm, ""),
  }),
);

const copy = join(top, ".cache/first-function");
afterAll(() => rmSync(copy, { recursive: true, force: true }));

test("what npm run new writes for a family, a picture and a template compiles", { timeout: 300_000 }, () => {
  copyOf("first-function");
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
  copyOf("first-function");
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
  withDependencies(copy);
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
