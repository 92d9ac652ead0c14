import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "acorn";
import { transformSync } from "esbuild";
import { registry } from "../../src/functions/registry.ts";
import { type Anything, coreCalls, filesBelow, namesIn, top, visit } from "../complete/declarations.ts";

/** A published row may check the formula that a calculation rests on, so many calls down. */
const DEPTH = 2;

/** A block of a test file: the row files that it reads, and every name and text in it and in what it uses of its file. */
interface Block {
  readonly csvs: ReadonlySet<string>;
  readonly words: ReadonlySet<string>;
}

/** For each function the files of published rows that check its calculation, or what it rests on. */
export function rowFiles(): ReadonlyMap<string, ReadonlySet<string>> {
  const calls = coreCalls();
  const graph = callGraph();
  const blocks = filesBelow("tests/published", ".test.ts").flatMap(blocksOf);
  return new Map(
    registry.map((fn) => {
      let names = [...(calls.get(fn.name) ?? [])];
      for (let i = 0; i < DEPTH; i++) names = [...new Set(names.flatMap((n) => [n, ...(graph.get(n) ?? [])]))];
      const wanted = [fn.name, ...names];
      const csvs = blocks.filter(({ words }) => wanted.some((name) => words.has(name))).flatMap((b) => [...b.csvs]);
      return [fn.name, new Set(csvs)];
    }),
  );
}

function parsed(file: string): readonly Anything[] {
  const { code } = transformSync(readFileSync(join(top, file), "utf8"), { loader: "ts", target: "es2022" });
  return (parse(code, { ecmaVersion: "latest", sourceType: "module" }) as unknown as Anything).body as Anything[];
}

/** For each function of the core those that it calls: functions of its own file, and what the file imports. */
function callGraph(): ReadonlyMap<string, ReadonlySet<string>> {
  const graph = new Map<string, Set<string>>();
  for (const file of filesBelow("src/core", ".ts")) {
    const statements = parsed(file).map((s) => (s.type === "ExportNamedDeclaration" ? (s.declaration as Anything) : s));
    const functions = statements.filter((s) => s?.type === "FunctionDeclaration");
    const nameOf = (node: Anything) => String((node.id as Anything).name);
    const inScope = new Set(functions.map(nameOf));
    for (const s of statements.filter((node) => node?.type === "ImportDeclaration")) {
      for (const specifier of s.specifiers as Anything[]) inScope.add(String((specifier.local as Anything).name));
    }
    for (const fn of functions) {
      graph.set(nameOf(fn), new Set([...namesIn(fn)].filter((name) => name !== nameOf(fn) && inScope.has(name))));
    }
  }
  return graph;
}

function blocksOf(file: string): Block[] {
  const own = new Map<string, ReadonlySet<string>>();
  const imported = new Set<string>();
  const blocks: ReadonlySet<string>[] = [];
  for (const statement of parsed(file)) {
    if (statement.type === "ImportDeclaration" && String((statement.source as Anything).value).includes("/core/")) {
      for (const s of statement.specifiers as Anything[]) imported.add(String((s.local as Anything).name));
    } else if (statement.type === "FunctionDeclaration")
      own.set(String((statement.id as Anything).name), wordsIn(statement));
    else if (statement.type === "VariableDeclaration") {
      const words = wordsIn(statement);
      for (const name of namesIn(statement)) if (!own.has(name)) own.set(name, words);
    } else if (statement.type === "ExpressionStatement") blocks.push(wordsIn(statement));
  }
  return blocks.map((words) => {
    const all = reach(words, own);
    // A word of everyday, such as width, is a name of the core only where the file takes it from there; cells' names stand in texts.
    const names = [...all].filter((word) => imported.has(word) || /^[A-Z][A-Z0-9_]+$/.test(word));
    return { words: new Set(names), csvs: new Set([...all].filter((word) => word.endsWith(".csv"))) };
  });
}

function wordsIn(node: Anything): ReadonlySet<string> {
  const words = new Set(namesIn(node));
  visit(node, (n) => {
    if (n.type === "Literal" && typeof n.value === "string") words.add(n.value);
  });
  return words;
}

/** The words of a block, and of everything of its file that it names. */
function reach(words: ReadonlySet<string>, own: ReadonlyMap<string, ReadonlySet<string>>): ReadonlySet<string> {
  const all = new Set<string>();
  const queue = [...words];
  while (queue.length > 0) {
    const word = queue.pop() as string;
    if (all.has(word)) continue;
    all.add(word);
    queue.push(...(own.get(word) ?? []));
  }
  return all;
}
