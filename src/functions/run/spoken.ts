/** A parameter's name as a sentence says it: insideFilm -> inside film */
export function spoken(name: string): string {
  return name.replace(/[a-z][A-Z](?![A-Z])/g, (pair) => `${pair[0]} ${pair[1]?.toLowerCase()}`);
}
