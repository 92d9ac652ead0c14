import { afterAll, describe, expect, test } from "vitest";
import { Evaluator } from "../../../../src/hosts/tryout/engine/evaluate.ts";
import { HeadlessWorkbook } from "../../../../src/hosts/tryout/engine/headless.ts";
import { workbook } from "../sheet/sheet.ts";
import { probe } from "./probe.ts";

const { fn, seen } = probe();
const evaluator = new Evaluator([fn]);
afterAll(() => evaluator.dispose());

describe("what a formula's arguments arrive as", () => {
  test.each([
    ["1.5", 1.5],
    ["-2", -2],
    ["50%", 0.5],
    ["TRUE", true],
    ['"abc"', "abc"],
    ['""', ""],
    ['"12\'-6 1/2"""', "12'-6 1/2\""],
    // Text that looks like a time, a date, a percentage or a number stays text.
    ['"6:12"', "6:12"],
    ['"1/2"', "1/2"],
    ['"50%"', "50%"],
    ['"1e3"', "1e3"],
    ['"$5"', "$5"],
    ['"TRUE"', "TRUE"],
    ['"a,b;{c}(d"', "a,b;{c}(d"],
    ['IF(TRUE,"6:12","3:12")', "6:12"],
    ['"6"&":12"', "6:12"],
    ["1/0", { error: "#DIV/0!" }],
    ["NA()", { error: "#N/A" }],
    ["nobody", { error: "#NAME?" }],
    [
      '{"a",1;"b",2}',
      [
        ["a", 1],
        ["b", 2],
      ],
    ],
    [
      '{"a, b; c","say ""x, y""";1,2}',
      [
        ["a, b; c", 'say "x, y"'],
        [1, 2],
      ],
    ],
    [
      '{"6:12",#N/A;TRUE,-2.5}',
      [
        ["6:12", { error: "#N/A" }],
        [true, -2.5],
      ],
    ],
    ["{5}", 5],
    ["{1;2}", [[1], [2]]],
    [
      "{1,2;3}",
      [
        [1, 2],
        [3, null],
      ],
    ],
    [
      "SEQUENCE(2,2)",
      [
        [1, 2],
        [3, 4],
      ],
    ],
    ["A1", null],
    ["A1:B1", [[null, null]]],
    ["LAMBDA(x,x)", { error: "#CALC!" }],
  ])("%s", async (argument, raw) => {
    expect((await evaluator.evaluate(`=SILL.PROBE(${argument})`)).value).toBe(1);
    expect(seen()).toEqual(raw);
  });

  test.each([
    ["=SILL.PROBE()", []],
    ["=SILL.PROBE(,)", [null, null]],
    ["=SILL.PROBE(1,,)", [1, null, null]],
  ])("%s", async (formula, args) => {
    expect((await evaluator.evaluate(formula)).calls[0]?.args).toEqual(args);
  });
});

describe("what a range arrives as", () => {
  test("rows with numbers, texts, truth values, blanks, errors and results of formulas", async () => {
    const sheet = await HeadlessWorkbook.open(
      workbook({
        Data: [
          [1, "txt", true, undefined],
          [undefined, "=1/0", "=1+1", "6:12"],
          [0.5, "5", false, '="a"&"b"'],
          ["=SILL.PROBE(A1:D3)"],
        ],
      }),
      [fn],
    );
    expect(seen()).toEqual([
      [1, "txt", true, null],
      [null, { error: "#DIV/0!" }, 2, "6:12"],
      [0.5, "5", false, "ab"],
    ]);
    await sheet.set("Data!A4", "=SILL.PROBE(B3)");
    expect(seen()).toBe("5");
    sheet.dispose();
  });

  test("a hundred thousand rows arrive, and a change in one of them", async () => {
    const rows = Array.from({ length: 100_000 }, (_, i) => [`part ${i}`, i, true]);
    const sheet = await HeadlessWorkbook.open(workbook({ Data: rows, Sum: [["=SILL.PROBE(Data!A1:C100000)"]] }), [fn]);
    await sheet.set("Data!B3", -1);
    const got = seen() as unknown[][];
    expect(got).toHaveLength(100_000);
    expect(got[2]).toEqual(["part 2", -1, true]);
    sheet.dispose();
  });
});
