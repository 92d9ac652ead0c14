import { readdirSync, readFileSync } from "node:fs";
import { afterAll, expect, test } from "vitest";
import { registry } from "../../src/functions/registry.ts";
import { checkText } from "../../src/hosts/tryout/command/check.ts";
import { Evaluator } from "../../src/hosts/tryout/engine/evaluate.ts";

const evaluator = new Evaluator(registry);
afterAll(() => evaluator.dispose());

const files = readdirSync(new URL(".", import.meta.url)).filter((name) => name.endsWith(".txt"));

test.each(files)("%s: every formula gives what stands below it", async (name) => {
  const { passed, failed } = await checkText(readFileSync(new URL(name, import.meta.url), "utf8"), evaluator);
  expect(failed).toEqual([]);
  expect(passed).toBeGreaterThan(5);
});

const lines = async (...text: string[]) => {
  const { passed, failed } = await checkText(text.join("\n"), evaluator);
  return { passed, failed: failed.map(({ line, says }) => `${line}: ${says}`) };
};

test("an expectation that does not hold is named with its line", async () => {
  const { passed, failed } = await lines(
    "Prose stays prose.",
    '=SILL.CONVERT(1, "ft", "in")',
    "expect 12.1",
    "expect 12 within 0.001",
    "=SILL.DEW_POINT(70, 50)",
    "expect 10.3 C",
    "expect 50.5 psf",
    'expect refusal "above"',
    "=SILL.DEW_POINT(70, 150)",
    'expect refusal "at most 100 %"',
    'expect refusal "at most 90 %"',
    "expect 12",
    '=SILL.WIND_PRESSURE(115, 30, "B")',
    'expect caution "map of the same edition"',
    'expect caution "moon"',
  );
  expect(passed).toBe(4);
  expect(failed.map((says) => says.slice(0, 16))).toEqual([
    "3: it gives 12, ",
    "7: its unit is F",
    "8: it answers 50",
    "11: it says: #N/",
    "12: it says: #N/",
    "15: it cautions:",
  ]);
});

test("a formula of which nothing is expected, and lines that cannot be read, fail", async () => {
  expect(await lines("=1+1", "=2+2", "expect four", "expect 4", "back ANSWER")).toEqual({
    passed: 1,
    failed: [
      "1: nothing is expected of this formula",
      "3: this cannot be read: see npm run -s cell without arguments",
      "5: this cannot be read: see npm run -s cell without arguments",
    ],
  });
  expect((await lines("expect 4")).failed).toEqual(["1: no formula stands above this"]);
});

test("names and the answer above are put in outside of texts only, texts keep their quotation marks", async () => {
  expect(
    await lines("let Wide = 3", '="Wide" & Wide', 'expect "Wide3"', "back =ANSWER & 1", 'expect "Wide31"'),
  ).toEqual({
    passed: 2,
    failed: [],
  });
  expect((await lines('="a ""b"""', 'expect "a ""b"""')).failed).toEqual([]);
});

test("every family has a chain that is typed", () => {
  const all = files.map((name) => readFileSync(new URL(name, import.meta.url), "utf8")).join("\n");
  const typed = new Set(all.match(/(?<=SILL\.)[A-Z][A-Z_]+/g));
  const families = [...new Set(registry.map((fn) => fn.family))];
  expect(families.filter((family) => !registry.some((fn) => fn.family === family && typed.has(fn.name)))).toEqual([]);
});
