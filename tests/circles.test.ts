import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const src = fileURLToPath(new URL("../src", import.meta.url));

function files(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return files(path);
    return entry.name.endsWith(".ts") && !entry.name.endsWith(".d.ts") ? [path] : [];
  });
}

function imports(file: string): string[] {
  const text = readFileSync(file, "utf8");
  return [...text.matchAll(/(?:from\s+|import\s*\(?\s*)["']([^"']+)["']/g)].map((match) => match[1] as string);
}

/** What imports what, types too. */
function graphOf(name: (file: string) => string): ReadonlyMap<string, ReadonlySet<string>> {
  const graph = new Map<string, Set<string>>();
  for (const file of files(src)) {
    const from = name(relative(src, file).replaceAll("\\", "/"));
    const to = graph.get(from) ?? new Set<string>();
    graph.set(from, to);
    for (const target of imports(file)) {
      if (!target.startsWith(".") || !target.endsWith(".ts")) continue;
      const other = name(relative(src, resolve(dirname(file), target)).replaceAll("\\", "/"));
      if (other !== from) to.add(other);
    }
  }
  return graph;
}

/** The first circle that is found, as the way round it. */
function circleIn(graph: ReadonlyMap<string, ReadonlySet<string>>): readonly string[] {
  const done = new Set<string>();
  const way: string[] = [];
  const walk = (at: string): readonly string[] => {
    if (way.includes(at)) return [...way.slice(way.indexOf(at)), at];
    if (done.has(at)) return [];
    way.push(at);
    for (const to of graph.get(at) ?? []) {
      const found = walk(to);
      if (found.length > 0) return found;
    }
    way.pop();
    done.add(at);
    return [];
  };
  for (const start of graph.keys()) {
    const found = walk(start);
    if (found.length > 0) return found;
  }
  return [];
}

test("no file imports itself over others, by types neither", () =>
  expect(circleIn(graphOf((file) => file))).toEqual([]));

test("no folder imports itself over others", () => expect(circleIn(graphOf((file) => dirname(file)))).toEqual([]));
