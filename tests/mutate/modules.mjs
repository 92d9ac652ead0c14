// Modules compiled once and run anew for each mutant: a run of them all takes a fraction of a second.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { compileFunction } from "node:vm";
import { parse } from "acorn";
import { transformSync } from "esbuild";

const ENTERED = "__entered";
const ENTER = "__enter";
const plainRequire = createRequire(import.meta.url);

/** The functions of a module that stands as esbuild writes it: start and end of each. */
function functionsOf(code) {
  const found = [];
  const walk = (node) => {
    if (node === null || typeof node !== "object") return;
    if (Array.isArray(node)) return node.forEach(walk);
    if (typeof node.type !== "string") return;
    if (/Function/.test(node.type)) found.push(node);
    for (const child of Object.values(node)) walk(child);
  };
  walk(parse(code, { ecmaVersion: "latest", sourceType: "module" }));
  return found;
}

/** The module with a call at the head of each function that says, once in a test, that it was entered. */
function watched(code, number) {
  let text = code;
  const marks = functionsOf(code).flatMap((f) => {
    const n = number(f.start);
    const call = `${ENTERED}[${n}]||${ENTER}(${n})`;
    return f.body.type === "BlockStatement"
      ? [[f.body.start + 1, `${call};`]]
      : [
          [f.body.start, `(${call}, `],
          [f.body.end, ")"],
        ];
  });
  // From the end, so that earlier places keep their numbers; of two marks in one place the inner one closes first.
  for (const [at, mark] of marks.sort((a, b) => b[0] - a[0])) text = text.slice(0, at) + mark + text.slice(at);
  return text;
}

/** The innermost function around a place, as `watched` names it; undefined for what runs when the module is read. */
export function functionAt(code, file, at) {
  const around = functionsOf(code).filter((f) => f.start <= at && at < f.end);
  const inner = around.sort((a, b) => b.start - a.start)[0];
  return inner === undefined ? undefined : `${file}:${inner.start}`;
}

/**
 * @param {{ watch: (file: string) => boolean, given: Record<string, unknown> }} options
 * `watch`: whose functions say that they are entered; `given`: modules that are not read from the disk
 */
export function modules({ watch, given }) {
  const compiled = new Map();
  const names = [];
  const flags = new Uint8Array(20_000);
  let seen = new Set();
  const enter = (n) => {
    flags[n] = 1;
    seen.add(names[n]);
  };
  /** The functions that have been entered since it was asked before. */
  function entered() {
    const before = seen;
    seen = new Set();
    flags.fill(0);
    return before;
  }
  let watching = true;

  function compile(code, file) {
    const { code: text } = transformSync(code, {
      loader: "js",
      format: "cjs",
      target: "es2022",
      supported: { "dynamic-import": false },
      define: { "import.meta.url": "__url" },
    });
    const run = compileFunction(text, ["exports", "require", "module", "__url", ENTERED, ENTER], { filename: file });
    return { run, imports: [...text.matchAll(/require\("(\.[^"]+)"\)/g)].map((m) => resolve(dirname(file), m[1])) };
  }

  function ofDisk(file) {
    const before = compiled.get(file);
    if (before !== undefined) return before;
    const { code } = transformSync(readFileSync(file, "utf8"), { loader: "ts", target: "es2022" });
    const made = compile(watching && watch(file) ? watched(code, (at) => names.push(`${file}:${at}`) - 1) : code, file);
    compiled.set(file, made);
    return made;
  }

  /** A fresh set of modules, one of them changed. */
  function fresh(changed) {
    const mutant = changed === undefined ? undefined : compile(changed.code, changed.file);
    const running = new Map();
    const read = (file) => {
      const before = running.get(file);
      if (before !== undefined) return before.exports;
      const module = { exports: {} };
      running.set(file, module);
      const { run } = file === changed?.file ? mutant : ofDisk(file);
      const from = (name) =>
        name in given ? given[name] : name.startsWith(".") ? read(resolve(dirname(file), name)) : plainRequire(name);
      run(module.exports, from, module, pathToFileURL(file).href, flags, enter);
      return module.exports;
    };
    return read;
  }

  const reached = new Map();
  /** All modules that a module reads, itself among them. */
  function reach(file) {
    const before = reached.get(file);
    if (before !== undefined) return before;
    const all = new Set();
    const walk = (at) => {
      if (all.has(at)) return;
      all.add(at);
      for (const next of ofDisk(at).imports) walk(next);
    };
    walk(file);
    reached.set(file, all);
    return all;
  }

  /** Functions that have been watched say nothing from here on. */
  function forget() {
    for (const file of compiled.keys()) if (watch(file)) compiled.delete(file);
    watching = false;
  }

  return { entered, fresh, reach, forget };
}
