// The texts of the licenses of what a build contains: the libraries' licenses ask that they go along with every copy.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import webpack from "webpack";

const FILE = "THIRD-PARTY-NOTICES.txt";
const LICENSE_FILE = /^(licen[sc]e|copying|notice)([.-].*)?$/i;
/** Licenses under which this project may contain code. */
const ALLOWED =
  /^\(?(0BSD|Apache-2\.0|BSD-2-Clause|BSD-3-Clause|BlueOak-1\.0\.0|CC0-1\.0|ISC|MIT|MPL-2\.0|Unlicense)\b/;

/** A package whose package file names no license, but whose sources do in their heads. */
const BY_SOURCES = { "@univerjs/telemetry": "Apache-2.0" };

/**
 * Folder of the package that a file belongs to.
 * @param {string} file
 * @returns {string | undefined}
 */
export function packageFolder(file) {
  return /^.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/.exec(file)?.[0];
}

/**
 * Name, version, license and its text of a package.
 * @param {string} folder
 */
function noticeOf(folder) {
  const { name, version, author, ...rest } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const license = rest.license ?? BY_SOURCES[name];
  if (typeof license !== "string" || !ALLOWED.test(license)) {
    throw new Error(`${name} ${version} is under ${license ?? "no license"}: it may not be part of a build`);
  }
  const texts = readdirSync(folder)
    .filter((file) => LICENSE_FILE.test(file))
    .map((file) => readFileSync(join(folder, file), "utf8").trim());
  const by = typeof author === "string" ? author : author?.name;
  return {
    name,
    version,
    license,
    text: texts.length > 0 ? texts.join("\n\n") : `Copyright ${by ?? `the authors of ${name}`}`,
  };
}

/**
 * The notices as one text, a package after the other by name.
 * @param {Iterable<string>} folders
 */
export function notices(folders) {
  const all = [...new Set(folders)].filter((folder) => existsSync(join(folder, "package.json"))).map(noticeOf);
  all.sort((a, b) => (a.name < b.name ? -1 : 1));
  const line = "-".repeat(78);
  const head = "Sillwork contains parts of the packages below, each under its own license.\n";
  return [head, ...all.map((p) => `${line}\n${p.name} ${p.version} (${p.license})\n${line}\n${p.text}\n`)].join("\n");
}

/** Writes the notices of every package that a module of the build comes from. */
export class Notices {
  apply(compiler) {
    compiler.hooks.compilation.tap("Notices", (compilation) => {
      if (compilation.compiler !== compiler) return;
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_SUMMARIZE;
      compilation.hooks.processAssets.tap({ name: "Notices", stage }, () => {
        const used = new Set();
        for (const module of compilation.modules) {
          for (const part of [module, ...(module.modules ?? [])]) {
            const folder = part.resource === undefined ? undefined : packageFolder(part.resource);
            if (folder !== undefined) used.add(folder);
          }
        }
        const content = notices(used);
        compilation.emitAsset(FILE, new webpack.sources.RawSource(content));
      });
    });
  }
}
