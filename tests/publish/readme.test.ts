import { existsSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { registry } from "../../src/functions/registry.ts";
import { withFigures } from "../../src/publish/figures.ts";
import { withFunctionTable } from "../../src/publish/readme.ts";
import { countRows, withRowCounts } from "../../src/publish/rows.ts";

const top = fileURLToPath(new URL("../..", import.meta.url));
const readme = readFileSync(`${top}README.md`, "utf8");

test("the README's table of functions is what `npm run readme` writes", () => {
  expect(withFunctionTable(readme, registry)).toBe(readme);
});

test("the README's figures of speed and size are those of the benchmark's table, which `npm run readme` writes", () => {
  const written = withFigures(readme, readFileSync(`${top}tests/bench/FIGURES.md`, "utf8"));
  expect(written).toBe(readme);
  expect(written).toContain("| 90 kB | yes |");
});

test("every file that the README shows or links is there", () => {
  for (const [, target] of readme.matchAll(/\]\(([^)#:]+)\)/g))
    expect(existsSync(`${top}${target}`), target).toBe(true);
});

const published = `${top}tests/published/`;
const CSVS = readdirSync(published).filter((name) => name.endsWith(".csv"));

test("the README's figures are those of the rows, which `npm run readme` writes", () => {
  expect(withRowCounts(readme, countRows(CSVS.map((name) => readFileSync(published + name, "utf8"))))).toBe(readme);
});

test("every file of published rows is run by a test", () => {
  const texts = readdirSync(published)
    .filter((name) => name.endsWith(".test.ts"))
    .map((name) => readFileSync(published + name, "utf8"))
    .join("\n");
  expect(CSVS.filter((name) => !texts.includes(name))).toEqual([]);
});

describe.each(["README.md", "DEVELOPERS.md"])("%s", (name) => {
  const text = readFileSync(`${top}${name}`, "utf8");
  const { scripts } = JSON.parse(readFileSync(`${top}package.json`, "utf8")) as { scripts: Record<string, string> };

  test("names only commands that there are", () => {
    const named = [...text.matchAll(/npm run (?:-s )?([a-z]+)/g)].map(([, script = ""]) => script);
    expect(named.length).toBeGreaterThan(5);
    expect(named.filter((script) => scripts[script] === undefined)).toEqual([]);
  });

  test("has tables whose rows are as wide as their heads", () => {
    const blocks = text.split("\n\n").filter((block) => /^\|.*\|$/m.test(block));
    for (const block of blocks) {
      const widths = block
        .split("\n")
        .filter((line) => line.trim().startsWith("|"))
        .map((line) => line.replaceAll("\\|", "").split("|").length);
      expect(new Set(widths).size, block.slice(0, 200)).toBe(1);
    }
  });
});

test("every command is told to those who change the code", () => {
  const { scripts } = JSON.parse(readFileSync(`${top}package.json`, "utf8")) as { scripts: Record<string, string> };
  const developers = readFileSync(`${top}DEVELOPERS.md`, "utf8");
  const told = (script: string) => new RegExp(`npm (?:run (?:-s )?)?${script}\\b`).test(developers);
  expect(Object.keys(scripts).filter((script) => !told(script))).toEqual([]);
});

test("every folder of src is told in the table of rooms", () => {
  const [, rooms = ""] = /## The rooms\n([\s\S]*?)\n## /.exec(readFileSync(`${top}DEVELOPERS.md`, "utf8")) ?? [];
  const folders = readdirSync(`${top}src`, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  expect(folders.filter(({ name }) => !rooms.includes(`\`src/${name}`)).map(({ name }) => name)).toEqual([]);
});
