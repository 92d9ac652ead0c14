import { expect, test } from "vitest";
import { functionNamed } from "../../../src/functions/registry.ts";
import { explain, invoke } from "../../../src/functions/run/invoke.ts";

const cautions = (zone: string) => {
  const fn = functionNamed("WIND_CLADDING");
  if (fn === undefined) throw new Error("no WIND_CLADDING");
  const args = [30, "gable", zone, 20, 20, null, null, "7-10"];
  expect(invoke(fn, args).ok).toBe(true);
  return explain(fn, args).cautions.join(" ");
};

test("a zone of a checked figure that no printed pressure was found for says that it is from memory", () => {
  expect(cautions("3")).toMatch(/zone 3, are from memory, not from a print/);
  expect(cautions("1")).toMatch(/published pressure tables made with them agree/);
});
