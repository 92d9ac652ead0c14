import { describe, expect, test, vi } from "vitest";
import { registry } from "../../../../src/functions/registry.ts";
import { HeadlessWorkbook } from "../../../../src/hosts/tryout/engine/headless.ts";
import { addressText } from "../../../../src/workbook/host.ts";
import { workbook } from "../sheet/sheet.ts";
import { grid } from "./probe.ts";

const open = (...given: Parameters<typeof workbook>) => HeadlessWorkbook.open(workbook(...given), [...registry, grid]);

describe("results in cells", () => {
  test("a number, a text, a spilled table, a blocked table, an error", async () => {
    const sheet = await open({
      Start: [
        ['=SILL.SLOPE("6:12")', "=SILL.FTIN(3)"],
        ["=SILL.GRID(2)"],
        // An empty text in a template leaves the cell free.
        [undefined, ""],
        ["=SILL.GRID(2)"],
        [undefined, "in the way"],
        ['=SILL.LENGTH("x")'],
      ],
    });
    expect(sheet.valueAt("Start!A1")).toBeCloseTo(26.56505, 5);
    expect(sheet.valueAt("Start!B1")).toBe("3'-0\"");
    expect(sheet.tableAt("Start!A2")).toEqual([
      [1, true, "", "6:12"],
      [2, false, "", "6:12"],
    ]);
    expect(sheet.valueAt("Start!A4")).toBe("#SPILL!");
    expect(sheet.valueAt("Start!A6")).toBe("#VALUE!");
    expect(sheet.valueAt("Start!A7")).toBeUndefined();
    sheet.dispose();
  });

  test("inside other functions", async () => {
    const sheet = await open({
      Start: [
        ["=SUM(SILL.GRID(3))", "=INDEX(SILL.GRID(3),2,4)", "=ROWS(SILL.GRID(3))"],
        ['=IFERROR(SILL.LENGTH("x"),"caught")', '=SILL.FTIN(SILL.LENGTH("3 ft")*2)'],
      ],
    });
    // TRUE and FALSE in a table are not added up.
    expect(sheet.valueAt("Start!A1")).toBe(6);
    expect(sheet.valueAt("Start!B1")).toBe("6:12");
    expect(sheet.valueAt("Start!C1")).toBe(3);
    expect(sheet.valueAt("Start!A2")).toBe("caught");
    expect(sheet.valueAt("Start!B2")).toBe("6'-0\"");
    sheet.dispose();
  });

  test("what depends on a changed cell calculates again, through names, other sheets and spilled tables", async () => {
    const sheet = await open(
      {
        Basis: [
          ["Rows", 3],
          ["Slope", "6:12"],
        ],
        "Wall 1": [["=SILL.GRID(rows_wanted)"], [], [], [], ["=SUM(A1:A4)", "=SILL.SLOPE(Basis!B2)*2"]],
      },
      [["rows_wanted", "Basis!$B$1"]],
    );
    expect(sheet.valueAt("'Wall 1'!A5")).toBe(6);
    await sheet.set("Basis!B1", 4);
    expect(sheet.valueAt("'Wall 1'!A5")).toBe(10);
    expect(sheet.tableAt("'Wall 1'!A1")).toHaveLength(4);
    await sheet.set("Basis!B1", 2);
    expect(sheet.valueAt("'Wall 1'!A3")).toBeUndefined();
    await sheet.set("Basis!B2", "12:12");
    expect(sheet.valueAt("'Wall 1'!B5")).toBeCloseTo(90, 10);
    sheet.dispose();
  });
});

test("a name follows its cell when rows come in above it, and another cell when it is given one", async () => {
  const sheet = await open(
    {
      Basis: [
        ["Height", 3],
        ["Other", 7],
      ],
      Start: [["=SILL.FTIN(height)", "=height+SUM(height)"]],
    },
    [["height", "Basis!$B$1"]],
  );
  const results = () => [sheet.valueAt("Start!A1"), sheet.valueAt("Start!B1")];
  const basis = sheet.api.getActiveWorkbook()?.getSheetByName("Basis");
  basis?.insertRowBefore(0);
  await sheet.set("Basis!B2", 4);
  expect(results()).toEqual(["4'-0\"", 8]);
  await sheet.set("Basis!B1", 100);
  expect(results()).toEqual(["4'-0\"", 8]);
  sheet.api.getActiveWorkbook()?.getDefinedName("height")?.setRef("Basis!$B$3");
  await vi.waitFor(() => expect(results()).toEqual(["7'-0\"", 14]), 5000);
  sheet.dispose();
});

test("two workbooks alive at once calculate each with its own cells", async () => {
  const heights = [3, 7, 11];
  const sheets = await Promise.all(
    heights.map((height) =>
      open({ Basis: [["Height", height]], Start: [["=SUM(Basis!B1:B2)", "=SILL.FTIN(Basis!B1)"]] }),
    ),
  );
  const results = () => sheets.map((sheet) => [sheet.valueAt("Start!A1"), sheet.valueAt("Start!B1")]);
  expect(results()).toEqual([
    [3, "3'-0\""],
    [7, "7'-0\""],
    [11, "11'-0\""],
  ]);
  await sheets[1]?.set("Basis!B1", 20);
  await sheets[0]?.set("Basis!B2", 1);
  expect(results()).toEqual([
    [4, "3'-0\""],
    [20, "20'-0\""],
    [11, "11'-0\""],
  ]);
  for (const sheet of sheets) sheet.dispose();
});

describe("the ledger", () => {
  test("knows the cell, the arguments and the sentence of each call", async () => {
    const sheet = await open({ Basis: [], "Wall 1": [[], [undefined, '=SILL.LENGTH("x")']] });
    expect(sheet.ledger.entries()).toEqual([
      {
        address: { sheet: "Wall 1", row: 1, column: 1 },
        calls: [
          {
            id: "LENGTH",
            args: ["x"],
            outcome: {
              ok: false,
              code: "#VALUE!",
              said: expect.objectContaining({ what: expect.stringContaining("is not a length") }),
            },
          },
        ],
      },
    ]);
    sheet.dispose();
  });

  test("keeps all calls of a cell, of its last calculation only", async () => {
    const sheet = await open({ Start: [[1, '=SILL.LENGTH(A1)+SILL.LENGTH("2 ft")']] });
    const calls = () => sheet.ledger.at({ sheet: "Start", row: 0, column: 1 })?.calls.map((call) => call.args);
    expect(calls()).toEqual([[1], ["2 ft"]]);
    await sheet.set("Start!A1", 5);
    expect(calls()).toEqual([[5], ["2 ft"]]);
    await sheet.set("Start!B1", "=SILL.LENGTH(A1)");
    expect(calls()).toEqual([[5]]);
    sheet.dispose();
  });

  test("an error in a cell reaches the function, which says where it stands", async () => {
    const sheet = await open({ Start: [["osb", 0.5], ["eps", "=1/0"], ["=SILL.R_STACK(A1:B2)"]] });
    const [call] = sheet.ledger.at({ sheet: "Start", row: 2, column: 0 })?.calls ?? [];
    expect(sheet.valueAt("Start!A3")).toBe("#VALUE!");
    expect(call?.outcome).toMatchObject({ ok: false, said: { what: expect.stringMatching(/row 2.*#DIV\/0!/) } });
    sheet.dispose();
  });

  test("follows cells that move, sheets that get another name, and cells that are cleared", async () => {
    const sheet = await open({
      Start: [
        ["3 ft", "=SILL.LENGTH(A1)"],
        ["4 ft", "=SILL.LENGTH(A2)"],
      ],
    });
    const where = () => sheet.ledger.entries().map(({ address: a, calls }) => [a.sheet, a.row, calls[0]?.args[0]]);
    const start = () => sheet.api.getActiveWorkbook()?.getActiveSheet();
    start()?.insertRowBefore(1);
    await vi.waitFor(
      () =>
        expect(where()).toEqual([
          ["Start", 0, "3 ft"],
          ["Start", 2, "4 ft"],
        ]),
      5000,
    );
    start()?.setName("Wall 1");
    await vi.waitFor(
      () =>
        expect(where()).toEqual([
          ["Wall 1", 0, "3 ft"],
          ["Wall 1", 2, "4 ft"],
        ]),
      5000,
    );
    start()?.getRange("B1").clearContent();
    await vi.waitFor(() => expect(where()).toEqual([["Wall 1", 2, "4 ft"]]), 5000);
    start()?.deleteRow(2);
    await vi.waitFor(() => expect(where()).toEqual([]), 5000);
    sheet.dispose();
  });
});

test("of an IF the side that is taken is worked out: a function on the other side is not called and tells of no error", async () => {
  const sheet = await open({
    Start: [
      [0, '=IF(A1=0,1,SILL.LENGTH("x"))'],
      ["", '=IF(A2="","",SILL.LENGTH(A2))'],
      ["3 ft", '=IF(A3="","",SILL.LENGTH(A3))'],
      ['=IF(1/0,SILL.LENGTH("1 ft"),SILL.LENGTH("2 ft"))', '=SUM(IF({1;0},5,SILL.LENGTH("7 ft")))'],
    ],
  });
  expect(["B1", "B2", "B3", "A4", "B4"].map((cell) => sheet.valueAt(`Start!${cell}`) ?? "")).toEqual([
    1,
    "",
    3,
    "#DIV/0!",
    12,
  ]);
  const called = () => sheet.ledger.entries().map(({ address }) => addressText(address));
  expect(called()).toEqual(expect.arrayContaining(["Start!B3", "Start!B4"]));
  expect(called()).not.toContain("Start!B1");
  expect(called()).not.toContain("Start!B2");
  await sheet.set("Start!A1", 1);
  expect(sheet.valueAt("Start!B1")).toBe("#VALUE!");
  expect(called()).toContain("Start!B1");
  // The error is gone, and its sentence with it.
  await sheet.set("Start!A1", 0);
  expect(sheet.valueAt("Start!B1")).toBe(1);
  expect(called()).not.toContain("Start!B1");
  sheet.dispose();
});

test("the largest and the least of what fits are 0 where nothing does, and may be calculated with", async () => {
  const sheet = await open({
    Start: [
      ["south", 4, '=MAXIFS(B1:B3,A1:A3,"west")', "=C1+1"],
      ["south", 0, '=MINIFS(B1:B3,A1:A3,"south")', '=MINIFS(B1:B3,A1:A3,"west")-2'],
      ["north", 7, '=MAXIFS(B1:B3,A1:A3,"south")', '=SUM(MAXIFS(B1:B3,A1:A3,{"south";"north"}))'],
    ],
  });
  expect(["C1", "D1", "C2", "D2", "C3", "D3"].map((cell) => sheet.valueAt(`Start!${cell}`))).toEqual([
    0, 1, 0, -2, 4, 11,
  ]);
  sheet.dispose();
});
