/** A piece of a formula line: plain, lowered or raised. */
export interface Piece {
  readonly text: string;
  readonly place: "line" | "sub" | "sup";
}

const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/(?<=[\w)\]]) [x*] (?=[\w([√])/g, " × "],
  [/<=/g, "≤"],
  [/>=/g, "≥"],
  [/\bsqrt(?=\()/g, "√"],
];

/** A typed formula line as it is set by hand: `R_T` lowers T, `V^2` raises 2, `a x b` takes a times sign. */
export function pieces(line: string): Piece[] {
  let text = line;
  for (const [from, to] of SIGNS) text = text.replace(from, to);
  const out: Piece[] = [];
  const push = (part: string, place: Piece["place"]) => {
    if (part !== "") out.push({ text: part, place });
  };
  // Only a short symbol takes an index: `framing_share` is a word, not a symbol with an index.
  const marks = /(?<=\b[A-Za-z\u0370-\u03ff]{1,2})_([A-Za-z0-9,]+)|\^(?:\(([^()]*)\)|([-−]?[\w.]+))/g;
  let end = 0;
  for (const match of text.matchAll(marks)) {
    push(text.slice(end, match.index), "line");
    if (match[1] !== undefined) push(match[1], "sub");
    else push(match[2] ?? match[3] ?? "", "sup");
    end = match.index + match[0].length;
  }
  push(text.slice(end), "line");
  return out;
}

/** A parameter's or column's name as words: framingShare as "framing share". */
export function words(name: string): string {
  return name
    .replace(/^asce7/, "ASCE 7")
    .replaceAll("_", " ")
    .replace(/(?<=[a-z\d])[A-Z](?![A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
}
