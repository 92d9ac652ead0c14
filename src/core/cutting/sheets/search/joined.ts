import type { Placed } from "../plan/layout.ts";

/** A rectangle without waste: a part, or two rectangles of one width or height joined along it. */
export interface Joined {
  readonly w: number;
  readonly h: number;
  /** whether it may be turned as a whole */
  readonly turns: boolean;
  /** type of a part; -1 for a rectangle that is joined */
  readonly type: number;
  /** the same for what is joined alike; a rare clash does no harm */
  readonly mark: number;
  readonly first?: Laid;
  readonly second?: Laid;
  /** the second stands above the first, else beside it */
  readonly above?: boolean;
}

export interface Laid {
  readonly of: Joined;
  readonly turned: boolean;
}

/** Rectangles by the widths (even keys) and heights (odd keys) that they can have. */
export class Sides {
  readonly rects = new Set<Joined>();
  /** what two rectangles or more have */
  readonly shared = new Map<number, Laid[]>();
  readonly #groups = new Map<number, Laid[]>();

  add(part: Joined): void {
    // equal parts are told apart
    const r = { ...part };
    this.rects.add(r);
    this.#put(2 * r.w, { of: r, turned: false });
    this.#put(2 * r.h + 1, { of: r, turned: false });
    if (!r.turns || r.w === r.h) return;
    this.#put(2 * r.h, { of: r, turned: true });
    this.#put(2 * r.w + 1, { of: r, turned: true });
  }

  remove(r: Joined): void {
    this.rects.delete(r);
    const keys = r.turns && r.w !== r.h ? [2 * r.w, 2 * r.h + 1, 2 * r.h, 2 * r.w + 1] : [2 * r.w, 2 * r.h + 1];
    for (const key of keys) {
      const group = this.#groups.get(key) ?? [];
      const at = group.findIndex((l) => l.of === r);
      if (at >= 0) group.splice(at, 1);
      if (group.length === 1) this.shared.delete(key);
    }
  }

  #put(key: number, side: Laid): void {
    const group = this.#groups.get(key);
    if (!group) this.#groups.set(key, [side]);
    else if (group.push(side) === 2) this.shared.set(key, group);
  }
}

/** A part as a rectangle. */
export const partOf = (t: { w: number; h: number; turns: boolean }, type: number): Joined => ({
  w: t.w,
  h: t.h,
  turns: t.turns,
  type,
  mark: Math.imul(type + 1, 0x9e3779b1),
});

const laid = ({ of, turned }: Laid): { w: number; h: number } => (turned ? { w: of.h, h: of.w } : { w: of.w, h: of.h });

export function joinedOf(first: Laid, second: Laid, above: boolean): Joined {
  const p = laid(first);
  const q = laid(second);
  const mark = first.of.mark + second.of.mark;
  return {
    w: above ? p.w : p.w + q.w,
    h: above ? p.h + q.h : p.h,
    turns: first.of.turns && second.of.turns,
    type: -1,
    mark: Math.imul((mark ^ (mark >>> 15)) + (above ? p.w : p.h), 0x85ebca6b),
    first,
    second,
    above,
  };
}

/** Lays the parts of a rectangle whose lower left corner is at x, y. */
export function lay({ of, turned }: Laid, x: number, y: number, placed: Placed[]): void {
  if (of.first === undefined || of.second === undefined) {
    placed.push({ type: of.type, x, y, turned });
    return;
  }
  const inner = (l: Laid): Laid => ({ of: l.of, turned: l.turned !== turned });
  const first = inner(of.first);
  const { w, h } = laid(first);
  lay(first, x, y, placed);
  if ((of.above === true) !== turned) lay(inner(of.second), x, y + h, placed);
  else lay(inner(of.second), x + w, y, placed);
}
