import { expect, test } from "vitest";
import { Effort } from "../../../src/core/cutting/engine/effort.ts";
import { sheetModel } from "../../../src/core/cutting/sheets/plan/model.ts";
import { BeamSearch } from "../../../src/core/cutting/sheets/search/beam-search.ts";
import { Random } from "../../../src/core/kit/random.ts";

test("a beam that can take no first step ends, and leaves the effort to others", () => {
  const part = (id: string, side: number) => ({ id, lengthIn: side, widthIn: side, quantity: 1, turns: false });
  const stock = { id: "sheet", lengthIn: 100, widthIn: 100, cost: 1, quantity: null };
  // either part wastes more of the one sheet than the area to spare
  const model = sheetModel([part("a", 60), part("b", 55)], [stock], { kerfIn: 0, trimIn: 0, goal: "sheets" });
  const effort = new Effort(1_000_000);
  expect(new BeamSearch(model).reach([0], new Random(1), effort)).toBeUndefined();
  expect(effort.remaining).toBeGreaterThan(990_000);
});
