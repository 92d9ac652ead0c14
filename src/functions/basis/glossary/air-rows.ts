import { optional, type Param, type Usual } from "../../declare/param.ts";
import { humidity, temperature } from "../../declare/scalar.ts";
import { type ExampleRows, type RowOf, table } from "../../declare/table.ts";
import { text } from "../../declare/word.ts";

const columns = (says: string, usual: Usual) => ({
  name: text({ says, heads: ["month", "station", "place", "condition", "indoor", "climate"] }),
  temperature: optional(
    temperature({
      says: "mean temperature",
      min: -58,
      max: 212,
      source: "temperatures of buildings, -58 to 212 F",
      usual,
      heads: ["temp", "t", "mean temperature"],
    }),
    undefined,
    "",
  ),
  humidity: optional(
    humidity({
      says: "mean relative humidity",
      above: 0,
      source: "relative humidity is above 0 and at most 100 %",
      heads: ["rh", "relative humidity"],
    }),
    undefined,
    "",
  ),
});

export type AirRow = RowOf<ReturnType<typeof columns>>;

/** A name alone in one cell (a station, an indoor class), one condition, or twelve months of air. */
export const airRows = (
  says: string,
  namesAre: string,
  usual: Usual,
): Param<readonly AirRow[], ExampleRows | string | number> => table(columns(namesAre, usual), { says, maxRows: 12 });
