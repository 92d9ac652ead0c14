import { ifGiven, narrow, needed, orElse } from "../../../src/functions/basis/term.ts";
import { cellFunction, quantityOf, tableOf } from "../../../src/functions/declare/cell-function.ts";
import { optional } from "../../../src/functions/declare/param.ts";
import { number } from "../../../src/functions/declare/scalar.ts";
import { list, table } from "../../../src/functions/declare/table.ts";
import { text } from "../../../src/functions/declare/word.ts";

const rows = table(
  { name: text({ says: "a name" }), size: optional(number({ says: "a size", min: 0, max: 1e6 }), 0, "") },
  { says: "rows" },
);

/** A function with each kind of place; it says what it got. */
export const probe = cellFunction({
  name: "PROBE",
  family: "Wind",
  summary: "Says what it got.",
  params: { own: number({ says: "a number", min: 0, max: 1e6 }) },
  placed: {
    roofSlope: ifGiven("roof slope", "flat"),
    enclosure: orElse("enclosure"),
    kerf: orElse("kerf"),
    extra: optional(rows, [], "no rows"),
    values: optional(list(number({ says: "a value", min: 1, max: 100 }), { says: "values" }), [], "no values"),
  },
  named: {
    windSpeed: needed("wind speed"),
    asce7Edition: orElse("ASCE 7 edition"),
    membraneWaste: narrow("membrane waste", "waste"),
  },
  returns: tableOf("what it got", [
    ["what", ""],
    ["got", "ft"],
  ]),
  sources: ["exact arithmetic"],
  example: { args: { own: 1, windSpeed: 100 }, gives: [], within: 0, source: "exact arithmetic" },
  refuses: [{ args: {}, says: "" }],
  notFor: "none, because it is for tests.",
  run: (a) => [
    ["own", a.own],
    ["slope", a.roofSlope === undefined ? "none" : `${a.roofSlope}`],
    ["enclosure", a.enclosure],
    ["kerf", a.kerf],
    ["rows", `${a.extra.length}`],
    ["values", `${a.values.length}`],
    ["speed", `${a.windSpeed}`],
    ["edition", a.asce7Edition],
    ["waste", `${a.membraneWaste}`],
  ],
});

/** A required table, and one row for a result. */
export const rowProbe = cellFunction({
  name: "ROW_PROBE",
  family: "Wind",
  summary: "Counts rows.",
  params: { rows },
  placed: { columnSpacing: ifGiven("column spacing") },
  oneRow: true,
  returns: tableOf("a count", [
    ["count", ""],
    ["spacing", "in"],
  ]),
  sources: ["exact arithmetic"],
  example: { args: { rows: [["a", 1]] }, gives: [[1, 0]], within: 0, source: "exact arithmetic" },
  refuses: [{ args: {}, says: "" }],
  notFor: "none, because it is for tests.",
  run: (a) => [[a.rows.length, a.columnSpacing ?? 0]],
});

/** A length. */
export const lengthProbe = cellFunction({
  name: "LENGTH_PROBE",
  family: "Wind",
  summary: "A length.",
  params: {},
  placed: { eaveHeight: needed("eave height") },
  returns: quantityOf("ft", "the height"),
  sources: ["exact arithmetic"],
  example: { args: { eaveHeight: 11 }, gives: 11, within: 0, source: "exact arithmetic" },
  refuses: [{ args: {}, says: "" }],
  notFor: "none, because it is for tests.",
  run: (a) => a.eaveHeight,
});
