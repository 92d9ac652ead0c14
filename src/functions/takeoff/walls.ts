import { BadInput } from "../../core/kit/refusal.ts";
import type { Opening } from "../../core/takeoff/wall/opening.ts";
import { checkWall, type OpenedWall, type Wall } from "../../core/takeoff/wall/wall.ts";
import { parseLength } from "../../core/units/length.ts";
import { capital } from "../declare/cell.ts";
import { optional, type Param } from "../declare/param.ts";
import { isRange, quote } from "../declare/raw.ts";
import { length, mapped, whole } from "../declare/scalar.ts";
import { type ExampleRows, type RowOf, table } from "../declare/table.ts";
import { choice, text } from "../declare/word.ts";

/** The tables of walls, openings and columns: one layout for one wall and for a whole house, the same in every function. */

/**
 * The name of a row, which is its first column. A length there is refused: the row was written without its name, and every number would be taken
 * for the one before it.
 */
export function rowName(o: { readonly says: string; readonly heads?: readonly string[] }): Param<string, string> {
  const inner = text(o);
  return {
    ...inner,
    read(raw, at, notes) {
      const cell = isRange(raw) ? raw[0]?.[0] : raw;
      if (Number.isFinite(cell) || (typeof cell === "string" && isMeasure(cell))) {
        throw new BadInput(
          `${capital(at)} is ${quote(cell)}`,
          `the first column is ${o.says}, not a number or a length`,
          'Put a name in front, such as "A1"',
        );
      }
      return inner.read(raw, at, notes);
    },
  } as Param<string, string>;
}

/** Whether a text is a length with its marks, such as 47'-9". */
function isMeasure(word: string): boolean {
  if (!/\d\s*(?:'|"|ft|in|mm|m)/i.test(word)) return false;
  try {
    return Number.isFinite(parseLength(word, "ft"));
  } catch (error) {
    if (error instanceof BadInput) return false;
    throw error;
  }
}

const WALLS = {
  wall: rowName({ says: "name of the wall", heads: ["walls", "name"] }),
  length: length("ft", {
    says: "length of the wall",
    min: 0.1,
    max: 2000,
    usual: { min: 0.5, max: 200, ask: "is it in feet?" },
  }),
  height: length("ft", {
    says: "height of the straight part; under a shed the height of the left end",
    min: 0.1,
    max: 100,
    usual: { min: 0.5, max: 30, ask: "is it in feet?" },
  }),
  rise: optional(
    length("ft", {
      says: "rise of a gable to its peak, or of a shed to its right end, below 0 where it falls",
      min: -100,
      max: 100,
      usual: { min: 0, max: 30, eitherSign: true, ask: "is it in feet?" },
      heads: ["gable rise"],
    }),
    0,
    "a level top",
  ),
  top: optional(
    choice(["gable", "shed"], {
      says: "shape of the top where there is a rise",
      means: { gable: "two rakes up to the middle", shed: "one slope from the left end to the right" },
      also: { monoslope: "shed" },
    }),
    "gable",
    "a gable",
  ),
};

const wallRows = table(WALLS, {
  says: "walls: wall | length | height | rise | top (gable or shed); lengths in ft or as text; one row for one wall",
  maxRows: 60,
});

/** One or more walls, or planes that are measured like them. */
export const walls: Param<readonly Wall[], ExampleRows> = mapped(wallRows, (rows, at) => {
  const twice = rows.find((w, i) => rows.findIndex((v) => key(v.wall) === key(w.wall)) !== i);
  if (twice !== undefined) {
    throw new BadInput(
      `The wall ${twice.wall} in row ${twice.row} of ${at} is there twice`,
      "columns and openings go by the name of their wall",
      "Give each wall its own name",
    );
  }
  return rows.map((row) => {
    const wall = { name: row.wall, lengthFt: row.length, heightFt: row.height, riseFt: row.rise, top: row.top };
    checkWall(wall);
    return wall;
  });
});

const OPENINGS = {
  opening: rowName({ says: "name of the opening", heads: ["name", "mark", "tag", "window", "door"] }),
  width: length("ft", {
    says: "width of the rough opening",
    min: 0.25,
    max: 100,
    usual: { min: 0.5, max: 24, ask: "is it in feet?" },
  }),
  height: length("ft", {
    says: "height of the rough opening",
    min: 0.25,
    max: 100,
    usual: { min: 0.5, max: 16, ask: "is it in feet?" },
  }),
  count: optional(
    whole({ says: "how many alike", min: 1, max: 10_000, heads: ["quantity", "qty", "number"] }),
    1,
    "one",
  ),
  sill: optional(
    length("ft", {
      says: "bottom of the opening above the foot of the wall, 0 for a door",
      min: 0,
      max: 100,
      heads: ["sill height"],
    }),
    undefined,
    "asked where it decides the result",
  ),
  left: optional(
    length("ft", {
      says: "left edge from the left end of the wall",
      above: 0,
      max: 2000,
      heads: ["left edge", "from left", "position"],
    }),
    undefined,
    "its place is not known",
  ),
  wall: optional(text({ says: "name of its wall, needed with several walls", heads: ["in wall"] }), "", "the one wall"),
};

const MOST_OPENINGS = 5000;

const openingRows = table(OPENINGS, {
  says: "openings, one a row: opening | width | height | count | sill | left | wall; lengths in ft or as text",
  maxRows: 1000,
});

type OpeningRow = RowOf<typeof OPENINGS>;

/** The openings of a wall or of a house. */
export const openings: Param<readonly OpeningRow[], ExampleRows> = mapped(openingRows, (rows, at) => {
  const total = rows.reduce((sum, r) => sum + r.count, 0);
  if (total > MOST_OPENINGS) {
    throw new BadInput(
      `${capital(at)} counts ${total} openings`,
      `at most ${MOST_OPENINGS} are worked with at once`,
      "Check the counts, or split the range",
    );
  }
  return rows;
});

export const someOpenings = optional<readonly OpeningRow[], ExampleRows>(openings, [], "no openings");

/** A row of openings in the words of the core. */
export function openingOf(row: OpeningRow): Opening {
  const { opening: name, width: widthFt, height: heightFt, count, sill: sillFt, left: leftFt } = row;
  return { name, widthFt, heightFt, count, sillFt, leftFt };
}

/**
 * Each wall with its openings.
 * @throws BadInput for an opening of a wall that is not there, or of none where there are several
 */
export function openedWalls(given: readonly Wall[], rows: readonly OpeningRow[]): readonly OpenedWall[] {
  checkNames(given, rows, "openings");
  const [only] = given.length === 1 ? given : [];
  const homeless = only === undefined ? rows.find((r) => r.wall === "") : undefined;
  if (homeless !== undefined) {
    throw new BadInput(
      `The opening ${homeless.opening} in row ${homeless.row} of openings names no wall`,
      `there are several: ${listed(given)}`,
      "Write the name of its wall in the column wall",
    );
  }
  return given.map((wall) => ({
    wall,
    openings: rows.filter((r) => wall === only || key(r.wall) === key(wall.name)).map(openingOf),
  }));
}

const COLUMNS = {
  wall: text({ says: "name of the wall", heads: ["walls"] }),
  position: length("ft", {
    says: "column line from the left end of the wall",
    min: 0,
    max: 2000,
    heads: ["column", "from left"],
  }),
  bay: optional(length("ft", { says: "bay to the column before, not looked at", min: 0, max: 2000 }), 0, ""),
  stands: optional(text({ says: "what it stands for, not looked at" }), "", ""),
};

/** Column lines of one or more walls, as WALL_COLUMNS gives them. */
export const columns = table(COLUMNS, {
  says: "column lines: wall | position in ft, both ends of each wall among them, as WALL_COLUMNS gives them",
  minRows: 2,
  maxRows: 4000,
});

/** Column lines of each wall, in the order of the walls. */
export function columnLines(
  given: readonly Wall[],
  rows: readonly RowOf<typeof COLUMNS>[],
): readonly (readonly number[])[] {
  checkNames(given, rows, "columns");
  return given.map((w) => rows.filter((r) => key(r.wall) === key(w.name)).map((r) => r.position));
}

function checkNames(
  given: readonly Wall[],
  rows: readonly { readonly wall: string; readonly row: number }[],
  range: string,
): void {
  const known = new Set(given.map((w) => key(w.name)));
  const stray = rows.find((r) => r.wall !== "" && !known.has(key(r.wall)));
  if (stray === undefined) return;
  throw new BadInput(
    `The wall ${stray.wall} in row ${stray.row} of ${range} is unknown`,
    `the walls are ${listed(given)}`,
    "Write the name as in the range of walls, or point at the rows of these walls alone",
  );
}

function listed(given: readonly Wall[]): string {
  return given.map((w) => w.name).join(", ");
}

function key(name: string): string {
  return name.trim().toLowerCase();
}
