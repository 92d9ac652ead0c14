import { expect, test } from "vitest";
import { cellFunction, quantityOf, textOf } from "../../../src/functions/declare/cell-function.ts";
import { optional } from "../../../src/functions/declare/param.ts";
import { number } from "../../../src/functions/declare/scalar.ts";
import { choice } from "../../../src/functions/declare/word.ts";

// What must not compile. `tsc` fails on a directive that has nothing to expect.
const sound = {
  name: "SAMPLE",
  family: "Wind",
  summary: "A sample.",
  params: {
    speed: number({ says: "a speed" }),
    exposure: optional(choice(["B", "C"], { says: "an exposure" }), "B", "exposure B"),
  },
  returns: quantityOf("psf", "a pressure"),
  sources: ["a source"],
  example: { args: { speed: 1 }, gives: 2, within: 0, source: "exact arithmetic" },
  refuses: [{ args: { exposure: "X" }, says: "one of B, C" }],
  notFor: "none, because it is a sample.",
} as const;

test("a declaration that does not fit fails to compile", () => {
  const ok = cellFunction({ ...sound, run: ({ speed }) => speed * 2 });
  expect(ok.id).toBe("SAMPLE");

  // @ts-expect-error a run that gives a text where a number is declared
  cellFunction({ ...sound, run: () => "two" });
  // @ts-expect-error a parameter of another type than the run takes
  cellFunction({ ...sound, run: ({ speed }) => speed.toUpperCase().length });
  // @ts-expect-error no source
  cellFunction({ ...sound, sources: [], run: ({ speed }) => speed });
  // @ts-expect-error an example without a required argument
  cellFunction({ ...sound, example: { ...sound.example, args: {} }, run: ({ speed }) => speed });
  const wrongChoice = { speed: 1, exposure: "X" } as const;
  // @ts-expect-error an example with a choice that does not exist
  cellFunction({ ...sound, example: { ...sound.example, args: wrongChoice }, run: ({ speed }) => speed });
  // @ts-expect-error an example whose answer has another type
  cellFunction({ ...sound, example: { ...sound.example, gives: "two" }, run: ({ speed }) => speed });
  // @ts-expect-error no refusal
  cellFunction({ ...sound, refuses: [], run: ({ speed }) => speed });
  const { notFor: _, ...endless } = sound;
  // @ts-expect-error without a word on when to go elsewhere
  cellFunction({ ...endless, run: ({ speed }) => speed });
  // @ts-expect-error a text result declared as text but run to a number
  cellFunction({ ...sound, returns: textOf("a text"), run: ({ speed }) => speed });
});
