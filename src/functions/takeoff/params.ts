import type { Table, Tape } from "../../core/kit/tape.ts";
import type { OrderLine } from "../../core/takeoff/order.ts";
import { sheetSides } from "../basis/glossary/readers.ts";
import { columnsOf } from "../declare/columns.ts";
import type { Param } from "../declare/param.ts";
import { quantity } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";

/** What several takeoff functions take and give. */

export const PLANE = "Plane geometry";

/** An order, the same from every function that gives one. */
export const ORDER = columnsOf<OrderLine>(
  ["item", "", (l) => l.item],
  ["quantity", "", (l) => l.quantity],
  ["unit", "", (l) => l.unit],
  ["packs", "", (l) => l.packs],
  ["pack", "", (l) => l.pack],
);

export function orderOf(lines: readonly OrderLine[], tape: Tape | undefined): Table {
  return spill(ORDER, lines, "table", "item, quantity with waste, unit, packs, pack", tape);
}

/** Two sides of a board or sheet such as 4x8, in either order. */
export const boardSides: typeof sheetSides = {
  ...sheetSides,
  says: "size of one board or sheet, such as 4x8 or 48 x 96 in",
};

const areaOfSheet = quantity("ft2", {
  says: "area of one sheet",
  min: 0.1,
  max: 1000,
  usual: { min: 8, max: 400, ask: "is it the area of one sheet in square feet?" },
});

/** The size of a sheet as text (two sides), or its area in ft2. */
export const sheetArea: Param<number, number | string> = {
  ...areaOfSheet,
  says: "size of one sheet such as 4x8 or 48 x 96 in, or its area in ft2",
  read(raw, at, notes) {
    const cell = Array.isArray(raw) && raw.length === 1 && raw[0]?.length === 1 ? raw[0][0] : raw;
    if (typeof cell !== "string" || !/[x×*]|\bby\b/i.test(cell)) return areaOfSheet.read(raw, at, notes);
    const { value, shown } = sheetSides.read(cell, at, notes);
    return { value: value.widthFt * value.lengthFt, shown };
  },
};
