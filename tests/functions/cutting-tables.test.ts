import { expect, test } from "vitest";
import { lengthStock, offcutStock, sheetStock } from "../../src/functions/cutting/tables.ts";

const silent = { assume: () => {}, caution: () => {} };
const NOTHING = [["none", 0, 0, 0, 0]];

test("a result that says nothing is left over is an empty stock", () => {
  expect(offcutStock.read(NOTHING, "offcuts", silent).value).toEqual([]);
  expect(offcutStock.read([["none", "", null, "", ""]], "offcuts", silent).value).toEqual([]);
  expect(() => sheetStock.read(NOTHING, "stock", silent)).toThrow(/no row that holds anything/);
  const rows = sheetStock.read([...NOTHING, ["plywood", 96, 48]], "stock", silent).value;
  expect(rows).toMatchObject([{ stock: "plywood", row: 2, price: undefined, onHand: undefined, trim: undefined }]);
});

test("a stock that is called none but has a size is a stock", () => {
  expect(lengthStock.read([["none", 96]], "stock", silent).value).toMatchObject([{ stock: "none", length: 96 }]);
});

test("headings name the columns in any order", () => {
  const rows = [
    ["stock", "number on hand", "length, in", "width (in)", "trim"],
    ["end", 2, 60, 40, 0.5],
  ];
  expect(sheetStock.read(rows, "stock", silent).value).toMatchObject([
    { stock: "end", onHand: 2, length: 60, width: 40, trim: 0.5 },
  ]);
});
