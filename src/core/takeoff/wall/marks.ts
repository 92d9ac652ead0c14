/**
 * Short marks of walls, to be written on their pieces: the fewest first letters that tell each wall from the others, in capitals. A name that
 * begins another one is its own mark.
 */
export function marksOf(names: readonly string[]): readonly string[] {
  const folded = names.map((name) => name.trim().toUpperCase());
  return folded.map((name, i) => {
    for (let n = 1; n < name.length; n++) {
      const start = name.slice(0, n);
      if (!start.endsWith(" ") && folded.every((other, k) => k === i || !other.startsWith(start))) return start;
    }
    return name;
  });
}
