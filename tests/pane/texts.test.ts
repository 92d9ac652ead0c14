import { expect, test } from "vitest";
import { ended } from "../../src/pane/parts/ended.ts";
import { pieces } from "../../src/pane/parts/notation.ts";

const set = (line: string) =>
  pieces(line)
    .map(({ text, place }) => (place === "sub" ? `[${text}]` : place === "sup" ? `{${text}}` : text))
    .join("");

test.each([
  ["R_T", "R[T]"],
  ["0.00256 Kz V^2", "0.00256 Kz V{2}"],
  ["2.01 (z/zg)^(2/alpha)", "2.01 (z/zg){2/alpha}"],
  ["10^-9", "10{-9}"],
  ["12 x length", "12 × length"],
  ["a <= b", "a ≤ b"],
  ["framing_share", "framing_share"],
  ["exterior x", "exterior x"],
])("%s", (line, shown) => expect(set(line)).toBe(shown));

test.each([
  ["the height is 700 ft", "The height is 700 ft."],
  ["Type one of these.", "Type one of these."],
  ["is it?", "Is it?"],
  ["", ""],
])("%s", (part, shown) => expect(ended(part)).toBe(shown));
