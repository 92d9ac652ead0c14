import { expect, test } from "vitest";
import { registry } from "../../../../src/functions/registry.ts";
import { functionInfo } from "../../../../src/hosts/tryout/sheet/help.ts";

test("the spreadsheet's own help has every function, with a text for each parameter and optional ones in brackets", () => {
  for (const fn of registry) {
    const info = functionInfo(fn);
    expect(info.functionName).toBe(`SILL.${fn.name}`);
    expect(info.functionParameter.map((p) => p.name)).toEqual(fn.params.map((p) => p.name));
    for (const parameter of info.functionParameter) expect(parameter.detail.length).toBeGreaterThan(3);
  }
  const slope = functionInfo(registry.find((fn) => fn.name === "SLOPE") as (typeof registry)[number]);
  expect(slope.functionParameter.map((p) => [p.name, p.require, p.example])).toEqual([
    ["slope", 1, '"6:12"'],
    ["as", 0, '"degrees"'],
  ]);
});
