const SPOKEN = new Map<string, string>();

/** A parameter's name as a sentence says it: insideFilm -> inside film */
export function spoken(name: string): string {
  const known = SPOKEN.get(name);
  if (known !== undefined) return known;
  const words = inWords(name);
  SPOKEN.set(name, words);
  return words;
}

function inWords(name: string): string {
  return name.replace(/[a-z][A-Z](?![A-Z])/g, (pair) => `${pair[0]} ${pair[1]?.toLowerCase()}`);
}

/** The name of a term's argument: "mean roof height" -> meanRoofHeight, "ASCE 7 edition" -> asce7Edition */
export function keyOfTerm(term: string): string {
  const [first = "", ...rest] = term.split(/[ -]/);
  return first.toLowerCase() + rest.map((word) => word.charAt(0).toUpperCase() + word.slice(1)).join("");
}
