import type { Random } from "../../../kit/random.ts";
import { at } from "../../engine/at.ts";
import type { Layout, Placed } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";

/** Which free rectangle a part goes into. */
export const FIT_RULES = 4;
/** Which way the rest of the rectangle is cut. */
export const SPLIT_RULES = 6;

/** Kinds of free rectangles where the stages are limited; plus 1 where the strips run along the sheet. */
const WHOLE = 0;
const SHEET = 2;
const STRIP = 4;
const PIECE = 6;

/**
 * Places parts one by one into the free rectangles of the open sheets; each part is put into a corner and the rest is
 * cut edge to edge into two rectangles, so that every layout made here is a guillotine layout.
 */
export class SheetFill {
  readonly #model: SheetModel;
  #free = 0;
  readonly #fx: Int32Array;
  readonly #fy: Int32Array;
  readonly #fw: Int32Array;
  readonly #fh: Int32Array;
  readonly #fs: Int32Array;
  /** what the cuts so far leave open, where the stages are limited: see `putStaged` */
  readonly #fk: Int32Array;
  readonly #tw: Int32Array;
  readonly #th: Int32Array;
  readonly #tt: Int32Array;
  readonly #area: Float64Array;
  #stocks: number[] = [];
  /** placed parts: type, place, sheet */
  readonly #pt: Int32Array;
  readonly #px: Int32Array;
  readonly #py: Int32Array;
  readonly #pr: Int32Array;
  readonly #ps: Int32Array;
  placedCount = 0;
  /** rectangles looked at since the last `reset`, for the count of work */
  looked = 0;

  constructor(model: SheetModel) {
    this.#model = model;
    const room = 2 * model.total + 16;
    this.#fx = new Int32Array(room);
    this.#fy = new Int32Array(room);
    this.#fw = new Int32Array(room);
    this.#fh = new Int32Array(room);
    this.#fs = new Int32Array(room);
    this.#fk = new Int32Array(room);
    this.#pt = new Int32Array(room);
    this.#px = new Int32Array(room);
    this.#py = new Int32Array(room);
    this.#pr = new Int32Array(room);
    this.#ps = new Int32Array(room);
    this.#tw = Int32Array.from(model.types, (t) => t.w);
    this.#th = Int32Array.from(model.types, (t) => t.h);
    this.#tt = Int32Array.from(model.types, (t) => Number(t.turns));
    this.#area = Float64Array.from(model.types, (t) => t.area);
  }

  reset(): void {
    this.#free = 0;
    this.placedCount = 0;
    this.#stocks = [];
    this.looked = 0;
  }

  open(stock: number): void {
    const s = at(this.#model.stocks, stock);
    this.#push(0, 0, s.w, s.h, this.#stocks.length, WHOLE);
    this.#stocks.push(stock);
  }

  get sheetCount(): number {
    return this.#stocks.length;
  }

  /** Forgets the free rectangles, so that the next parts go into sheets opened from now on. */
  close(): void {
    this.#free = 0;
  }

  #push(x: number, y: number, w: number, h: number, sheet: number, kind = WHOLE): void {
    if (w <= 0 || h <= 0) return;
    const f = this.#free++;
    this.#fx[f] = x;
    this.#fy[f] = y;
    this.#fw[f] = w;
    this.#fh[f] = h;
    this.#fs[f] = sheet;
    this.#fk[f] = kind;
  }

  /** Puts one part of a type into the best free rectangle; false when none takes it. */
  place(type: number, fit: number, split: number, random: Random): boolean {
    const fw = this.#fw;
    const fh = this.#fh;
    const w0 = this.#tw[type] as number;
    const h0 = this.#th[type] as number;
    const area = w0 * h0;
    let best = -1;
    let bestScore = Number.POSITIVE_INFINITY;
    let turned = false;
    this.looked += this.#free;
    for (let turn = 0; turn <= (this.#tt[type] as number); turn++) {
      const w = turn ? h0 : w0;
      const h = turn ? w0 : h0;
      for (let f = 0; f < this.#free; f++) {
        const dw = (fw[f] as number) - w;
        const dh = (fh[f] as number) - h;
        if (dw < 0 || dh < 0) continue;
        let score: number;
        if (fit === 0) score = (fw[f] as number) * (fh[f] as number) - area;
        else if (fit === 1) score = Math.min(dw, dh);
        else if (fit === 2) score = Math.max(dw, dh);
        else score = dw === 0 || dh === 0 ? -1 : (fw[f] as number) * (fh[f] as number) - area;
        if (score < bestScore) {
          bestScore = score;
          best = f;
          turned = turn === 1;
        }
      }
    }
    if (best < 0) return false;
    this.#put(type, best, turned, split, random);
    return true;
  }

  /**
   * Serves the free rectangles, the smallest first: each takes the part that leaves the least beside or above it, of
   * those not far behind the first that fits in the given order; a rectangle that takes none is given up.
   * @returns how many parts are left, moved to the front of `items`
   */
  serve(items: Int32Array, n: number, reach: number, split: number, random: Random): number {
    const fw = this.#fw;
    const fh = this.#fh;
    const tw = this.#tw;
    const th = this.#th;
    const tt = this.#tt;
    let left = n;
    while (left > 0 && this.#free > 0) {
      let f = 0;
      let least = Number.POSITIVE_INFINITY;
      for (let k = 0; k < this.#free; k++) {
        const area = (fw[k] as number) * (fh[k] as number);
        if (area < least) {
          least = area;
          f = k;
        }
      }
      const rw = fw[f] as number;
      const rh = fh[f] as number;
      let best = -1;
      let bestRest = Number.POSITIVE_INFINITY;
      let turned = false;
      let seen = 0;
      let last = -1;
      for (let i = 0; i < left && seen < reach; i++) {
        const t = items[i] as number;
        if (t === last) continue;
        last = t;
        let fitted = false;
        for (let turn = 0; turn <= (tt[t] as number); turn++) {
          const dw = rw - (turn ? (th[t] as number) : (tw[t] as number));
          const dh = rh - (turn ? (tw[t] as number) : (th[t] as number));
          if (dw < 0 || dh < 0) continue;
          fitted = true;
          const rest = Math.min(dw, dh);
          if (rest < bestRest) {
            bestRest = rest;
            best = i;
            turned = turn === 1;
          }
        }
        if (fitted) seen++;
        if (bestRest === 0) break;
      }
      this.looked += left + this.#free;
      if (best < 0) {
        this.#remove(f);
        continue;
      }
      const type = items[best] as number;
      left--;
      for (let i = best; i < left; i++) items[i] = items[i + 1] as number;
      this.#put(type, f, turned, split, random);
    }
    return left;
  }

  #remove(f: number): void {
    const last = --this.#free;
    this.#fx[f] = this.#fx[last] as number;
    this.#fy[f] = this.#fy[last] as number;
    this.#fw[f] = this.#fw[last] as number;
    this.#fh[f] = this.#fh[last] as number;
    this.#fs[f] = this.#fs[last] as number;
    this.#fk[f] = this.#fk[last] as number;
  }

  #put(type: number, f: number, turned: boolean, split: number, random: Random): void {
    const w = turned ? (this.#th[type] as number) : (this.#tw[type] as number);
    const h = turned ? (this.#tw[type] as number) : (this.#th[type] as number);
    const x = this.#fx[f] as number;
    const y = this.#fy[f] as number;
    const rw = this.#fw[f] as number;
    const rh = this.#fh[f] as number;
    const sheet = this.#fs[f] as number;
    const kind = this.#fk[f] as number;
    const p = this.placedCount++;
    this.#pt[p] = type;
    this.#px[p] = x;
    this.#py[p] = y;
    this.#pr[p] = turned ? 1 : 0;
    this.#ps[p] = sheet;
    this.#remove(f);
    const dw = rw - w;
    const dh = rh - h;
    if (this.#model.stages !== undefined) {
      this.#putStaged(kind, x, y, rw, rh, w, h, sheet, split, random);
      return;
    }
    let full: boolean;
    // full: the strip beside the part keeps the full height (first cut across); else the strip above keeps the width
    if (split === 0) full = dw * rh >= dh * rw;
    else if (split === 1) full = dw * rh < dh * rw;
    else if (split === 2) full = dw >= dh;
    else if (split === 3) full = dw < dh;
    else if (split === 4) full = random.bits() >= 2147483648;
    else full = dw * h <= dh * w;
    if (full) {
      this.#push(x + w, y, dw, rh, sheet);
      this.#push(x, y + h, w, dh, sheet);
    } else {
      this.#push(x, y + h, rw, dh, sheet);
      this.#push(x + w, y, dw, h, sheet);
    }
  }

  /**
   * What is left of a rectangle where the stages are limited: the first cuts make strips, the second pieces of a strip, the
   * third cuts what lies above a part in its piece. What only a further stage could reach is given up.
   */
  #putStaged(
    kind: number,
    x: number,
    y: number,
    rw: number,
    rh: number,
    w: number,
    h: number,
    sheet: number,
    split: number,
    random: Random,
  ): void {
    let along = kind % 2 === 1;
    if (kind === WHOLE) along = split === 4 ? random.bits() >= 2147483648 : split % 2 === 0;
    const turn = along ? 1 : 0;
    const three = this.#model.stages === 3;
    const level = kind >> 1;
    if (level <= 1) {
      // a strip as high (wide) as the part: the rest of the sheet stays as it was
      if (along) {
        this.#push(x + w, y, rw - w, h, sheet, STRIP + turn);
        this.#push(x, y + h, rw, rh - h, sheet, SHEET + turn);
      } else {
        this.#push(x, y + h, w, rh - h, sheet, STRIP + turn);
        this.#push(x + w, y, rw - w, rh, sheet, SHEET + turn);
      }
    } else if (level === 2) {
      if (along) {
        this.#push(x + w, y, rw - w, rh, sheet, STRIP + turn);
        if (three) this.#push(x, y + h, w, rh - h, sheet, PIECE + turn);
      } else {
        this.#push(x, y + h, rw, rh - h, sheet, STRIP + turn);
        if (three) this.#push(x + w, y, rw - w, h, sheet, PIECE + turn);
      }
    } else if (along) this.#push(x, y + h, rw, rh - h, sheet, PIECE + turn);
    else this.#push(x + w, y, rw - w, rh, sheet, PIECE + turn);
  }

  /** What the placed parts are worth together. */
  worth(values: Float64Array): number {
    let sum = 0;
    for (let p = 0; p < this.placedCount; p++) sum += values[this.#pt[p] as number] as number;
    return sum;
  }

  /** The sheets opened since the last reset, empty ones too. */
  sheets(): FilledSheet[] {
    const sheets = this.#stocks.map((stock) => ({ stock, parts: [] as number[], filled: 0 }));
    for (let p = 0; p < this.placedCount; p++) {
      const sheet = at(sheets, this.#ps[p] as number);
      const type = this.#pt[p] as number;
      sheet.parts.push(type, this.#px[p] as number, this.#py[p] as number, this.#pr[p] as number);
      sheet.filled += this.#area[type] as number;
    }
    return sheets;
  }

  /** The same as layouts. */
  layouts(): Layout[] {
    return this.sheets().map(layoutOf);
  }
}

/** Numbers that say where one part lies. */
export const NUMBERS_A_PART = 4;

/**
 * A filled sheet: type, place and turn of each part one after the other in a plain array, since many more sheets are
 * filled than are kept.
 */
export interface FilledSheet {
  readonly stock: number;
  readonly parts: readonly number[];
  /** area of the parts */
  readonly filled: number;
}

export function layoutOf({ stock, parts }: FilledSheet): Layout {
  const placed: Placed[] = [];
  for (let i = 0; i < parts.length; i += NUMBERS_A_PART) {
    placed.push({ type: at(parts, i), x: at(parts, i + 1), y: at(parts, i + 2), turned: parts[i + 3] === 1 });
  }
  return { stock, placed };
}
