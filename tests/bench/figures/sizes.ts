import { existsSync, readdirSync, readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { type Line, line } from "./line.ts";

/** Sizes of the last build, as they travel. */
export function sizes(): Line[] {
  if (!existsSync("dist/functions.js")) return [line("Sizes of the add-in", "no build: npm run build first")];
  const gz = (name: string) => gzipSync(readFileSync(`dist/${name}`)).length / 1000;
  const scripts = readdirSync("dist").filter((name) => name.endsWith(".js"));
  const first = gz("functions.js");
  const page = readFileSync("dist/taskpane.html", "utf8");
  const asked = scripts.filter((name) => new RegExp(`src="?${name.replaceAll(".", "\\.")}`).test(page));
  const loaded = asked.reduce((sum, name) => sum + gz(name), 0);
  return [
    line("Script that registers every function, gzip", `${first.toFixed(0)} kB`, "90 kB", first <= 90),
    line(
      "Pane and the names of the functions at the first load, families later, gzip",
      `${loaded.toFixed(0)} kB in ${asked.length} files`,
      "150 kB",
      asked.length > 0 && loaded <= 150,
    ),
    line(
      "All scripts, families and tables that come later too, gzip",
      `${scripts.reduce((sum, name) => sum + gz(name), 0).toFixed(0)} kB`,
    ),
  ];
}
