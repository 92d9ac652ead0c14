// Set-up on a fresh machine: dependencies from the lock file, and a browser for the browser tests.
import { spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";

export const top = fileURLToPath(new URL("..", import.meta.url));

/** Runs a command with its output on stderr, so that a caller's stdout stays its own. */
function run(command, args) {
  const done = spawnSync(command, args, { cwd: top, stdio: ["ignore", 2, 2], shell: process.platform === "win32" });
  return done.status === 0;
}

/** `npm ci` when the dependencies are missing or older than the lock file. */
export function installDependencies() {
  const installed = `${top}node_modules/.package-lock.json`;
  const lock = `${top}package-lock.json`;
  if (existsSync(installed) && statSync(installed).mtimeMs >= statSync(lock).mtimeMs) return;
  console.error("Installing the dependencies of the lock file (npm ci) ...");
  if (!run("npm", ["ci", "--no-audit", "--no-fund"])) throw new Error("npm ci failed: see the lines above");
}

const PLACES = [
  process.env.CHROMIUM,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  `${process.env.ProgramFiles}\\Google\\Chrome\\Application\\chrome.exe`,
];

/** Path of a Chromium, installed where there is none: by the system's packages as root on Debian, else by playwright. */
export async function browserPath() {
  const found = () => PLACES.find((place) => place !== undefined && existsSync(place));
  if (found() !== undefined) return found();
  console.error("No Chromium found: installing one for the browser tests ...");
  if (process.getuid?.() === 0 && existsSync("/usr/bin/apt-get")) {
    run("apt-get", ["update"]);
    run("apt-get", ["install", "-y", "--no-install-recommends", "chromium", "fonts-liberation"]);
    if (found() !== undefined) return found();
  }
  const { chromium } = await import("playwright-core");
  if (!existsSync(chromium.executablePath())) run("npx", ["playwright-core", "install", "chromium"]);
  if (existsSync(chromium.executablePath())) return chromium.executablePath();
  throw new Error("No browser could be installed: set CHROMIUM to the path of a Chromium or Chrome");
}

/** Path of an office suite that opens workbooks without a screen, installed where the system's packages can be; undefined where there is none. */
export function officePath() {
  const places = [process.env.SOFFICE, "/usr/bin/soffice", "/Applications/LibreOffice.app/Contents/MacOS/soffice"];
  const found = () => places.find((place) => place !== undefined && existsSync(place));
  if (found() === undefined && process.getuid?.() === 0 && existsSync("/usr/bin/apt-get")) {
    console.error("No office suite found: installing one for the checks of written files ...");
    run("apt-get", ["update"]);
    run("apt-get", ["install", "-y", "--no-install-recommends", "libreoffice-calc-nogui"]);
  }
  return found();
}
