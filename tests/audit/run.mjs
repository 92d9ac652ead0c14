// `npm run audit`: runs the published checks, notes how far each answer lies from its row, writes the table of the help pages and prints what each function stands on.
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { installDependencies, top } from "../../.ci/prepare.mjs";

installDependencies();
rmSync(`${top}.cache/audit`, { recursive: true, force: true });
mkdirSync(`${top}.cache/audit`, { recursive: true });
for (const AUDIT of ["rows", "report"]) {
  const done = spawnSync("npx", ["--no-install", "vitest", "run", "--config", "tests/audit/vitest.config.ts"], {
    cwd: top,
    env: { ...process.env, AUDIT },
    stdio: ["ignore", "ignore", "inherit"],
    shell: process.platform === "win32",
  });
  if (done.status !== 0) {
    console.error(`The ${AUDIT} of the audit failed: npm run unit -- tests/published says which.`);
    process.exit(1);
  }
}
spawnSync("npx", ["--no-install", "biome", "format", "--write", "src/publish/help/how-close.json", "tests/audit"], {
  cwd: top,
  stdio: "ignore",
  shell: process.platform === "win32",
});
process.stdout.write(readFileSync(`${top}.cache/audit.md`, "utf8"));
