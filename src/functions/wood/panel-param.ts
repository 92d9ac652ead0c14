import { BadInput, plain } from "../../core/kit/refusal.ts";
import { convert } from "../../core/units/quantity.ts";
import { type Grain, PANEL_VALUES, type PanelValue, type PanelValues } from "../../core/wood/panel-case.ts";
import { optional, type Param } from "../declare/param.ts";
import { isNone, number } from "../declare/scalar.ts";
import { type RowOf, table } from "../declare/table.ts";
import { choice, text } from "../declare/word.ts";

const MOST = 1e10;
const positive = number({ says: "a value above 0, or none", above: 0, max: MOST });

/** A value above 0; `none` says that there is none of it, which a blank does not. */
const value: Param<number, number | string> = {
  ...positive,
  read: (raw, at, notes) => (isNone(raw) ? { value: 0, shown: "none" } : positive.read(raw, at, notes)),
};

const COLUMNS = {
  value: choice(PANEL_VALUES, {
    says: "which value",
    also: { "ib/q": "Q", t: "thickness", "bearing width": "support width", support: "support width" },
    heads: ["name", "property"],
  }),
  along: optional({ ...value, says: "where the panel spans along its face grain" }, undefined, ""),
  across: optional({ ...value, says: "where the panel spans across its face grain" }, undefined, ""),
  unit: optional(text({ says: "unit: psi, in4/ft, in3/ft, in2/ft, in" }), undefined, ""),
} as const;

type ValueRow = RowOf<typeof COLUMNS>;

/** A panel's values as its report gives them. */
export const panel = table(COLUMNS, {
  says: "the panel's values: value, along, across, unit; of a foot of width, from its evaluation report",
  maxRows: 30,
});

/** What a value can be in its own unit; outside it a unit or a decimal is wrong. */
const FACTS: Readonly<Record<PanelValue, { unit: string; min: number; max: number }>> = {
  E: { unit: "psi", min: 50_000, max: 5_000_000 },
  G: { unit: "psi", min: 500, max: 500_000 },
  Fb: { unit: "psi", min: 50, max: 10_000 },
  Fv: { unit: "psi", min: 5, max: 2000 },
  Fs: { unit: "psi", min: 5, max: 2000 },
  I: { unit: "in4/ft", min: 0.001, max: 5000 },
  S: { unit: "in3/ft", min: 0.005, max: 1000 },
  Q: { unit: "in2/ft", min: 0.2, max: 500 },
  C: { unit: "", min: 20, max: 500 },
  thickness: { unit: "in", min: 0.1, max: 24 },
  "support width": { unit: "in", min: 0.1, max: 24 },
};

const PREFIX = /^(?:x\s*)?10\^?6\s*/;

/** A row's factor to the unit that is counted in. @throws BadInput for another kind of unit */
function factorOf(row: ValueRow): number {
  const { unit } = FACTS[row.value];
  const given = (row.unit ?? "").trim().toLowerCase().replaceAll(" ", "");
  if (given === "" || given === unit || given === "-") return 1;
  if (unit === "psi") {
    const body = given.replace(PREFIX, "");
    return (body === given ? 1 : 1e6) * convert(1, body, "psi");
  }
  if (unit === "in") return convert(1, given, "in");
  throw new BadInput(
    `${row.value} in row ${row.row} of panel has the unit ${row.unit}`,
    `it is counted in ${unit === "" ? "no unit" : unit}`,
    `Convert it, and write ${unit} or nothing as unit`,
  );
}

/** Values that are the same both ways, so that one column is enough. */
const BOTH_WAYS: readonly PanelValue[] = ["thickness", "support width"];

/**
 * The panel's values in one direction.
 * @throws BadInput for a value given twice, in a wrong unit or far outside what panels have
 */
export function panelValues(rows: readonly ValueRow[], grain: Grain): PanelValues {
  const out: Partial<Record<PanelValue, number>> = {};
  for (const row of rows) {
    const other = grain === "along" ? row.across : row.along;
    const read = row[grain] ?? (BOTH_WAYS.includes(row.value) ? other : undefined);
    if (read === undefined) continue;
    if (out[row.value] !== undefined) {
      throw new BadInput(`${row.value} stands twice in panel`, "a value has one row", "Clear one of them");
    }
    out[row.value] = read === 0 ? 0 : checked(row, read * factorOf(row));
  }
  return out;
}

function checked(row: ValueRow, size: number): number {
  const { unit, min, max } = FACTS[row.value];
  if (size >= min && size <= max) return size;
  throw new BadInput(
    `${row.value} in row ${row.row} of panel is ${plain(size)} ${unit}`.trim(),
    `panels have from ${plain(min)} to ${plain(max)} ${unit}`.trim(),
    row.value === "E" ? "Write psi as 1600000, or 10^6 psi as unit" : "Check the value and its unit",
  );
}
