// `npm start`: installs what is missing, builds the try-out sheet and serves it on this machine only.
import { spawn, spawnSync } from "node:child_process";
import { installDependencies, top } from "./prepare.mjs";

installDependencies();
const opener = { darwin: "open", win32: "start" }[process.platform];
const screen = opener !== undefined || process.env.DISPLAY !== undefined || process.env.WAYLAND_DISPLAY !== undefined;
const canOpen = screen && (opener !== undefined || spawnSync("which", ["xdg-open"]).status === 0);
const args = ["--no-install", "webpack", "serve", "--mode", "production", "--env", "tryout"];
if (canOpen && process.env.CI === undefined) args.push("--open");
const server = spawn("npx", args, { cwd: top, stdio: "inherit", shell: process.platform === "win32" });
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => server.kill(signal));
server.on("exit", (code) => process.exit(code ?? 0));
