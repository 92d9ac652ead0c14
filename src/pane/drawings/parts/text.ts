/** How wide a text will be, without a page to measure it on: a little more than it takes in the common interface typefaces. */

const NARROW = new Set("iljtfrI.,:;'|!()[]/\\ -·");
const WIDE = new Set("mwMW@%…—");

function em(character: string): number {
  if (NARROW.has(character)) return 0.36;
  if (WIDE.has(character)) return 0.95;
  if (/[A-Z&=+−<>]/.test(character)) return 0.7;
  return 0.61;
}

/** Width of a text in the unit of its size. */
export function textWidth(text: string, size: number): number {
  let width = 0;
  for (const character of text) width += em(character);
  return width * size;
}

/** The text, or as much of it as fits, ending in "…"; "" where not even one letter does. */
export function fitText(text: string, size: number, width: number): string {
  if (textWidth(text, size) <= width) return text;
  const letters = [...text];
  while (letters.length > 0) {
    letters.pop();
    const short = `${letters.join("").trimEnd()}…`;
    if (letters.length > 0 && textWidth(short, size) <= width) return short;
  }
  return "";
}

/** The text in lines of at most `width`, broken between words; what goes beyond `most` lines is cut off with "…". */
export function wrapText(text: string, size: number, width: number, most = 3): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter((w) => w !== "")) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && textWidth(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  const shown = lines.slice(0, most);
  if (lines.length > most) shown[most - 1] = `${shown[most - 1]} ${lines.slice(most).join(" ")}`;
  return shown.map((line) => fitText(line, size, width));
}
