import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Browser, chromium } from "playwright-core";

export const top = fileURLToPath(new URL("../..", import.meta.url));

/** Starts the machine's Chromium without any traffic of its own. */
export function launch(): Promise<Browser> {
  const executablePath = process.env.CHROMIUM ?? "/usr/bin/chromium";
  return chromium.launch({
    executablePath,
    args: [
      ...["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"],
      ...["--disable-component-update", "--disable-sync", "--font-render-hinting=none"],
    ],
  });
}

/** Builds through webpack; throws with its output when that fails. */
export function webpack(...args: string[]): void {
  const done = spawnSync("npx", ["--no-install", "webpack", "--mode", "production", ...args], {
    cwd: top,
    encoding: "utf8",
    shell: process.platform === "win32",
  });
  if (done.status !== 0) throw new Error(`webpack ${args.join(" ")} failed:\n${done.stdout}${done.stderr}`);
}

/** The built add-in; the test command builds it before, a single run here does so when it is missing. */
export function addIn(): string {
  const folder = `${top}dist`;
  if (!existsSync(`${folder}/taskpane.html`)) webpack();
  return folder;
}
