// The whole test command: set-up, lint, types, unit and published checks, the build, the browser.
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { browserPath, installDependencies, officePath, top } from "./prepare.mjs";

installDependencies();
const office = officePath();
const env = { ...process.env, CHROMIUM: await browserPath(), SOFFICE: office ?? "" };
const results = `${top}.cache/results`;
rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

const steps = [
  ["lint and format", ["biome", "check", "--error-on-warnings", "."]],
  ["types, core", ["tsc", "-p", "src/core"]],
  ["types", ["tsc", "-p", "."]],
  ["unit, property and published checks", vitest("tests/vitest.config.ts", "unit")],
  ...(office === undefined ? [] : [["files in an office suite", vitest("tests/office/vitest.config.ts", "office")]]),
  ["build", ["webpack", "--mode", "production"]],
  ["browser", vitest("tests/browser/vitest.config.ts", "browser")],
];

function vitest(config, name) {
  return [
    ...["vitest", "run", "--config", config, "--reporter=default", "--reporter=json"],
    `--outputFile.json=${results}/${name}.json`,
  ];
}

let broken = 0;
for (const [name, command] of steps) {
  console.log(`\n== ${name}: ${command[0]}`);
  const started = Date.now();
  const done = spawnSync("npx", ["--no-install", ...command], {
    cwd: top,
    env,
    stdio: ["ignore", "inherit", "inherit"],
    shell: process.platform === "win32",
  });
  console.log(`== ${name}: ${done.status === 0 ? "ok" : "FAILED"} in ${((Date.now() - started) / 1000).toFixed(1)} s`);
  if (done.status !== 0) broken++;
}

let passed = 0;
let failed = 0;
for (const name of office === undefined ? ["unit", "browser"] : ["unit", "office", "browser"]) {
  try {
    const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(`${results}/${name}.json`, "utf8"));
    passed += numPassedTests;
    failed += numFailedTests;
  } catch {
    failed++;
  }
}
if (office === undefined) {
  console.log(
    "\nNOT RUN: the files in an office suite, since there is none on this machine and none could be installed",
  );
}
console.log(`\n${passed} passed, ${Math.max(failed, broken)} failed`);
process.exit(broken === 0 && failed === 0 ? 0 : 1);
