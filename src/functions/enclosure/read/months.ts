import { MONTH_NAMES } from "../../../core/enclosure/climate/climate.ts";
import { BadInput } from "../../../core/kit/refusal.ts";

/** Refuses anything but twelve rows; names that are months must be in their order. */
export function checkMonths(rows: readonly { readonly row: number; readonly name: string }[]): void {
  if (rows.length !== 12) {
    throw new BadInput(
      `${rows.length} rows of months are given`,
      "a year is worked out from twelve months",
      "Give twelve rows, January to December, or one row that names a station or a condition",
    );
  }
  rows.forEach((r, i) => {
    const named = MONTH_NAMES.findIndex((m) => r.name.trim().toLowerCase().startsWith(m.toLowerCase()));
    if (named >= 0 && named !== i) {
      throw new BadInput(
        `Row ${r.row} is ${r.name} where ${MONTH_NAMES[i]} belongs`,
        "the months run from January to December",
        "Put the rows in the order of the calendar",
      );
    }
  });
}
