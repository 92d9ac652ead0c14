import { BadInput } from "../../core/kit/refusal.ts";
import type { Cell } from "../../core/kit/tape.ts";
import { genericRows, VALUE_NAMES } from "../../core/wood/material.ts";
import { preliminary } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { ownValues, type ValuesRow, writtenOut } from "./material-param.ts";
import { GRADES_FROM_MEMORY } from "./params.ts";

/** A row as the sheet shows it: "" where a value is not known. */
type Listed = Readonly<Record<string, Cell>>;

const columns = columnsOf<Listed>(
  ["material", "", (r) => r.material ?? ""],
  ["kind", "", (r) => r.kind ?? ""],
  ["Fb", "psi", (r) => r.Fb ?? ""],
  ["Ft", "psi", (r) => r.Ft ?? ""],
  ["Fv", "psi", (r) => r.Fv ?? ""],
  ["Fcp", "psi", (r) => r.Fcp ?? ""],
  ["Fc", "psi", (r) => r.Fc ?? ""],
  ["E", "psi", (r) => r.E ?? ""],
  ["Emin", "psi", (r) => r.Emin ?? ""],
  ["G", "", (r) => r.G ?? ""],
);

function ownRow(row: ValuesRow): Listed {
  const listed: Record<string, Cell> = { material: row.material, kind: row.kind };
  for (const name of [...VALUE_NAMES, "G"] as const) if (row[name] !== undefined) listed[name] = row[name];
  return listed;
}

function generic(): Listed[] {
  return genericRows().map((row) => ({
    material: row.widthIn === undefined ? row.material : `${row.material}, ${row.widthIn} in wide`,
    kind: row.kind,
    ...row.values,
    ...(row.gravity === undefined ? {} : { G: row.gravity }),
  }));
}

const words = (name: string) =>
  name
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((w) => w !== "");

/** Whether a name holds all words; a number must stand there by itself, so that 1 does not find 10. */
function holds(name: string, find: readonly string[]): boolean {
  const has = words(name);
  return find.every((w) => has.some((h) => (/^\d/.test(w) ? h === w : h.includes(w))));
}

export const woodValues = familyFunction({
  name: "WOOD_VALUES",
  summary: "Reference design values of generic lumber grades and of an office's own materials.",
  params: {
    find: optional(text({ says: "words that the name must hold, as hem-fir No. 2" }), undefined, "every material"),
    values: ownValues,
  },
  placed: {},
  returns: columns.table("one row a material, own rows first; stresses before any factor"),
  sources: [GRADES_FROM_MEMORY],
  assumptions: [
    "Generic rows are before the size factor; southern pine has a row a width, with the size effect in it.",
    "Structural composite and glued laminated lumber have no generic row: take the values of the product's evaluation report.",
  ],
  cautions: [
    preliminary("wood member"),
    "Generic values are from memory of the NDS Supplement, not read in print: compare them with the printed table before use.",
  ],
  example: {
    args: { find: "hem-fir No. 2" },
    gives: [["hem-fir No. 2", "sawn", 850, 525, 150, 405, 1300, 1_300_000, 470_000, 0.43]],
    within: 0,
    source:
      "NDS Supplement 2018 Table 4A, from memory; 850 and 1,300,000 agree with spans printed in IRC 2018 Table R802.5.1(2)",
  },
  refuses: [
    { args: { find: "5" }, says: "species are Douglas fir-larch, hem-fir, spruce-pine-fir and southern pine" },
    { args: { values: [["x", 1, 1, 1, 1, 1, 1, 1, 1, 1]] }, says: "it must be one of sawn, LVL, PSL, LSL, glulam" },
  ],
  notFor:
    "Strengths for a stamped drawing come from the printed NDS Supplement or the product's report, not from memory.",
  run(a, tape) {
    const asked = a.find ?? "";
    const wanted = [words(asked), words(writtenOut(asked))];
    const all = [...a.values.map(ownRow), ...generic()];
    const found = all.filter((row) => wanted.some((find) => holds(String(row.material), find)));
    if (found.length === 0) {
      throw new BadInput(
        `No material's name holds "${a.find}"`,
        "species are Douglas fir-larch, hem-fir, spruce-pine-fir and southern pine",
        "Ask for fewer words, or add a row of your own values",
      );
    }
    const rows = columns.rows(found);
    tape?.step("values", "reference design values, psi", rows, "", GRADES_FROM_MEMORY);
    return rows;
  },
});
