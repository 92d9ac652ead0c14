import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Node, parse } from "acorn";
import { transformSync } from "esbuild";

export const top = fileURLToPath(new URL("../..", import.meta.url));

/** Files below a folder whose name ends so. */
export function filesBelow(folder: string, end: string): string[] {
  return readdirSync(join(top, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return filesBelow(path, end);
    return entry.name.endsWith(end) ? [path] : [];
  });
}

export interface Anything extends Node {
  readonly [key: string]: unknown;
}

function children(node: Anything): Anything[] {
  return Object.values(node).flatMap((value) =>
    Array.isArray(value) ? value.filter(isNode) : isNode(value) ? [value] : [],
  );
}

function isNode(value: unknown): value is Anything {
  return typeof value === "object" && value !== null && typeof (value as { type?: unknown }).type === "string";
}

export function visit(node: Anything, see: (node: Anything) => void): void {
  see(node);
  for (const child of children(node)) visit(child, see);
}

/** For each declared function the names of the core that its calculation calls, through helpers of the same file too. */
export function coreCalls(): ReadonlyMap<string, ReadonlySet<string>> {
  const found = new Map<string, Set<string>>();
  for (const file of filesBelow("src/functions", ".ts")) {
    const text = readFileSync(join(top, file), "utf8");
    if (!text.includes("familyFunction(")) continue;
    const { code } = transformSync(text, { loader: "ts", target: "es2022" });
    const tree = parse(code, { ecmaVersion: "latest", sourceType: "module" }) as unknown as Anything;
    const core = new Set<string>();
    const helpers = new Map<string, Set<string>>();
    visit(tree, (node) => {
      if (node.type === "ImportDeclaration" && String((node.source as Anything).value).includes("/core/")) {
        for (const s of node.specifiers as Anything[]) core.add(String((s.local as Anything).name));
      }
      if (node.type === "FunctionDeclaration") helpers.set(String((node.id as Anything).name), namesIn(node));
      if (node.type === "VariableDeclarator" && isNode(node.init)) {
        helpers.set(String((node.id as Anything).name), namesIn(node.init as Anything));
      }
    });
    visit(tree, (node) => {
      if (node.type !== "CallExpression" || (node.callee as Anything).name !== "familyFunction") return;
      const [declaration] = node.arguments as Anything[];
      const property = (key: string) =>
        (declaration?.properties as Anything[] | undefined)?.find((p) => (p.key as Anything | undefined)?.name === key);
      const name = String((property("name")?.value as Anything | undefined)?.value);
      const run = property("run");
      if (run === undefined) return;
      found.set(name, reach(namesIn(run), helpers, core));
    });
  }
  return found;
}

/** For each function of the core the functions of the core that its body names. */
export function coreGraph(): ReadonlyMap<string, ReadonlySet<string>> {
  const bodies = new Map<string, Set<string>>();
  for (const file of filesBelow("src/core", ".ts")) {
    const { code } = transformSync(readFileSync(join(top, file), "utf8"), { loader: "ts", target: "es2022" });
    visit(parse(code, { ecmaVersion: "latest", sourceType: "module" }) as unknown as Anything, (node) => {
      if (node.type === "FunctionDeclaration") bodies.set(String((node.id as Anything).name), namesIn(node));
    });
  }
  return new Map(
    [...bodies].map(([name, names]) => [name, new Set([...names].filter((n) => n !== name && bodies.has(n)))]),
  );
}

export function namesIn(node: Anything): Set<string> {
  const names = new Set<string>();
  visit(node, (n) => {
    if (n.type === "Identifier") names.add(String(n.name));
  });
  return names;
}

function reach(names: Set<string>, helpers: ReadonlyMap<string, Set<string>>, core: ReadonlySet<string>): Set<string> {
  const seen = new Set<string>();
  const out = new Set<string>();
  const queue = [...names];
  while (queue.length > 0) {
    const name = queue.pop() as string;
    if (seen.has(name)) continue;
    seen.add(name);
    if (core.has(name)) out.add(name);
    for (const inner of helpers.get(name) ?? []) queue.push(inner);
  }
  return out;
}
