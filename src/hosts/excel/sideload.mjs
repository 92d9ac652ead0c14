// `npm run sideload`: the add-in in a real Excel on this machine. Builds it for the local address, serves it over https with a development
// certificate and hands the local manifest to Excel. The tools for certificate and sideloading are fetched when they are wanted: one of them has a native
// part that does not build everywhere, so the project does not depend on them.
import { spawn, spawnSync } from "node:child_process";
import { existsSync, readFileSync, statSync } from "node:fs";
import { createServer } from "node:https";
import { homedir } from "node:os";
import { extname, join, normalize, sep } from "node:path";
import { installDependencies, top } from "../../../.ci/prepare.mjs";

const PORT = 3000;
const ORIGIN = `https://localhost:${PORT}`;
const CERTIFICATES = "office-addin-dev-certs@3.0.0";
const SIDELOADER = "office-addin-debugging@7.0.0";
const folder = join(top, ".cache", "sideload");
const manifest = join(folder, "manifest.xml");
const OPTIONS = ["--no-debug", "--no-live-reload"];
/** npx is a batch file there. */
const shell = process.platform === "win32";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".xml": "application/xml",
};

if (process.platform !== "win32" && process.platform !== "darwin") {
  stop(
    "Excel runs on Windows and Mac only, so the add-in cannot be started in it here. Use `npm start` for the try-out sheet, or upload manifest.xml to Excel on the web from a server of your office.",
  );
}

installDependencies();
run(
  "The build failed",
  "--no-install",
  ...["webpack", "--mode", "production", "--env", "trial", "--output-path", folder],
);
run("The development certificate could not be installed", "--yes", CERTIFICATES, "install");
await serve();
// Not in a blocking way: Excel asks this process for the page as soon as it starts.
const started = await npx("--yes", SIDELOADER, "start", manifest, "desktop", "--app", "excel", ...OPTIONS);
if (started !== 0) stop("Excel could not be started with the add-in: see the lines above.");
console.log(`The add-in is served at ${ORIGIN}. Press Ctrl+C to take it out of Excel and stop.`);
process.once("SIGINT", async () => process.exit((await npx("--yes", SIDELOADER, "stop", manifest)) ?? 0));

function npx(...args) {
  const child = spawn("npx", quoted(args), { cwd: top, stdio: "inherit", shell });
  return new Promise((done) => child.on("exit", done));
}

/** For a shell, which npx needs on Windows: a folder's name may hold spaces. */
function quoted(args) {
  return shell ? args.map((arg) => `"${arg}"`) : args;
}

function run(trouble, ...args) {
  const done = spawnSync("npx", quoted(args), { cwd: top, stdio: "inherit", shell });
  if (done.status !== 0) stop(`${trouble}: see the lines above.`);
}

function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}

/** The files of the build, never kept by the browser engine of Excel. */
function serve() {
  const place = join(homedir(), ".office-addin-dev-certs");
  const server = createServer(
    { key: readFileSync(join(place, "localhost.key")), cert: readFileSync(join(place, "localhost.crt")) },
    (request, response) => {
      // The names of the files are plain, so nothing is to be decoded.
      const [path = "/"] = (request.url ?? "/").split("?");
      const file = normalize(join(folder, path));
      if (!file.startsWith(folder + sep) || !existsSync(file) || !statSync(file).isFile()) {
        response.writeHead(404).end();
        return;
      }
      response.writeHead(200, {
        "content-type": TYPES[extname(file)] ?? "application/octet-stream",
        "cache-control": "no-cache",
      });
      response.end(readFileSync(file));
    },
  );
  return new Promise((done) => {
    server.on("error", (error) => stop(`Nothing can be served at ${ORIGIN}: ${error.message}`));
    server.listen(PORT, "localhost", done);
  });
}
