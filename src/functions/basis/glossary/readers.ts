import { type Duration, LOAD_DURATIONS } from "../../../core/kit/load-duration.ts";
import { BadInput, OutOfRange, plain } from "../../../core/kit/refusal.ts";
import { parseSheetSize } from "../../../core/takeoff/sheet-size.ts";
import { parseQuantity } from "../../../core/units/quantity.ts";
import { clipped } from "../../../core/units/text.ts";
import { capital, oneCell } from "../../declare/cell.ts";
import type { Param } from "../../declare/param.ts";
import { choice, text } from "../../declare/word.ts";

const durationWord = choice(LOAD_DURATIONS, {
  says: "duration of the shortest load of the combination",
  also: {
    dead: "permanent",
    "ten years": "live",
    "two months": "snow",
    "seven days": "construction",
    earthquake: "seismic",
    "ten minutes": "wind",
  },
});

/** The duration of a load as a word, or the factor CD itself. */
export const loadDuration: Param<Duration, Duration> = {
  ...durationWord,
  read(raw, at, notes) {
    const cell = oneCell(raw, at, "a duration such as snow or wind, or the factor CD");
    const factor =
      typeof cell === "number"
        ? cell
        : typeof cell === "string" && /^[\d.]+$/.test(cell.trim())
          ? Number(cell)
          : undefined;
    if (factor === undefined) return durationWord.read(raw, at, notes);
    if (factor >= 0.9 && factor <= 2) return { value: factor, shown: `CD ${plain(factor)}` };
    throw new OutOfRange(
      `${capital(at)} is ${plain(factor)}`,
      "CD lies from 0.9 to 2 (NDS 2018 Table 2.3.2)",
      "Give a word such as snow or wind, or the factor",
    );
  },
};

/** Names of limits, as the span over so much. */
const LIMIT_WORDS: ReadonlyMap<string, number> = new Map([
  ["floor", 360],
  ["roof", 240],
  ["wall flexible", 120],
  ["wall brittle", 240],
  ["wall plaster", 360],
]);

/** An allowed deflection: the span over this number. */
export const deflectionLimit: Param<number, string | number> = {
  kind: "text",
  unit: "",
  says: "allowed deflection: L/120 to L/600, or floor, roof, wall flexible, wall brittle, wall plaster",
  read(raw, at) {
    const wants = "L/180, L/240, L/360, or floor, roof, wall flexible, wall brittle, wall plaster";
    const cell = oneCell(raw, at, wants);
    const word = String(cell)
      .trim()
      .toLowerCase()
      .replace(/^l\s*\/\s*/, "");
    const over = LIMIT_WORDS.get(word) ?? (/^\d+(\.\d+)?$/.test(word) ? parseQuantity(word, "") : Number.NaN);
    if (Number.isNaN(over))
      throw new BadInput(`${capital(at)} is "${String(cell)}"`, `it must be ${wants}`, "Type one of these");
    if (over < 120 || over > 600) {
      throw new OutOfRange(
        `${capital(at)} is L/${plain(over)}`,
        "limits from L/120 to L/600 are known",
        "Give a limit inside that range",
      );
    }
    return { value: over, shown: `L/${plain(over)}` };
  },
};

/** Two sides of a sheet or panel such as 4x32, in either order: the short one is its width. */
export const sheetSides: Param<{ readonly widthFt: number; readonly lengthFt: number }, string> = {
  kind: "text",
  unit: "",
  says: "size of a sheet, such as 4x8 or 48 x 96 in",
  read(raw, at, notes) {
    const { value } = text({ says: "a size such as 4x8" }).read(raw, at, notes);
    const sides = parseSheetSize(value);
    const size = { widthFt: Math.min(...sides), lengthFt: Math.max(...sides) };
    return { value: size, shown: `${clipped(value)} = ${plain(size.widthFt)} x ${plain(size.lengthFt)} ft` };
  },
};
