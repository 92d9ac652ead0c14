import { type CellFunction, cellFunction, tableOf } from "../../../../src/functions/declare/cell-function.ts";
import type { Param } from "../../../../src/functions/declare/param.ts";
import type { RawArgument } from "../../../../src/functions/declare/raw.ts";
import { number } from "../../../../src/functions/declare/scalar.ts";

const anything: Param<RawArgument, RawArgument> = {
  kind: "text",
  says: "anything",
  unit: "",
  read: (raw) => ({ value: raw, shown: "" }),
};

/** A function that gives back nothing but keeps what it was given, to see what the engine hands over. */
export function probe(): { fn: CellFunction; seen: () => RawArgument } {
  let seen: RawArgument;
  const fn = cellFunction({
    name: "PROBE",
    family: "Lengths and units",
    summary: "Keeps its argument.",
    params: { value: anything },
    returns: { kind: "number", unit: "", says: "1" },
    sources: ["none"],
    example: { args: { value: 1 }, gives: 1, within: 0, source: "exact arithmetic" },
    refuses: [{ args: {}, says: "" }],
    notFor: "none, because it is for tests.",
    run: ({ value }) => {
      seen = value;
      return 1;
    },
  });
  return { fn, seen: () => seen };
}

/** A function that gives a table of `rows` rows with a number, a truth value, a blank and a text in each. */
export const grid: CellFunction = cellFunction({
  name: "GRID",
  family: "Lengths and units",
  summary: "A table.",
  params: { rows: number({ says: "number of rows", min: 1, max: 1000 }) },
  returns: tableOf("rows", [
    ["row", ""],
    ["odd", ""],
    ["blank", ""],
    ["slope", ""],
  ]),
  sources: ["none"],
  example: { args: { rows: 1 }, gives: [[1, true, "", "6:12"]], within: 0, source: "exact arithmetic" },
  refuses: [{ args: {}, says: "" }],
  notFor: "none, because it is for tests.",
  run: ({ rows }) => Array.from({ length: rows }, (_, i) => [i + 1, i % 2 === 0, "", "6:12"]),
});
