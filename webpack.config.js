import { execFile } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { gzipSync } from "node:zlib";
import { EsbuildPlugin } from "esbuild-loader";
import HtmlWebpackPlugin from "html-webpack-plugin";
import MiniCssExtractPlugin from "mini-css-extract-plugin";
import webpack from "webpack";
import { loadAssets } from "./src/publish/load.mjs";
import { Notices } from "./src/publish/notices.mjs";

const at = (path) => fileURLToPath(new URL(path, import.meta.url));

/** Office's own script, from Office's own address: the only script from outside, and only in the add-in. */
const OFFICE_SCRIPT = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

/** Where `npm run sideload` serves a trial copy. */
const LOCAL = "https://localhost:3000";
/** A trial copy may stand in one Excel beside the installed add-in, so its functions have another name in front. */
const TRIAL_NAMESPACE = "SILLTRY";

/** Gives the build what the registry makes: functions.json, help pages, the manifest. */
class RegistryAssets {
  /** @param {{ origin?: string, trial: boolean, helpOnly?: boolean }} options */
  constructor(options) {
    this.options = options;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap("RegistryAssets", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tapPromise({ name: "RegistryAssets", stage }, async () => {
        for (const { path, content } of await loadAssets(this.options)) {
          if (this.options.helpOnly && !path.startsWith("help/")) continue;
          compilation.emitAsset(path, new webpack.sources.RawSource(content));
        }
        if (this.options.origin === undefined && !this.options.helpOnly)
          compilation.warnings.push(new webpack.WebpackError(NO_ORIGIN));
      });
    });
  }
}

/** Puts every template as an .xlsx file beside the page, with its values: an office can hand them out, and the pane offers them. */
class TemplateFiles {
  apply(compiler) {
    compiler.hooks.thisCompilation.tap("TemplateFiles", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tapPromise({ name: "TemplateFiles", stage }, async () => {
        const folder = mkdtempSync(join(tmpdir(), "sillwork-"));
        const command = at("src/hosts/tryout/command/templates.mjs");
        await promisify(execFile)(process.execPath, [command, "--save", folder]);
        for (const name of readdirSync(folder).filter((file) => !file.endsWith("(values only).xlsx")))
          compilation.emitAsset(`templates/${name}`, new webpack.sources.RawSource(readFileSync(join(folder, name))));
        rmSync(folder, { recursive: true });
      });
    });
  }
}

/** Most that may be loaded, in bytes as they travel: before Excel knows every function, and until the pane stands too. */
const WITHIN = { functions: 90_000, taskpane: 150_000 };

/** Holds what is loaded first to its budgets. */
class Budget {
  apply(compiler) {
    compiler.hooks.afterEmit.tap("Budget", (compilation) => {
      for (const [entry, within] of Object.entries(WITHIN)) {
        const size = loadedFor(compilation, entry);
        if (size > within) {
          compilation.errors.push(
            new webpack.WebpackError(`What ${entry} loads first takes ${size} bytes, and ${within} are allowed`),
          );
        }
      }
    });
  }
}

/** The scripts of an entry, and of the one that it builds on. */
function loadedFor(compilation, entry) {
  const files = ["functions", entry].flatMap((name) => compilation.entrypoints.get(name).getFiles());
  const scripts = new Set(files.filter((file) => file.endsWith(".js")));
  return [...scripts].reduce((sum, file) => sum + gzipSync(readFileSync(at(`dist/${file}`))).length, 0);
}

const NO_ORIGIN =
  "manifest.xml was not written, since the build does not know where the files will be served: npm run build -- --env origin=https://tools.example.com/sillwork";

const { version } = JSON.parse(readFileSync(at("package.json"), "utf8"));
const withVersion = { SILLWORK_VERSION: JSON.stringify(version) };

const common = (mode) => ({
  mode,
  target: ["web", "es2022"],
  devtool: mode === "production" ? "source-map" : "cheap-module-source-map",
  resolve: { extensions: [".ts", ".js"] },
  module: {
    rules: [
      { test: /\.ts$/, loader: "esbuild-loader", options: { target: "es2022" } },
      { test: /\.css$/, use: [MiniCssExtractPlugin.loader, "css-loader"] },
      { test: /\.(svg|png)$/, type: "asset/resource" },
    ],
  },
  stats: "errors-warnings",
});

function addIn(mode, { origin, trial }, officeScript) {
  return {
    ...common(mode),
    name: "add-in",
    // The ids of the functions come first and alone: Excel calls them as soon as they are there, whatever the pane still has to load. A family follows at its first call.
    // The manifest names their file, so it has no hash in its name; the page asks for it with one behind a question mark.
    entry: {
      functions: { import: at("src/hosts/excel/functions-main.ts"), filename: "functions.js" },
      taskpane: { import: at("src/hosts/excel/main.ts"), dependOn: "functions" },
    },
    output: { path: at("dist"), filename: "[name].[contenthash:10].js", clean: true, publicPath: "" },
    plugins: [
      new HtmlWebpackPlugin({
        template: at("src/hosts/excel/taskpane.html"),
        filename: "taskpane.html",
        scriptLoading: "defer",
        hash: true,
        templateParameters: { officeScript, officeOrigin: new URL(officeScript, origin ?? LOCAL).origin },
      }),
      new MiniCssExtractPlugin({ filename: "[name].[contenthash:10].css" }),
      new RegistryAssets({ origin, trial }),
      // The formulas in them bear the name of the installed add-in.
      ...(trial ? [] : [new TemplateFiles()]),
      new Notices(),
      new Budget(),
      new webpack.DefinePlugin({
        ...withVersion,
        ...(trial ? { SILLWORK_NAMESPACE: JSON.stringify(TRIAL_NAMESPACE) } : {}),
      }),
    ],
    // What the pane and the calculations share stands in files of its own, so that nothing is loaded twice.
    optimization: { splitChunks: { chunks: "all", minSize: 10_000 } },
    performance: {
      hints: "error",
      maxEntrypointSize: 1_000_000,
      maxAssetSize: 850_000,
      assetFilter: (f) => f.endsWith(".js"),
    },
  };
}

function tryOut(mode) {
  return {
    ...common(mode),
    name: "try-out sheet",
    devtool: false,
    entry: { tryout: at("src/hosts/tryout/sheet/main.ts") },
    output: { path: at(".cache/tryout"), filename: "[name].[contenthash:10].js", clean: true, publicPath: "" },
    plugins: [
      new HtmlWebpackPlugin({
        template: at("src/hosts/tryout/sheet/tryout.html"),
        filename: "index.html",
        scriptLoading: "defer",
      }),
      new MiniCssExtractPlugin({ filename: "[name].[contenthash:10].css" }),
      new RegistryAssets({ trial: false, helpOnly: true }),
      new Notices(),
      new webpack.DefinePlugin(withVersion),
    ],
    // The usual minimizer would take a minute of every start.
    optimization: { minimizer: [new EsbuildPlugin({ target: "es2022", css: true })] },
    // The embedded spreadsheet is large; it is for trying out and never part of the add-in.
    performance: { hints: false },
    devServer: {
      host: "127.0.0.1",
      port: "auto",
      hot: false,
      liveReload: mode === "development",
      client: mode === "development" ? undefined : false,
      static: false,
    },
  };
}

export default async (env = {}, argv = {}) => {
  const mode = argv.mode ?? "production";
  if (env.tryout) return tryOut(mode);
  const trial = env.trial !== undefined;
  return addIn(mode, { origin: trial ? LOCAL : env.origin, trial }, env.officeScript ?? OFFICE_SCRIPT);
};
