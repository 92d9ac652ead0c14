import { expect, test } from "vitest";
import type { RawArgument } from "../../../src/functions/declare/raw.ts";
import { functionNamed } from "../../../src/functions/registry.ts";
import { explain } from "../../../src/functions/run/invoke.ts";

const said = (name: string, ...args: RawArgument[]) => {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`There is no ${name}`);
  const { assumptions, cautions } = explain(fn, args);
  return { assumed: assumptions.join(" | "), warned: cautions.join(" | ") };
};

const LAYERS = (second: number | null) => [
  ["gypsum board", 0.5, 0],
  ["plywood", 3.75, second],
];

test("a 0 typed into a column beside true blanks is a caution that names column and rows", () => {
  const { warned, assumed } = said("R_STACK", LAYERS(null));
  expect(warned).toContain("The 0 in R of row 1 of layers is read as a blank cell. To write nothing, type none.");
  expect(assumed).not.toContain("The 0 in");
});

test("where no cell is a true blank the zeros may be a host's blanks: the working says it, without a caution", () => {
  const { warned, assumed } = said("R_STACK", LAYERS(0));
  expect(assumed).toContain("The 0 in R of row 1, 2 of layers is read as a blank cell; to write nothing, type none.");
  expect(warned).not.toContain("The 0 in");
});

test("no zeros, no words; none is a 0 that is meant", () => {
  const { warned, assumed } = said("R_STACK", [
    ["gypsum board", 0.5, "none"],
    ["plywood", 3.75, null],
  ]);
  expect(warned + assumed).not.toContain("is read as a blank cell");
});

test("a 0 that a column may hold is no blank", () => {
  const { warned, assumed } = said("WALL_COLUMNS", [["wall", 32, 9]], [["door", 3, 6.8, null, 0, 5]], 48);
  expect(warned + assumed).not.toMatch(/The 0 in sill/);
});
