import type { Known } from "../kit/known.ts";
import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { askThin } from "../kit/thin-layer.ts";
import { partWeight } from "./part-weight.ts";
import { WEIGHTS, type Weight } from "./tables/dead.ts";

/** A part of the building that has weight. */
export interface DeadRow {
  readonly material: string;
  readonly thicknessIn: number | undefined;
  /** weight of this part as its row gives it, psf or a density such as "35 pcf"; wins over any table */
  readonly weight: string | undefined;
  /** row of the range, for sentences */
  readonly row: number;
}

/** A row of an office's own weights. */
export interface OwnWeight {
  readonly material: string;
  readonly psf: number | undefined;
  readonly psfPerIn: number | undefined;
}

const key = (name: string) => name.trim().toLowerCase().replace(/\s+/g, " ");

/**
 * Dead load of parts that lie on each other: each from its own figure, else an office's own weights, else the built-in ones.
 * @param slopeDeg of the parts: their weight along the slope is brought to the level by 1/cos; 0 leaves it
 * @returns psf
 * @throws BadInput for a part without weight, or a weight per inch without thickness
 * Source: as each row; the sum is arithmetic.
 */
export function deadLoad(rows: readonly DeadRow[], own: readonly OwnWeight[], slopeDeg: number, tape?: Tape): number {
  let sum = 0;
  for (const row of rows) {
    const { psf, source, known, says, byInch } = weightOf(row, own);
    if (byInch) askThin(`${row.material} in row ${row.row}`, row.thicknessIn ?? 0, tape);
    tape?.step(`D${row.row}`, `${row.material}: ${says}`, psf, "psf", source);
    if (known === "memory") {
      tape?.caution(
        `The weight of ${row.material} is from memory of ${source.split(",")[0]}: check it, or give your own.`,
      );
    }
    sum += psf;
  }
  if (slopeDeg === 0) {
    tape?.step("D", "sum", sum, "psf", "arithmetic");
    return sum;
  }
  const level = sum / Math.cos((slopeDeg * Math.PI) / 180);
  tape?.step("D along", "sum along the slope", sum, "psf", "arithmetic");
  tape?.step("D", "sum / cos(slope), on the level", level, "psf", "trigonometry");
  return level;
}

interface FoundWeight {
  readonly psf: number;
  readonly source: string;
  readonly known: Known;
  readonly says: string;
  /** it goes by the thickness of the row, and no sheet of metal is so light */
  readonly byInch: boolean;
}

function weightOf(row: DeadRow, own: readonly OwnWeight[]): FoundWeight {
  if (row.weight !== undefined) {
    return { ...partWeight(row.weight, row.thicknessIn, row.material), source: "given in the row", known: "read" };
  }
  const name = key(row.material);
  const mine = own.find((w) => key(w.material) === name);
  const found: Weight | undefined =
    mine === undefined
      ? WEIGHTS.find((w) => w.name === name)
      : {
          name,
          ...(mine.psf === undefined ? {} : { psf: mine.psf }),
          ...(mine.psfPerIn === undefined ? {} : { psfPerIn: mine.psfPerIn }),
          source: "own weights",
        };
  if (found === undefined) {
    throw new BadInput(
      `"${row.material}" in row ${row.row} has no weight`,
      `it is not among the own or built-in weights, such as ${nearest(name)}`,
      "Give its psf in the row, or add it to the own weights",
    );
  }
  const { source, known = "read" } = found;
  if (found.psf !== undefined) return { psf: found.psf, source, known, says: "whole part", byInch: false };
  if (found.psfPerIn !== undefined && row.thicknessIn !== undefined) {
    const says = `${plain(found.psfPerIn)} psf per inch x ${plain(row.thicknessIn)} in`;
    return { psf: found.psfPerIn * row.thicknessIn, source, known, says, byInch: true };
  }
  throw new BadInput(
    `"${row.material}" in row ${row.row} has no ${found.psfPerIn === undefined ? "weight" : "thickness"}`,
    found.psfPerIn === undefined
      ? "its row in the own weights holds neither psf nor psf per inch"
      : `its weight is ${plain(found.psfPerIn)} psf for each inch`,
    found.psfPerIn === undefined ? "Fill in one of the two" : "Give its thickness in inches",
  );
}

/** Names that share a word with what was typed, or a few common ones. */
function nearest(name: string): string {
  const words = name.split(" ").filter((w) => w.length > 3);
  const like = WEIGHTS.filter((w) => words.some((word) => w.name.includes(word))).map((w) => w.name);
  const some = like.length > 0 ? like : ["gypsum board", "plywood", "polystyrene foam", "asphalt shingles"];
  return some.slice(0, 4).join(", ");
}
