import { existsSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { top, webpack } from "./launch.ts";

/** The try-out sheet, built once for all files of tests, and again only when a source is newer. */
export default function setup(): void {
  // A file that a build leaves as it was keeps its date, so the build has a file of its own to tell when it was.
  const stamp = `${top}.cache/tryout-built`;
  const made = existsSync(stamp) && existsSync(`${top}.cache/tryout/index.html`) ? statSync(stamp).mtimeMs : 0;
  const sources = ["src", "webpack.config.js", "package-lock.json"].map((path) => newest(join(top, path)));
  if (Math.max(...sources) <= made) return;
  webpack("--env", "tryout");
  writeFileSync(stamp, "");
}

function newest(path: string): number {
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  return Math.max(mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
}
