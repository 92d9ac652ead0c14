import { BadInput } from "../kit/refusal.ts";
import { parseLength } from "../units/length.ts";
import { fromInches } from "../units/quantity.ts";
import { clipped, folded } from "../units/text.ts";

/** Longer than any sheet or panel that is made: a size above it was written in inches. */
const LONGEST_SIDE_FT = 80;

/**
 * Reads the size of a sheet or panel: `4x8`, `4' x 8'`, `48 in x 96 in`, `48 x 96 in`, `1220 x 2440 mm`. A bare side takes the unit
 * of the other one, else feet.
 * @returns the two sides in feet, in the order written
 * @throws BadInput when the text is no size
 */
export function parseSheetSize(text: string): readonly [number, number] {
  const sides = folded(text)
    .split(/x|×|\*|\bby\b/i)
    .map((side) => side.trim());
  const [first, second] = sides;
  if (sides.length !== 2 || first === undefined || second === undefined) throw notASize(text);
  const unit = /[^\d\s./-].*$/.exec(second)?.[0] ?? "";
  const bare = /^[\d\s./-]+$/;
  const a = fromInches(parseLength(bare.test(first) ? `${first} ${unit}`.trim() : first, "ft"), "ft");
  const b = fromInches(parseLength(second, "ft"), "ft");
  for (const side of [a, b]) {
    if (side <= 0) throw notASize(text);
    if (side > LONGEST_SIDE_FT) {
      throw new BadInput(
        `The sheet ${clipped(text)} has a side of ${side} ft`,
        "sizes are in feet unless the text names another unit",
        "Write inches with their unit, such as 48 x 96 in",
      );
    }
  }
  return [a, b];
}

function notASize(text: string): BadInput {
  return new BadInput(
    `"${clipped(text)}" is not the size of a sheet`,
    "a size is two sides above 0 with an x between them",
    "Write it like 4x8, 4' x 8', 48 x 96 in or 1220 x 2440 mm",
  );
}
