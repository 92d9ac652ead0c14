import { at } from "../../engine/at.ts";
import type { Placed } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";

/** A set of parts: what rectangles hold it, found once and kept. */
export interface PartSet {
  /** the last (largest) type of the set */
  readonly type: number;
  readonly size: number;
  readonly parent: PartSet | undefined;
  children: Map<number, PartSet> | undefined;
  /** the smallest rectangles that hold the set by guillotine cuts: widths ascending, heights descending; empty: none */
  w: number[];
  h: number[];
}

/** Largest set that is looked at exactly: its two-part divisions are all tried. */
export const MOST_PARTS = 8;

/**
 * Exact answer to "can these few parts be cut from one sheet by edge-to-edge cuts": for every set of parts the
 * staircase of smallest rectangles, made from the staircases of all its divisions into two sets laid side by side or
 * one above the other. Sets share what is known of their subsets.
 */
export class Stairs {
  readonly root: PartSet;
  readonly #model: SheetModel;
  readonly #boxes: readonly { w: number; h: number }[];
  readonly #maxArea: number;
  readonly #widest: number;
  readonly #tallest: number;
  readonly #nodes: PartSet[] = [];
  /** pairs of rectangles joined, for the count of work */
  work = 0;
  /** sets known */
  known = 0;

  constructor(model: SheetModel) {
    this.#model = model;
    this.#boxes = model.stocks.filter((s) => s.index >= 0);
    this.#maxArea = Math.max(...this.#boxes.map((b) => b.w * b.h));
    this.#widest = Math.max(...this.#boxes.map((b) => b.w));
    this.#tallest = Math.max(...this.#boxes.map((b) => b.h));
    this.root = { type: -1, size: 0, parent: undefined, children: undefined, w: [0], h: [0] };
  }

  #holds(w: number, h: number): boolean {
    if (w > this.#widest || h > this.#tallest) return false;
    if (this.#boxes.length === 1) return true;
    for (const b of this.#boxes) if (w <= b.w && h <= b.h) return true;
    return false;
  }

  /** The set that `set` becomes with one more part of a type not below its largest. */
  child(set: PartSet, type: number): PartSet {
    const known = set.children?.get(type);
    if (known) return known;
    this.known++;
    const made: PartSet = { type, size: set.size + 1, parent: set, children: undefined, w: [], h: [] };
    if (set.size === 0) this.#single(made);
    else if (set.w.length > 0) this.#divide(made);
    set.children ??= new Map();
    set.children.set(type, made);
    return made;
  }

  /** The set of the given types in ascending order. */
  of(types: readonly number[]): PartSet {
    let set = this.root;
    for (const t of types) set = this.child(set, t);
    return set;
  }

  /** The set with one more part of any type. */
  with(set: PartSet, type: number): PartSet {
    return set.type <= type ? this.child(set, type) : this.child(this.with(set.parent ?? this.root, type), set.type);
  }

  fits(set: PartSet, w: number, h: number): boolean {
    for (let i = 0; i < set.w.length; i++) if ((set.w[i] as number) <= w && (set.h[i] as number) <= h) return true;
    return false;
  }

  #single(set: PartSet): void {
    const t = at(this.#model.types, set.type);
    if (this.#holds(t.w, t.h)) insert(set, t.w, t.h);
    if (t.turns && this.#holds(t.h, t.w)) insert(set, t.h, t.w);
  }

  #divide(set: PartSet): void {
    const types: number[] = [];
    let area = 0;
    for (let s: PartSet | undefined = set; s && s.size > 0; s = s.parent) {
      types.push(s.type);
      area += at(this.#model.types, s.type).area;
    }
    if (area > this.#maxArea || types.length > MOST_PARTS) return;
    types.reverse();
    const n = types.length;
    for (let i = 0; i + 1 < n; i++) {
      // one part less at a time: a set with a subset that cannot be cut cannot be cut
      if (i > 0 && types[i] === types[i - 1]) continue;
      if (this.of(types.filter((_, j) => j !== i)).w.length === 0) return;
    }
    const all = 1 << n;
    const start = this.#nodes.length;
    this.#nodes[start] = this.root;
    for (let mask = 1; mask < all - 1; mask++) {
      const high = 31 - Math.clz32(mask);
      this.#nodes[start + mask] = this.child(at(this.#nodes, start + (mask & ~(1 << high))), types[high] as number);
    }
    for (let mask = 1; mask < all - 1; mask += 2) {
      const a = at(this.#nodes, start + mask);
      const b = at(this.#nodes, start + (all - 1 - mask));
      this.work += 4 + a.w.length * b.w.length;
      for (let i = 0; i < a.w.length; i++) {
        for (let j = 0; j < b.w.length; j++) {
          const w = (a.w[i] as number) + (b.w[j] as number);
          const h = Math.max(a.h[i] as number, b.h[j] as number);
          if (this.#holds(w, h)) insert(set, w, h);
          const h2 = (a.h[i] as number) + (b.h[j] as number);
          const w2 = Math.max(a.w[i] as number, b.w[j] as number);
          if (this.#holds(w2, h2)) insert(set, w2, h2);
        }
      }
    }
    this.#nodes.length = start;
  }

  /** Lays the set into w by h, which it fits: divides it again the same way. */
  lay(set: PartSet, w: number, h: number, x: number, y: number, placed: Placed[]): boolean {
    if (set.size === 1) {
      const t = at(this.#model.types, set.type);
      const upright = t.w <= w && t.h <= h;
      placed.push({ type: set.type, x, y, turned: !upright });
      return upright || (t.turns && t.h <= w && t.w <= h);
    }
    const types: number[] = [];
    for (let s: PartSet | undefined = set; s && s.size > 0; s = s.parent) types.push(s.type);
    types.reverse();
    const all = 1 << types.length;
    for (let mask = 1; mask < all - 1; mask += 2) {
      const a = this.of(types.filter((_, i) => mask & (1 << i)));
      const b = this.of(types.filter((_, i) => !(mask & (1 << i))));
      for (let i = 0; i < a.w.length; i++) {
        if ((a.w[i] as number) > w || (a.h[i] as number) > h) continue;
        if (this.fits(b, w - (a.w[i] as number), h)) {
          this.lay(a, a.w[i] as number, h, x, y, placed);
          return this.lay(b, w - (a.w[i] as number), h, x + (a.w[i] as number), y, placed);
        }
        if (this.fits(b, w, h - (a.h[i] as number))) {
          this.lay(a, w, a.h[i] as number, x, y, placed);
          return this.lay(b, w, h - (a.h[i] as number), x, y + (a.h[i] as number), placed);
        }
      }
    }
    return false;
  }
}

/** Adds a rectangle to a staircase unless one there is no larger; drops those it makes useless. */
function insert(set: PartSet, w: number, h: number): void {
  const ws = set.w;
  const hs = set.h;
  let place = 0;
  while (place < ws.length && (ws[place] as number) < w) place++;
  if (place > 0 && (hs[place - 1] as number) <= h) return;
  if (place < ws.length && ws[place] === w && (hs[place] as number) <= h) return;
  let end = place;
  while (end < ws.length && (hs[end] as number) >= h) end++;
  ws.splice(place, end - place, w);
  hs.splice(place, end - place, h);
}
