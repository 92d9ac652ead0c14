import { Random } from "../../../kit/random.ts";
import type { Effort } from "../../engine/effort.ts";
import type { Layout, Packing, Placed } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";
import { type Joined, joinedOf, type Laid, lay, partOf, Sides } from "./joined.ts";

const SEED = 4177;
/** Sheets kept at most. */
const MOST_KEPT = 600;
/** A rectangle that fills so much of a sheet is a sheet, too. */
const NEARLY = 0.97;
/** Rectangles broken up before what agrees is joined again: at most so many that are no sheets. */
const MOST_BROKEN = 4;
/** How often a full sheet is broken up with them, and how often a piece of what is broken is broken further. */
const BREAK_SHEET = 0.25;
const BREAK_DEEPER = 0.4;
/** How many more rectangles than before may be left over, on average. */
const HEAT = 0.6;
/** How much less a join is liked each time it has led nowhere. */
const DISLIKE = 0.15;
/** Attempts that leave no fewer rectangles before all is broken up and joined anew. */
const PATIENCE = 1500;

interface Pair {
  readonly first: Laid;
  readonly second: Laid;
  readonly above: boolean;
}

/** A full sheet and the rectangle it is. */
interface Full {
  readonly of: Joined;
  readonly layout: Layout;
}

/**
 * Sheets without waste, from the bottom up: rectangles of one width or height are joined until they are as large as a
 * sheet (after P. Wang, Oper. Res. 31 (1983) 573-586, with nothing wasted). Parts that are made to fill sheets agree in
 * their sides more often than chance makes them, so the rarest agreement is joined first. Where nothing agrees any more
 * some rectangles are broken up and joined in another way; fewer rectangles are better, by annealing, and joins that
 * led nowhere are liked less.
 */
export class Joining {
  readonly #model: SheetModel;
  readonly #random = new Random(SEED);
  readonly #parts: readonly Joined[];
  /** how often a join was the last one of a rectangle that was left over, by the mark of the rectangle */
  readonly #disliked = new Map<number, number>();
  #sides = new Sides();
  #full: Full[] = [];
  #started = false;
  #least = Number.POSITIVE_INFINITY;
  #tries = 0;
  /** full sheets, by stock and parts */
  readonly harvest = new Map<string, Layout>();

  constructor(model: SheetModel) {
    this.#model = model;
    this.#parts = model.types.flatMap((t, type) => new Array<Joined>(t.need).fill(partOf(t, type)));
  }

  /** Joins, breaks and joins again, going on where it stopped; a packing of full sheets alone where one is found. */
  search(effort: Effort): Packing | undefined {
    while (!effort.over) {
      if (!this.#started) this.#begin(effort);
      else this.#attempt(effort);
      if (this.#sides.rects.size > 0) continue;
      const packing = this.#packing();
      this.#started = false;
      if (packing) return packing;
    }
    return undefined;
  }

  /** All full sheets, where the stock has so many. */
  #packing(): Packing | undefined {
    const { stocks } = this.#model;
    const layouts = this.#full.map((f) => f.layout);
    const used = stocks.map((_, s) => layouts.filter((l) => l.stock === s).length);
    if (stocks.some((s, i) => (used[i] ?? 0) > s.limit)) return undefined;
    return { layouts, cost: stocks.reduce((sum, s, i) => sum + s.cost * (used[i] ?? 0), 0) };
  }

  #begin(effort: Effort): void {
    this.#load(this.#parts, []);
    this.#started = true;
    this.#tries = 0;
    this.#join(effort);
    this.#least = this.#sides.rects.size;
  }

  #load(rects: Iterable<Joined>, full: readonly Full[]): void {
    this.#sides = new Sides();
    this.#full = [...full];
    for (const r of rects) this.#take(r);
  }

  #take(r: Joined): void {
    const layout = this.#sheetOf(r);
    if (layout) this.#full.push({ of: r, layout });
    else this.#sides.add(r);
  }

  /** Breaks up a few rectangles and joins again; goes back where too many more are left over. */
  #attempt(effort: Effort): void {
    const random = this.#random;
    const before = [...this.#sides.rects];
    const full = this.#full;
    effort.spend(60 * before.length);
    this.#full = [...full];
    this.#breakUp(before);
    this.#join(effort);
    const now = this.#sides.rects.size;
    if (now < this.#least) {
      this.#least = now;
      this.#tries = 0;
    } else if (++this.#tries > PATIENCE) {
      this.#started = false;
      return;
    }
    if (now > before.length - HEAT * Math.log(1 - random.unit())) this.#load(before, full);
  }

  #breakUp(left: readonly Joined[]): void {
    const random = this.#random;
    const made = left.filter((r) => r.type < 0);
    const most = Math.min(made.length, 1 + random.below(MOST_BROKEN));
    for (let n = 0; n < most; n++) {
      const i = n + random.below(made.length - n);
      const r = made[i];
      const other = made[n];
      if (r === undefined || other === undefined) continue;
      made[i] = other;
      this.#sides.remove(r);
      this.#split(r);
    }
    if (this.#full.length === 0 || (most > 0 && random.unit() >= BREAK_SHEET)) return;
    const at = random.below(this.#full.length);
    const sheet = this.#full[at];
    if (sheet === undefined || sheet.of.type >= 0) return;
    this.#full.splice(at, 1);
    this.#split(sheet.of);
  }

  /** The two rectangles of one, some of them broken further. */
  #split(r: Joined): void {
    for (const laid of [r.first, r.second]) {
      if (laid === undefined) continue;
      const { of } = laid;
      if (of.type < 0 && this.#random.unit() < BREAK_DEEPER) this.#split(of);
      else this.#take(of);
    }
  }

  /** Joins what agrees until nothing does. */
  #join(effort: Effort): void {
    const sides = this.#sides;
    for (;;) {
      effort.spend(30 + 6 * sides.shared.size);
      const pair = this.#agreement();
      if (!pair) break;
      sides.remove(pair.first.of);
      sides.remove(pair.second.of);
      this.#take(joinedOf(pair.first, pair.second, pair.above));
    }
    for (const r of sides.rects) {
      if (r.type < 0) this.#disliked.set(r.mark, 1 + (this.#disliked.get(r.mark) ?? 0));
      this.#nearly(r);
    }
  }

  /** Two rectangles that agree in a side which few others have. */
  #agreement(): Pair | undefined {
    const random = this.#random;
    let best: Pair | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const [key, group] of this.#sides.shared) {
      const rank = group.length * (0.3 + random.unit());
      if (rank >= least) continue;
      const i = random.below(group.length);
      const first = group[i];
      const second = group[(i + 1 + random.below(group.length - 1)) % group.length];
      const above = key % 2 === 0;
      if (!first || !second || first.of === second.of) continue;
      const joined = joinedOf(first, second, above);
      const disliked = rank * (1 + DISLIKE * (this.#disliked.get(joined.mark) ?? 0));
      if (disliked >= least || !this.#holds(joined)) continue;
      least = disliked;
      best = { first, second, above };
    }
    return best;
  }

  #holds({ w, h, turns }: Joined): boolean {
    return this.#model.stocks.some((s) => s.index >= 0 && ((w <= s.w && h <= s.h) || (turns && h <= s.w && w <= s.h)));
  }

  /** The sheet that a rectangle fills without waste. */
  #sheetOf(r: Joined): Layout | undefined {
    const stock = this.#model.stocks.findIndex(
      (s) => s.index >= 0 && ((r.w === s.w && r.h === s.h) || (r.turns && r.h === s.w && r.w === s.h)),
    );
    return stock < 0 ? undefined : this.#kept(r, stock, r.w !== this.#model.stocks[stock]?.w);
  }

  #nearly(r: Joined): void {
    this.#model.stocks.forEach((s, stock) => {
      if (s.index < 0 || r.w * r.h < NEARLY * s.w * s.h) return;
      if (r.w <= s.w && r.h <= s.h) this.#kept(r, stock, false);
      else if (r.turns && r.h <= s.w && r.w <= s.h) this.#kept(r, stock, true);
    });
  }

  #kept(of: Joined, stock: number, turned: boolean): Layout {
    const placed: Placed[] = [];
    lay({ of, turned }, 0, 0, placed);
    const key = `${stock}:${placed.map((p) => p.type).sort((a, b) => a - b)}`;
    const known = this.harvest.get(key);
    if (known) return known;
    const made = { stock, placed };
    if (this.harvest.size < MOST_KEPT) this.harvest.set(key, made);
    return made;
  }
}
