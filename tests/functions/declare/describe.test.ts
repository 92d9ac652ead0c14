import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { describe as describeFunction, type FunctionText } from "../../../src/functions/declare/describe.ts";
import { isOptional } from "../../../src/functions/declare/param.ts";
import { registry } from "../../../src/functions/registry.ts";

const top = fileURLToPath(new URL("../../..", import.meta.url));

test.each(registry.map((fn) => [fn.name, fn] as const))("%s is described whole, as plain data", (_, fn) => {
  const text = describeFunction(fn);
  expect(JSON.parse(JSON.stringify(text))).toEqual(text);
  expect(text.fullName).toBe(`SILL.${fn.name}`);
  expect(text.parameters.map((p) => p.name)).toEqual(fn.params.map((p) => p.name));
  expect(text.parameters.map((p) => p.required)).toEqual(fn.params.map(({ param }) => !isOptional(param)));
  expect(text.sources.length).toBeGreaterThan(0);
  expect(text.example.formula).toMatch(new RegExp(`^=SILL\\.${fn.name}\\(`));
  for (const p of text.parameters) {
    if (p.kind === "choice") expect(p.choices.length, p.name).toBeGreaterThan(0);
    if (p.kind === "table") expect(p.columns.length, p.name).toBeGreaterThan(0);
    expect(p.what, p.name).not.toBe("");
  }
  if (text.result.kind === "table") expect(text.result.columns.length).toBeGreaterThan(0);
});

test("the command prints the same as JSON, and nothing else", () => {
  const printed = execFileSync(process.execPath, ["src/publish/functions.mjs"], {
    cwd: top,
    encoding: "utf8",
    maxBuffer: 2 ** 26,
  });
  expect(JSON.parse(printed) as FunctionText[]).toEqual(registry.map(describeFunction));
});
