import { existsSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
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
