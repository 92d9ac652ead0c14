import { expect, test } from "vitest";
import { Effort } from "../../../src/core/cutting/engine/effort.ts";
import { sheetModel } from "../../../src/core/cutting/sheets/plan/model.ts";
import { Joining } from "../../../src/core/cutting/sheets/search/joining.ts";
import { mayFill, planWithin } from "../../../src/core/cutting/sheets/search/stock-plans.ts";
import { plant } from "./planted.ts";

const options = { kerfIn: 0.125, trimIn: 0.25, goal: "cost" as const };
const sizes = [
  { l: 96, w: 48, cost: 42 },
  { l: 84, w: 36, cost: 28 },
];

test.each([1, 2, 3, 4, 5, 6])("sheets cut up without waste are put together again (%i)", (seed) => {
  const p = plant(seed, 6, sizes, 0.125, 0.25, true, 5);
  const model = sheetModel(p.parts, p.stocks, options);
  const found = new Joining(model).search(new Effort(2e7));
  const area = (l: { placed: readonly { type: number }[] }) =>
    l.placed.reduce((sum, q) => sum + (model.types[q.type]?.area ?? 0), 0);
  const size = (s: number) => (model.stocks[s]?.w ?? 0) * (model.stocks[s]?.h ?? 0);
  expect(found?.layouts.map(area)).toEqual(found?.layouts.map((l) => size(l.stock)));
  expect(found?.layouts.flatMap((l) => l.placed)).toHaveLength(p.parts.length);
  expect(mayFill(model, p.cost * 1e4)).toBe(true);
});

test("sheets on hand that are too few are not taken for enough", () => {
  const parts = [{ id: "p", lengthIn: 50, widthIn: 50, quantity: 3, turns: false }];
  const stocks = [{ id: "s", lengthIn: 50, widthIn: 50, cost: 1, quantity: 2 }];
  const model = sheetModel(parts, stocks, { ...options, kerfIn: 0, trimIn: 0 });
  expect(new Joining(model).search(new Effort(1e5))).toBeUndefined();
});

test("sets of sheets within a cost: by area, and by the largest part", () => {
  const stock = (id: string, lengthIn: number, cost: number) => ({ id, lengthIn, widthIn: 10, cost, quantity: null });
  const model = (...lengths: number[]) =>
    sheetModel(
      lengths.map((lengthIn) => ({ id: "p", lengthIn, widthIn: 10, quantity: 1, turns: false })),
      [stock("a", 10, 3), stock("b", 20, 5)],
      { ...options, kerfIn: 0, trimIn: 0 },
    );
  // 15 + 5 + 10 is as large as one of each, for 8, and no sheet of 10 takes 15
  expect(planWithin(model(15, 5, 10), 8e4)).toBe(true);
  expect(planWithin(model(15, 5, 10), 7e4)).toBe(false);
  expect(planWithin(model(15), 4e4)).toBe(false);
  expect(planWithin(model(15), 5e4)).toBe(true);
  expect(planWithin(model(10), 3e4)).toBe(true);
  expect(mayFill(model(15, 5, 10), 8e4)).toBe(true);
  expect(mayFill(model(15, 5, 10), 7e4)).toBe(false);
  expect(mayFill(model(15, 10), 9e4)).toBe(false);
});
