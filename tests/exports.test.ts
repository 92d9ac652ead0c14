import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const top = fileURLToPath(new URL("..", import.meta.url));

function files(folder: string): string[] {
  return readdirSync(join(top, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return files(path);
    return /\.(ts|mjs)$/.test(entry.name) ? [path] : [];
  });
}

const texts = [...["src", "tests", ".ci"].flatMap(files), "webpack.config.js"].map((path) => ({
  path,
  words: new Set(readFileSync(join(top, path), "utf8").match(/[A-Za-z_$][\w$]*/g)),
}));

/** Values that a file gives away: functions, constants, classes. A type may be there for whoever reads. */
function givenAway(path: string): string[] {
  const text = readFileSync(join(top, path), "utf8");
  return [...text.matchAll(/^export (?:async )?(?:function|const|class) (\w+)/gm)].map((match) => match[1] as string);
}

test("what a file of src gives away is taken somewhere, so no code lies dead", () => {
  const dead = files("src").flatMap((path) =>
    givenAway(path)
      .filter((name) => !texts.some((other) => other.path !== path && other.words.has(name)))
      .map((name) => `${path}: ${name}`),
  );
  expect(dead).toEqual([]);
});
