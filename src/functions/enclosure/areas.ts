import type { AreaPart } from "../../core/enclosure/loss/heat-loss.ts";
import { optional } from "../declare/param.ts";
import { number, quantity } from "../declare/scalar.ts";
import { type RowOf, table } from "../declare/table.ts";
import { text } from "../declare/word.ts";

const columns = {
  part: text({ says: "name of the part", heads: ["name", "component", "surface"] }),
  area: quantity("ft2", {
    says: "area",
    min: 0,
    max: 1e7,
    usual: { min: 1, max: 20_000, ask: "is it in square feet, or its cell blank?" },
    heads: ["ft2", "area ft2", "net", "net area"],
  }),
  U: quantity("Btu/(h ft2 F)", {
    says: "U-factor",
    above: 0,
    max: 10,
    usual: { min: 0.01, max: 1.3, ask: "is it a U-factor, and not an R-value?" },
    heads: ["u-factor", "u factor", "u-value"],
  }),
  codePart: optional(
    text({ says: "part of the code's table that it goes with, for UA_CODE", heads: ["code part", "code"] }),
    undefined,
    "",
  ),
  SHGC: optional(
    number({
      says: "solar heat gain coefficient of a window, for UA_CODE",
      above: 0,
      max: 1,
      source: "a share of the sun's heat, 0 to 1",
      heads: ["solar heat gain", "solar heat gain coefficient"],
    }),
    undefined,
    "",
  ),
};

export type AreaRow = RowOf<typeof columns>;

/** The areas table: part, area, U, the part of the code's table, and of windows the solar heat gain. */
export const areas = () =>
  table(columns, { says: "parts of the enclosure, one row each", maxRows: 1000, unlike: true });

export function areaParts(rows: readonly AreaRow[]): readonly AreaPart[] {
  return rows.map((r) => ({ name: r.part, areaFt2: r.area, u: r.U }));
}
