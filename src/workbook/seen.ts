/** The key under which a workbook keeps what its reader has ticked as seen. */
export const SEEN = "seen";

/**
 * Cautions that a reader has ticked, as a workbook keeps them: for each sentence a short mark and in how many cells it stood. A sentence that changes is
 * another one, and one that comes to stand in more cells is to be read again; the tick is then gone.
 */
export type Seen = ReadonlyMap<string, number>;

export interface Ticked {
  readonly sentence: string;
  readonly cells: number;
}

export function isSeen(seen: Seen, { sentence, cells }: Ticked): boolean {
  return (seen.get(markOf(sentence)) ?? 0) >= cells;
}

/** Ticked where it was not, and the other way round. */
export function tick(seen: Seen, caution: Ticked): Seen {
  const mark = markOf(caution.sentence);
  const next = new Map(seen);
  if (isSeen(seen, caution)) next.delete(mark);
  else next.set(mark, caution.cells);
  return next;
}

/** Without the ticks of cautions that are no longer there or have changed. */
export function stillThere(seen: Seen, cautions: readonly Ticked[]): Seen {
  const kept = cautions.filter((caution) => isSeen(seen, caution)).map(({ sentence }) => markOf(sentence));
  return new Map(kept.map((mark) => [mark, seen.get(mark) ?? 0]));
}

/** "1x2y3z:4 5a6b7c:1" */
export function seenText(seen: Seen): string {
  return [...seen].map(([mark, cells]) => `${mark}:${cells}`).join(" ");
}

/** What cannot be read is no tick. */
export function readSeen(text: string | undefined): Seen {
  return new Map(
    (text ?? "").split(" ").flatMap((part) => {
      const [, mark, cells] = /^([0-9a-z]+):(\d+)$/.exec(part) ?? [];
      return mark === undefined ? [] : [[mark, Number(cells)] as const];
    }),
  );
}

/** Two hashes of 32 bits: sentences of one workbook do not meet by chance. */
function markOf(sentence: string): string {
  let [a, b] = [0x811c9dc5, 0x9e3779b9];
  for (let i = 0; i < sentence.length; i++) {
    const code = sentence.charCodeAt(i);
    a = Math.imul(a ^ code, 0x01000193);
    b = Math.imul(b ^ code, 0x85ebca6b) ^ (b >>> 13);
  }
  return (a >>> 0).toString(36) + (b >>> 0).toString(36);
}
