import { fileURLToPath } from "node:url";
import { EsbuildPlugin } from "esbuild-loader";
import HtmlWebpackPlugin from "html-webpack-plugin";
import MiniCssExtractPlugin from "mini-css-extract-plugin";
import webpack from "webpack";
import { loadAssets } from "./src/publish/load.mjs";

const at = (path) => fileURLToPath(new URL(path, import.meta.url));

/** Office's own script, from Office's own address: the only script from outside, and only in the add-in. */
const OFFICE_SCRIPT = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

/** Where an office would put dist/; `--env origin=https://...` sets it. */
const ORIGIN = "https://localhost:3000";

/** Gives the build what the registry makes: functions.json, help pages, manifests. */
class RegistryAssets {
  constructor(origin) {
    this.origin = origin;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap("RegistryAssets", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tapPromise({ name: "RegistryAssets", stage }, async () => {
        for (const { path, content } of await loadAssets({ origin: this.origin })) {
          compilation.emitAsset(path, new webpack.sources.RawSource(content));
        }
      });
    });
  }
}

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

function addIn(mode, origin, officeScript) {
  return {
    ...common(mode),
    name: "add-in",
    entry: { taskpane: at("src/hosts/excel/main.ts") },
    output: { path: at("dist"), filename: "[name].[contenthash:10].js", clean: true, publicPath: "" },
    plugins: [
      new HtmlWebpackPlugin({
        template: at("src/hosts/excel/taskpane.html"),
        filename: "taskpane.html",
        scriptLoading: "defer",
        templateParameters: { officeScript, officeOrigin: new URL(officeScript, origin).origin },
      }),
      new MiniCssExtractPlugin({ filename: "[name].[contenthash:10].css" }),
      new RegistryAssets(origin),
    ],
    performance: {
      hints: "error",
      maxEntrypointSize: 700_000,
      maxAssetSize: 700_000,
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

export default (env = {}, argv = {}) => {
  const mode = argv.mode ?? "production";
  if (env.tryout) return tryOut(mode);
  return addIn(mode, env.origin ?? ORIGIN, env.officeScript ?? OFFICE_SCRIPT);
};
