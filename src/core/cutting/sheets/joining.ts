import { Random } from "../../kit/random.ts";
import type { Effort } from "../engine/effort.ts";
import type { Layout, Packing, Placed } from "./plan/layout.ts";
import type { SheetModel } from "./plan/model.ts";

const SEED = 4177;
/** How often a sheet found before is kept when the rest is joined anew. */
const KEEP = 0.75;
/** Sheets kept at most. */
const MOST_KEPT = 600;
/** A rectangle that fills so much of a sheet is a sheet, too. */
const NEARLY = 0.97;

/** A rectangle without waste: a part, or two rectangles of one width or height joined along it. */
interface Joined {
  readonly w: number;
  readonly h: number;
  /** whether it may be turned as a whole */
  readonly turns: boolean;
  /** type of a part; -1 for a rectangle that is joined */
  readonly type: number;
  readonly first?: Laid;
  readonly second?: Laid;
  /** the second stands above the first, else beside it */
  readonly above?: boolean;
}

interface Laid {
  readonly of: Joined;
  readonly turned: boolean;
}

/** Rectangles by the widths (even keys) and heights (odd keys) that they can have. */
class Sides {
  readonly rects = new Set<Joined>();
  /** what two rectangles or more have */
  readonly shared = new Map<number, Laid[]>();
  private readonly groups = new Map<number, Laid[]>();

  add(part: Joined): void {
    // equal parts are told apart
    const r = { ...part };
    this.rects.add(r);
    this.put(2 * r.w, { of: r, turned: false });
    this.put(2 * r.h + 1, { of: r, turned: false });
    if (!r.turns || r.w === r.h) return;
    this.put(2 * r.h, { of: r, turned: true });
    this.put(2 * r.w + 1, { of: r, turned: true });
  }

  remove(r: Joined): void {
    this.rects.delete(r);
    const keys = r.turns && r.w !== r.h ? [2 * r.w, 2 * r.h + 1, 2 * r.h, 2 * r.w + 1] : [2 * r.w, 2 * r.h + 1];
    for (const key of keys) {
      const group = this.groups.get(key)!;
      group.splice(
        group.findIndex((l) => l.of === r),
        1,
      );
      if (group.length === 1) this.shared.delete(key);
    }
  }

  private put(key: number, side: Laid): void {
    const group = this.groups.get(key);
    if (!group) this.groups.set(key, [side]);
    else if (group.push(side) === 2) this.shared.set(key, group);
  }
}

/**
 * Sheets without waste, from the bottom up: rectangles of one width or height are joined until they are as large as a
 * sheet (after P. Wang, Oper. Res. 31 (1983) 573-586, with nothing wasted). Parts that are made to fill sheets agree in
 * their sides more often than chance makes them, so the rarest agreement is joined first.
 */
export class Joining {
  private readonly model: SheetModel;
  private readonly random = new Random(SEED);
  private readonly parts: readonly Joined[];
  /** full sheets, by stock and parts */
  readonly harvest = new Map<string, Layout>();

  constructor(model: SheetModel) {
    this.model = model;
    this.parts = model.types.map((t, type) => ({ w: t.w, h: t.h, turns: t.turns, type }));
  }

  /** Joins again and again; a packing of full sheets alone where one is found. */
  search(effort: Effort): Packing | undefined {
    const { model } = this;
    const needs = model.types.map((t) => t.need);
    while (!effort.over) {
      const left = [...needs];
      const kept = this.keep(left);
      const rects = this.parts.flatMap((p, t) => new Array<Joined>(left[t]!).fill(p));
      const full = this.join(rects, effort);
      const used = model.stocks.map(() => 0);
      const layouts = [...kept, ...full.layouts];
      for (const l of layouts) used[l.stock]!++;
      if (full.left === 0 && used.every((n, s) => n <= model.stocks[s]!.limit)) {
        return { layouts, cost: layouts.reduce((sum, l) => sum + model.stocks[l.stock]!.cost, 0) };
      }
    }
    return undefined;
  }

  /** Some of the sheets found before that go together; takes their parts from `left`. */
  private keep(left: number[]): Layout[] {
    const { random } = this;
    const known = [...this.harvest.values()];
    const kept: Layout[] = [];
    for (let n = known.length; n > 0; n--) {
      const at = random.below(n);
      const l = known[at]!;
      known[at] = known[n - 1]!;
      if (random.unit() > KEEP) continue;
      const taken: number[] = [];
      for (const p of l.placed) {
        if (left[p.type] === 0) break;
        left[p.type]!--;
        taken.push(p.type);
      }
      if (taken.length === l.placed.length) kept.push(l);
      else for (const t of taken) left[t]!++;
    }
    return kept;
  }

  /** Joins what agrees until nothing does; the full sheets, and how many rectangles are left. */
  private join(parts: readonly Joined[], effort: Effort): { layouts: Layout[]; left: number } {
    const layouts: Layout[] = [];
    const sides = new Sides();
    const take = (r: Joined): void => {
      const l = this.sheetOf(r);
      if (l) layouts.push(l);
      else sides.add(r);
    };
    for (const r of parts) take(r);
    effort.spend(20 * parts.length);
    for (;;) {
      effort.spend(20 + 4 * sides.shared.size);
      const pair = this.agreement(sides);
      if (!pair) break;
      const { first, second, above } = pair;
      sides.remove(first.of);
      sides.remove(second.of);
      take(joinedOf(first, second, above));
    }
    const left = [...sides.rects];
    for (const r of left) this.nearly(r);
    return { layouts, left: left.length };
  }

  /** Two rectangles that agree in a side which few others have. */
  private agreement({ shared }: Sides): { first: Laid; second: Laid; above: boolean } | undefined {
    const { random } = this;
    let best: { first: Laid; second: Laid; above: boolean } | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const [key, group] of shared) {
      const rank = group.length * (0.3 + random.unit());
      if (rank >= least) continue;
      const i = random.below(group.length);
      const first = group[i]!;
      const second = group[(i + 1 + random.below(group.length - 1)) % group.length]!;
      const above = key % 2 === 0;
      if (first.of === second.of || !this.holds(first, second, above)) continue;
      least = rank;
      best = { first, second, above };
    }
    return best;
  }

  private holds(first: Laid, second: Laid, above: boolean): boolean {
    const { w, h, turns } = joinedOf(first, second, above);
    return this.model.stocks.some((s) => s.index >= 0 && ((w <= s.w && h <= s.h) || (turns && h <= s.w && w <= s.h)));
  }

  /** The sheet that a rectangle fills without waste. */
  private sheetOf(r: Joined): Layout | undefined {
    const stock = this.model.stocks.findIndex(
      (s) => s.index >= 0 && ((r.w === s.w && r.h === s.h) || (r.turns && r.h === s.w && r.w === s.h)),
    );
    if (stock < 0) return undefined;
    return this.kept(r, stock, r.w !== this.model.stocks[stock]!.w);
  }

  private nearly(r: Joined): void {
    this.model.stocks.forEach((s, stock) => {
      if (s.index < 0 || r.w * r.h < NEARLY * s.w * s.h) return;
      if (r.w <= s.w && r.h <= s.h) this.kept(r, stock, false);
      else if (r.turns && r.h <= s.w && r.w <= s.h) this.kept(r, stock, true);
    });
  }

  private kept(r: Joined, stock: number, turned: boolean): Layout {
    const placed: Placed[] = [];
    lay({ of: r, turned }, 0, 0, placed);
    const key = `${stock}:${placed.map((p) => p.type).sort((a, b) => a - b)}`;
    const known = this.harvest.get(key);
    if (known) return known;
    const made = { stock, placed };
    if (this.harvest.size < MOST_KEPT) this.harvest.set(key, made);
    return made;
  }
}

const laid = ({ of, turned }: Laid): { w: number; h: number } => (turned ? { w: of.h, h: of.w } : { w: of.w, h: of.h });

function joinedOf(first: Laid, second: Laid, above: boolean): Joined {
  const p = laid(first);
  const q = laid(second);
  return {
    w: above ? p.w : p.w + q.w,
    h: above ? p.h + q.h : p.h,
    turns: first.of.turns && second.of.turns,
    type: -1,
    first,
    second,
    above,
  };
}

/** Lays the parts of a rectangle whose lower left corner is at x, y. */
function lay({ of, turned }: Laid, x: number, y: number, placed: Placed[]): void {
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
