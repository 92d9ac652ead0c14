import { isBlank, isRange, type Raw, type RawArgument } from "../functions/declare/raw.ts";

type RawRange = readonly (readonly Raw[])[];

/** Ranges known before the ones that nothing holds any more are looked for. */
const SWEEP_AFTER = 512;

/**
 * Keeps equal ranges once, whoever hands them in: many cells look at the same rows, and a host gives each call a copy of its own. Blank rows and columns
 * at the end are left off. Holds nothing that nobody else holds.
 */
export class SharedRanges {
  readonly #known = new Map<number, WeakRef<RawRange>[]>();
  #added = 0;

  /** The argument itself, or in the place of a range one that is equal to it and known already. */
  share(argument: RawArgument): RawArgument {
    return isRange(argument) ? this.#shared(withoutBlankEnds(argument)) : argument;
  }

  #shared(range: RawRange): RawRange {
    const hash = hashOf(range);
    const alike = this.#known.get(hash) ?? [];
    for (const reference of alike) {
      const known = reference.deref();
      if (known !== undefined && isSame(known, range)) return known;
    }
    this.#known.set(hash, [...alike.filter((reference) => reference.deref() !== undefined), new WeakRef(range)]);
    if (++this.#added % SWEEP_AFTER === 0) this.#sweep();
    return range;
  }

  #sweep(): void {
    for (const [hash, references] of this.#known) {
      if (references.every((reference) => reference.deref() === undefined)) this.#known.delete(hash);
    }
  }
}

function withoutBlankEnds(range: RawRange): RawRange {
  let rows = range.length;
  while (rows > 1 && (range[rows - 1] ?? []).every(isBlank)) rows--;
  let columns = range[0]?.length ?? 0;
  while (columns > 1 && range.every((row) => isBlank(row[columns - 1]))) columns--;
  if (rows === range.length && columns === (range[0]?.length ?? 0)) return range;
  return range.slice(0, rows).map((row) => row.slice(0, columns));
}

/** Numbers and texts into 32 bits; unequal ranges of one hash are told apart by their cells. */
function hashOf(range: RawRange): number {
  let hash = range.length;
  const mix = (part: number): void => {
    hash = Math.imul(hash ^ part, 0x01000193);
  };
  for (const row of range) {
    for (const cell of row) {
      if (typeof cell === "number") {
        BITS.setFloat64(0, cell);
        mix(BITS.getInt32(0));
        mix(BITS.getInt32(4));
      } else {
        const text = typeof cell === "string" ? cell : JSON.stringify(cell ?? null);
        for (let i = 0; i < text.length; i++) mix(text.charCodeAt(i));
      }
    }
  }
  return hash;
}

const BITS = new DataView(new ArrayBuffer(8));

function isSame(a: RawRange, b: RawRange): boolean {
  return (
    a.length === b.length &&
    a.every((row, r) => row.length === b[r]?.length && row.every((cell, c) => sameCell(cell, b[r]?.[c])))
  );
}

function sameCell(a: Raw, b: Raw): boolean {
  if (Object.is(a, b)) return true;
  return typeof a === "object" && typeof b === "object" && JSON.stringify(a) === JSON.stringify(b);
}
