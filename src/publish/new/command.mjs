// `npm run new -- function|family|picture|template NAME [--family FAMILY]`: writes the files of one new thing, each with what is to be filled in.
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { FAMILY, FUNCTION, PICTURE, TEMPLATE } from "./texts.mjs";

const top = fileURLToPath(new URL("../../..", import.meta.url));
const { values, positionals } = parseArgs({ allowPositionals: true, options: { family: { type: "string" } } });
const [kind, name] = positionals;

function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}

/** What a page knows before it has loaded the functions. */
const NAMES = "src/functions/declare/names.ts";
const families = readdirSync(join(top, "src/functions"), { withFileTypes: true })
  .filter((e) => e.isDirectory() && existsSync(join(top, "src/functions", e.name, "index.ts")))
  .map((e) => e.name);
const written = [];

function write(path, text) {
  const full = join(top, path);
  if (existsSync(full)) stop(`${path} is there already: choose another name`);
  mkdirSync(dirname(full), { recursive: true });
  writeFileSync(full, text);
  written.push(path);
}

function edit(path, change) {
  const full = join(top, path);
  const before = readFileSync(full, "utf8");
  const after = change(before);
  if (after === before) stop(`${path} could not be changed: it has not the form that this command knows`);
  writeFileSync(full, after);
  written.push(`${path} (changed)`);
}

const kebab = (text) => text.toLowerCase().replaceAll("_", "-");
const camel = (text) => kebab(text).replace(/-([a-z0-9])/g, (_, c) => c.toUpperCase());
const title = (text) => camel(text).replace(/^./, (c) => c.toUpperCase());

/** An import on top, and an entry at the end of the file's last list. */
function listed(line, entry) {
  return (text) =>
    `${line}\n${text}`.replace(
      /\[([^[\]]*?),?(\s*)\]( as const)?;(?![\s\S]*\] *(?:as const)?;)/,
      (_, inside, space, end = "") =>
        inside.trim() === "" ? `[${entry}]${end};` : `[${inside}, ${entry}${space}]${end};`,
    );
}

function familyOf() {
  const family = values.family ?? families.find((f) => name.startsWith(`${f.toUpperCase()}_`));
  if (family === undefined || !families.includes(family)) stop(`Say which family: --family ${families.join(" | ")}`);
  return family;
}

const KINDS = {
  function() {
    if (!/^[A-Z][A-Z0-9]*(_[A-Z0-9]+)*$/.test(name))
      stop("A function is named in capitals, words joined by _: GABLE_AREA");
    const family = familyOf();
    const words = { name, family, file: kebab(name), fn: camel(name), title: title(name) };
    write(`src/core/${family}/${words.file}.ts`, FUNCTION.core(words));
    write(`src/functions/${family}/${words.file}.ts`, FUNCTION.declaration(words));
    write(`tests/core/${family}/${words.file}.test.ts`, FUNCTION.test(words));
    write(`tests/published/${family}-${words.file}.csv`, FUNCTION.rows(words));
    write(`tests/published/${family}-${words.file}.test.ts`, FUNCTION.published(words));
    edit(
      `src/functions/${family}/index.ts`,
      listed(`import { ${words.fn}Function } from "./${words.file}.ts";`, `${words.fn}Function`),
    );
    edit(NAMES, (text) =>
      text.replace(new RegExp(`(\\n {2}${family}: \\[[^\\]]*?),?(\\s*\\])`), `$1, "${name}"$2`).replace("[, ", "["),
    );
  },
  family() {
    if (!/^[a-z]+$/.test(name)) stop("A family is one word in small letters: roofing");
    write(`src/functions/${name}/index.ts`, FAMILY.index({ name }));
    write(`src/functions/${name}/family.ts`, FAMILY.family({ title: title(name) }));
    write(`src/core/${name}/tables/README.md`, FAMILY.tables({ name }));
    edit("src/functions/registry.ts", (text) =>
      listed(`import { ${name}Functions } from "./${name}/index.ts";`, `...${name}Functions`)(text),
    );
    edit(NAMES, (text) => text.replace("\n} as const satisfies", `\n  ${name}: [],\n} as const satisfies`));
    edit("src/functions/families.ts", (text) =>
      text.replace(
        "\n};",
        `\n  ${name}: async () => (await import(/* webpackChunkName: "${name}" */ "./${name}/index.ts")).${name}Functions,\n};`,
      ),
    );
    edit("src/functions/declare/cell-function.ts", (text) =>
      text.replace(/(export type Family =[\s\S]*?);/, `$1\n  | "${title(name)}";`),
    );
  },
  picture() {
    if (!/^[a-z]+(-[a-z]+)*$/.test(name))
      stop("A picture is named in small letters, words joined by -: sling-triangle");
    const words = { name, fn: camel(name), title: title(name), family: familyOf() };
    write(`src/core/${words.family}/${name}-picture.ts`, PICTURE.data(words));
    write(`src/pane/drawings/${name}.ts`, PICTURE.drawing(words));
    edit("src/pane/drawings/index.ts", (text) =>
      `import { ${words.fn} } from "./${name}.ts";\n${text}`.replace(
        /(const DRAWINGS[^{]*\{[^}]*)\}/,
        `$1  "${name}": ${words.fn},\n}`,
      ),
    );
  },
  template() {
    if (!/^[a-z]+(-[a-z]+)*$/.test(name)) stop("A template is named in small letters, words joined by -: roof-takeoff");
    write(`src/templates/${name}.ts`, TEMPLATE.file({ name, fn: camel(name) }));
  },
};

if (kind === undefined || name === undefined || KINDS[kind] === undefined) {
  stop(`usage: npm run new -- ${Object.keys(KINDS).join("|")} NAME [--family FAMILY]`);
}
KINDS[kind]();
try {
  const changed = written.map((path) => path.replace(/ \(changed\)$/, "")).filter((path) => path.endsWith(".ts"));
  execFileSync("npx", ["--no-install", "biome", "check", "--write", ...changed], { cwd: top, stdio: "ignore" });
} catch {
  // What is to be filled in may not lint yet.
}
console.log(written.map((path) => `  ${path}`).join("\n"));
console.log("Fill in what is red: npm run unit -- tests/complete tests/core tests/published; then npm run readme.");
