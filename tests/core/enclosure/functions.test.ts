import { describe, expect, test } from "vitest";
import { NAMESPACE } from "../../../src/functions/declare/cell-function.ts";
import { enclosureFunctions } from "../../../src/functions/enclosure/index.ts";
import { explain, formulaOf, invoke, positional } from "../../../src/functions/run/invoke.ts";

describe("each enclosure function answers its example", () => {
  for (const fn of enclosureFunctions) {
    test(formulaOf(fn, fn.example.args, NAMESPACE), () => {
      const working = explain(fn, positional(fn, fn.example.args));
      if (!working.outcome.ok) throw new Error(working.outcome.says);
      const given = [working.outcome.value].flat(2);
      const wanted = [fn.example.gives].flat(2);
      expect(given.length).toBe(wanted.length);
      given.forEach((cell, i) => {
        const want = wanted[i];
        if (typeof want === "number") expect(Math.abs(Number(cell) - want)).toBeLessThanOrEqual(fn.example.within);
        else expect(cell).toBe(want);
      });
      expect(working.steps.at(-1)?.value).toEqual(working.outcome.value);
      expect(invoke(fn, positional(fn, fn.example.args))).toEqual(working.outcome);
    });
  }
});
