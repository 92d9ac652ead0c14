// `npm run build`: the add-in as static files in dist/.
import { spawnSync } from "node:child_process";
import { installDependencies, top } from "./prepare.mjs";

installDependencies();
const done = spawnSync("npx", ["--no-install", "webpack", "--mode", "production", ...process.argv.slice(2)], {
  cwd: top,
  stdio: "inherit",
  shell: process.platform === "win32",
});
process.exit(done.status ?? 1);
