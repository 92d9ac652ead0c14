// `npm run steady -- browser 20` or `-- all 5`: the browser tests, or all tests from fresh clones, again and again while two more processes keep the cores
// busy (a third argument says how many: 0 where other work is the load; the load average of 15 minutes is printed with each run). It runs on by itself and keeps a log of each run in .cache/steady; no retries.
import { spawn, spawnSync } from "node:child_process";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { loadavg } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const top = fileURLToPath(new URL("..", import.meta.url));
const [what = "browser", times = "20", others = "2"] = process.argv.slice(2);
const logs = join(top, ".cache/steady");
mkdirSync(logs, { recursive: true });

/** Keeps a core busy until it is ended. */
const busy = () => spawn(process.execPath, ["-e", "for (;;) Math.random()"], { stdio: "ignore" });

function runOnce() {
  if (what === "browser")
    return spawnSync(
      "npx",
      ["--no-install", "vitest", "run", "--config", "tests/browser/vitest.config.ts"],
      options(top),
    );
  const clone = join(logs, "clone");
  rmSync(clone, { recursive: true, force: true });
  spawnSync("git", ["clone", "-q", top, clone]);
  return spawnSync("npm", ["test"], options(clone));
}

function options(cwd) {
  return { cwd, encoding: "utf8", maxBuffer: 64 * 1024 * 1024 };
}

const load = Array.from({ length: Number(others) }, busy);
const { stdout: commit } = spawnSync("git", ["rev-parse", "--short", "HEAD"], options(top));
console.log(`${what} tests of ${commit.trim()}, ${others} more processes on the cores`);
process.on("exit", () => {
  for (const child of load) child.kill();
});
let green = 0;
for (let i = 1; i <= Number(times); i++) {
  const started = Date.now();
  const { status, stdout, stderr } = runOnce();
  if (status === 0) green++;
  writeFileSync(join(logs, `${what}-${i}.log`), `${stdout}\n${stderr}`);
  console.log(
    `${what} ${i}: ${status === 0 ? "green" : "RED"} in ${Math.round((Date.now() - started) / 1000)} s, load ${loadavg()[2]?.toFixed(1)} (${green} of ${i} green)`,
  );
}
process.exit(green === Number(times) ? 0 : 1);
