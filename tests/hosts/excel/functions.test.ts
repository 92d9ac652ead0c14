import { afterEach, describe, expect, test, vi } from "vitest";
import type { CellFunction } from "../../../src/functions/declare/cell-function.ts";
import { cellFunction, quantityOf, tableOf } from "../../../src/functions/declare/cell-function.ts";
import { positional } from "../../../src/functions/declare/formula.ts";
import { optional } from "../../../src/functions/declare/param.ts";
import { number } from "../../../src/functions/declare/scalar.ts";
import { list } from "../../../src/functions/declare/table.ts";
import { choice } from "../../../src/functions/declare/word.ts";
import { registry } from "../../../src/functions/registry.ts";
import { invoke } from "../../../src/functions/run/invoke.ts";
import type { Answer } from "../../../src/functions/run/tables-on-demand.ts";
import { excelFunction } from "../../../src/hosts/excel/functions.ts";
import { Ledger } from "../../../src/workbook/ledger.ts";

/** As in Excel's runtime: getters on the class, not own members. */
class InvocationContext {
  readonly #address: string | undefined;
  constructor(address?: string) {
    this.#address = address;
  }
  get functionName(): string {
    return "F";
  }
  get address(): string | undefined {
    return this.#address;
  }
}

class HostError extends Error {
  readonly code: string;
  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}

const sum = cellFunction({
  name: "SUM_OF",
  family: "Wind",
  summary: "A sum.",
  params: {
    first: number({ says: "a number", min: 0, max: 100, source: "a rule" }),
    second: optional(number({ says: "another" }), 10, "ten"),
    scale: optional(choice(["1", "2"], { says: "a scale" }), "1", "one"),
  },
  returns: quantityOf("", "the sum"),
  sources: ["arithmetic"],
  example: { args: { first: 1 }, gives: 11, within: 0, source: "exact arithmetic" },
  refuses: [{ args: {}, says: "" }],
  notFor: "none, because it is for tests.",
  run: ({ first, second, scale }) => (first + second) * Number(scale),
});

const squares = cellFunction({
  name: "SQUARES",
  family: "Wind",
  summary: "Squares.",
  params: { values: list(number({ says: "a number" }), { says: "numbers" }) },
  returns: tableOf("squares", [
    ["value", ""],
    ["square", ""],
  ]),
  sources: ["arithmetic"],
  example: { args: { values: [[2]] }, gives: [[2, 4]], within: 0, source: "exact arithmetic" },
  refuses: [{ args: {}, says: "" }],
  notFor: "none, because it is for tests.",
  run: ({ values }) => values.map((v) => [v, v * v]),
});

function call(fn: CellFunction, ...given: unknown[]): unknown {
  return excelFunction(fn, new Ledger())(...given, new InvocationContext());
}

function refusal(fn: CellFunction, ...given: unknown[]): { code?: unknown; message: string } {
  try {
    call(fn, ...given);
  } catch (error) {
    return error as HostError;
  }
  throw new Error("nothing was thrown");
}

const hostErrors = {
  Error: HostError,
  ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
};

afterEach(() => vi.unstubAllGlobals());

describe("arguments as Excel sends them", () => {
  test.each([
    ["all given", [1, 2, "2"], 6],
    ["omitted as null", [1, null, null], 11],
    ["omitted as empty text, as a string parameter may be", [1, null, ""], 11],
    ["fewer than declared: an older list of functions", [1], 11],
    ["one cell as a 1x1 range", [[[1]], [[2]], null], 3],
    ["numbers as text", ["1", "2", null], 3],
    ["a number object with its value inside", [{ type: "FormattedNumber", basicValue: 1 }, 2, null], 3],
  ])("%s", (_, given, wanted) => {
    expect(call(sum, ...given)).toBe(wanted);
  });

  test("without an invocation, as a plain call", () => {
    expect(excelFunction(sum, new Ledger())(1, 2)).toBe(3);
  });

  test.each([
    ["an error of the runtime's class", new HostError("#DIV/0!", "")],
    ["an error as a data type", { type: "Error", basicType: "Error", basicValue: "#DIV/0!" }],
  ])("%s", (_, error) => {
    expect(refusal(sum, error).message).toContain("holds #DIV/0!");
    expect(refusal(squares, [[1], [error]]).message).toContain("#DIV/0!");
  });

  test("a single cell where a range is declared, blanks within a range", () => {
    expect(call(squares, 3)).toEqual([[3, 9]]);
    expect(
      call(squares, [
        [null, 3],
        ["", 4],
      ]),
    ).toEqual([
      [3, 9],
      [4, 16],
    ]);
  });

  test("a date that Excel made of a choice still gets its sentence", () => {
    expect(refusal(sum, 1, 2, "46219").message).toContain("date");
  });
});

describe("refusals", () => {
  test("carry the host's code and the sentence", () => {
    vi.stubGlobal("CustomFunctions", hostErrors);
    expect(refusal(sum, "many")).toBeInstanceOf(HostError);
    expect(refusal(sum, "many").code).toBe("#VALUE!");
    expect(refusal(sum, "many").message).toContain("First");
    expect(refusal(sum, 101).code).toBe("#N/A");
    expect(refusal(sum, 101).message).toContain("a rule");
  });

  test("outside Excel are plain errors with code and sentence", () => {
    vi.stubGlobal("CustomFunctions", { associate: () => {} });
    expect(refusal(sum, 101).message).toMatch(/^#N\/A First is 101/);
    vi.stubGlobal("CustomFunctions", undefined);
    expect(refusal(sum, 101).message).toMatch(/^#N\/A First is 101/);
  });
});

describe("ledger", () => {
  test.each([
    ["Wall!B4", "Wall"],
    ["'Wall 1'!$B$4", "Wall 1"],
    ["'It''s'!B4", "It's"],
    ["[Book1.xlsx]Wall!B4", "Wall"],
    ["'[My book.xlsx]Wall 1'!B4", "Wall 1"],
  ])("the call of %s", (address, sheet) => {
    const ledger = new Ledger();
    excelFunction(sum, ledger)(1, 2, new InvocationContext(address));
    expect(ledger.at({ sheet, row: 3, column: 1 })?.calls).toEqual([
      { id: "SUMOF", args: [1, 2], outcome: { ok: true, value: 3 } },
    ]);
  });

  test("keeps a refusal", () => {
    const ledger = new Ledger();
    expect(() => excelFunction(sum, ledger)(101, new InvocationContext("Wall!A1"))).toThrow();
    expect(ledger.entries()[0]?.calls[0]?.outcome).toMatchObject({ ok: false, code: "#N/A" });
  });

  test("keeps nothing of a preview of a part of a formula, nor of a call without an address", () => {
    const ledger = new Ledger();
    excelFunction(sum, ledger)(1, { functionName: "SUMOF", address: "Wall!A1", isInValuePreview: true });
    excelFunction(sum, ledger)(1, new InvocationContext());
    expect(ledger.size).toBe(0);
  });
});

test("a table comes as rows of its own, which the host may change", () => {
  const rows = call(squares, [[2]]) as unknown[][];
  rows[0]?.push("x");
  expect(call(squares, [[2]])).toEqual([[2, 4]]);
});

test("every function of the registry answers its example as Excel calls it", () => {
  for (const fn of registry) {
    const given = positional(fn, fn.example.args);
    const got = excelFunction(fn, new Ledger())(...given, new InvocationContext(`Sheet1!A1`));
    if (typeof fn.example.gives === "number") {
      expect(Math.abs((got as number) - fn.example.gives), fn.name).toBeLessThanOrEqual(fn.example.within + 1e-12);
    } else expect(typeof got, fn.name).toBe(typeof fn.example.gives);
  }
});

describe("an answer that comes later", () => {
  const later =
    (ms: number): Answer =>
    (fn, raw) =>
      new Promise((done) => setTimeout(() => done(invoke(fn, raw)), ms));

  test("is a promise that keeps the value, and the ledger has the call when it is there", async () => {
    const ledger = new Ledger();
    const given = excelFunction(sum, ledger, later(5))(1, 2, new InvocationContext("Wall!A1"));
    expect(given).toBeInstanceOf(Promise);
    expect(ledger.size).toBe(0);
    expect(await given).toBe(3);
    expect(ledger.at({ sheet: "Wall", row: 0, column: 0 })?.calls).toHaveLength(1);
  });

  test("a refusal rejects it with the host's own error", async () => {
    vi.stubGlobal("CustomFunctions", {
      Error: HostError,
      ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
    });
    const given = excelFunction(sum, new Ledger(), later(1))(101, new InvocationContext("Wall!A1"));
    await expect(given).rejects.toMatchObject({ code: "#N/A", message: expect.stringContaining("101") });
    await expect(given).rejects.toBeInstanceOf(HostError);
  });

  test("the ledger keeps the order in which calls began, not that in which answers came", async () => {
    const ledger = new Ledger();
    const slow = excelFunction(sum, ledger, later(20))(1, 2, new InvocationContext("Wall!A1"));
    const quick = excelFunction(sum, ledger, later(1))(3, 4, new InvocationContext("Wall!A1"));
    await Promise.all([slow, quick]);
    const calls = ledger.at({ sheet: "Wall", row: 0, column: 0 })?.calls.map(({ args }) => args);
    expect(calls).toEqual([
      [1, 2],
      [3, 4],
    ]);
  });
});
