import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { RawArgument } from "../../src/functions/declare/raw.ts";
import { functionNamed, registry } from "../../src/functions/registry.ts";
import { Calls, seedOf } from "./generate.ts";
import { faultOf } from "./verdict.ts";

/** Where `npm run fuzz` makes ten thousand calls, every test run makes these. */
const RUNS = 200;
const RUNS_OF_A_SEARCH = 10;
const SEED = 20_260_101;

test.each(registry.map((fn) => [fn.name, fn] as const))("%s: random calls give a value or a sentence", (name, fn) => {
  for (let run = 0; run < (fn.heavy ? RUNS_OF_A_SEARCH : RUNS); run++) {
    const args = new Calls(seedOf(name, SEED, run)).argumentsOf(fn, !fn.heavy);
    const fault = faultOf(fn, args, false);
    if (fault !== undefined) expect.fail(`${fault}: ${name}(${JSON.stringify(args).slice(0, 2000)})`);
  }
});

const folder = new URL("../found/", import.meta.url);
const found = readdirSync(folder).filter((name) => name.endsWith(".json"));

test.each(found)("what fuzzing found wrong stays mended: %s", (file) => {
  const { function: name, args } = JSON.parse(readFileSync(new URL(file, folder), "utf8")) as {
    function: string;
    args: RawArgument[];
  };
  const fn = functionNamed(name);
  expect(fn, `${name} is gone: take the file away`).toBeDefined();
  if (fn !== undefined) expect(faultOf(fn, args, false)).toBeUndefined();
});

test("the verdict sees what is wrong", () => {
  const fn = registry[0];
  if (fn === undefined) throw new Error("no function");
  const giving = (value: unknown) => faultOf({ ...fn, params: [], named: [], run: () => value as number }, [], false);
  expect(giving(1)).toBeUndefined();
  expect(giving("a [object Object]")).toContain("it gives");
  expect(giving(Number.NaN)).toContain("fault of the program");
});
