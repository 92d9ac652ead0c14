import { at } from "../../engine/at.ts";
import type { Column } from "../../engine/master.ts";
import type { Priced, PriceRequest, Pricer } from "../../engine/problem.ts";
import type { Placed } from "../plan/layout.ts";
import type { SheetModel } from "../plan/model.ts";

/** A column that knows where its parts lie. */
export interface SheetColumn extends Column {
  readonly placed: readonly Placed[];
}

/** Columns of a sheet from a placement list. */
export function sheetColumn(stock: number, cost: number, placed: readonly Placed[]): SheetColumn {
  const counts = new Map<number, number>();
  for (const p of placed) counts.set(p.type, (counts.get(p.type) ?? 0) + 1);
  const sorted = [...counts].sort(([a], [b]) => a - b);
  return { stock, cost, types: sorted.map(([t]) => t), counts: sorted.map(([, n]) => n), placed };
}

/** Cells looked at in the time of one unit of effort of a search. */
const STEPS_PER_UNIT = 6;
/** Plans of one pricing beside the best one. */
const MOST_PLANS = 6;

const work = ({ xs, ys, mirrored }: Grid): number =>
  (xs.length * ys.length * (xs.length + ys.length)) / (mirrored ? 8 : 4);

interface Grid {
  readonly xs: Int32Array;
  readonly ys: Int32Array;
  /** for each number of units, the grid column (row) of the largest point not above it */
  readonly toX: Int32Array;
  readonly toY: Int32Array;
  /** the smallest point not below it */
  readonly fromX: Int32Array;
  readonly fromY: Int32Array;
  /** whether turning everything by a quarter changes nothing */
  readonly mirrored: boolean;
}

const NONE = new Int32Array(0);
const NO_GRID: Grid = { xs: NONE, ys: NONE, toX: NONE, toY: NONE, fromX: NONE, fromY: NONE, mirrored: false };

/**
 * The most valuable guillotine pattern of any number of stages, parts without limit of number, by dynamic programming
 * over the sizes that combinations of parts can reach (J. Beasley, J. Oper. Res. Soc. 36 (1985) 297-306; reduced raster
 * points: G. Scheithauer, J. Terno 1996). Exact for that relaxation, so its value bounds every real pattern.
 */
export class GuillotinePricer implements Pricer {
  readonly #model: SheetModel;
  /** that of the stand-in is never priced and empty */
  readonly #grids: readonly Grid[];
  #value = new Float64Array(0);
  /** the same values, by rows of cells of one height */
  #flipped = new Float64Array(0);
  /** how each cell came about: part 2 t + turned as -2 - that; cut across at column index * 2, along * 2 + 1; -1 none */
  #how = new Int32Array(0);

  constructor(model: SheetModel) {
    this.#model = model;
    this.#grids = model.stocks.map((s) => (s.index < 0 ? NO_GRID : makeGrid(model, s.w, s.h)));
  }

  /** Elementary steps of one pricing over all stocks. */
  get work(): number {
    return this.#grids.reduce((sum, g) => sum + work(g), 0);
  }

  price({ values, stock, threshold, effort }: PriceRequest): Priced {
    const grid = at(this.#grids, stock);
    const { xs, ys } = grid;
    const nx = xs.length;
    const ny = ys.length;
    effort.spend(work(grid) / STEPS_PER_UNIT);
    if (this.#value.length < nx * ny) {
      this.#value = new Float64Array(nx * ny);
      this.#flipped = new Float64Array(nx * ny);
      this.#how = new Int32Array(nx * ny);
    }
    this.#singles(grid, values);
    this.#combine(grid);
    const most = this.#value[nx * ny - 1] as number;
    if (most <= threshold) return { columns: [], most };
    const { cost } = at(this.#model.stocks, stock);
    return { columns: this.#plans(grid, threshold).map((placed) => sheetColumn(stock, cost, placed)), most };
  }

  /** The best single part, at the smallest cell that holds it. */
  #singles(grid: Grid, values: Float64Array): void {
    const { xs, ys } = grid;
    const nx = xs.length;
    const ny = ys.length;
    const value = this.#value;
    const how = this.#how;
    value.fill(0, 0, nx * ny);
    how.fill(-1, 0, nx * ny);
    this.#model.types.forEach((t, i) => {
      for (let turn = 0; turn <= Number(t.turns); turn++) {
        const w = turn ? t.h : t.w;
        const h = turn ? t.w : t.h;
        if (w > (xs[nx - 1] as number) || h > (ys[ny - 1] as number)) continue;
        const cell = (grid.fromX[w] as number) * ny + (grid.fromY[h] as number);
        if ((value[cell] as number) < (values[i] as number)) {
          value[cell] = values[i] as number;
          how[cell] = -2 - (2 * i + turn);
        }
      }
    });
  }

  /** Best cut in each cell; smaller cells first. */
  #combine(grid: Grid): void {
    const { xs, ys, toX, toY } = grid;
    const nx = xs.length;
    const ny = ys.length;
    const value = this.#value;
    const flipped = this.#flipped;
    const how = this.#how;
    // where all is alike both ways, a cell is worth what its mirror image is
    const { mirrored } = grid;
    for (let x = 0; x < nx; x++) {
      const w = xs[x] as number;
      const row = x * ny;
      const last = mirrored ? x : ny - 1;
      for (let y = 0; y <= last; y++) {
        const h = ys[y] as number;
        const cell = row + y;
        const column = y * nx;
        let best = value[cell] as number;
        let way = how[cell] as number;
        if (y > 0 && (value[cell - 1] as number) > best) {
          best = value[cell - 1] as number;
          way = how[cell - 1] as number;
        }
        if (x > 0 && (flipped[column + x - 1] as number) > best) {
          best = flipped[column + x - 1] as number;
          way = how[cell - ny] as number;
        }
        for (let c = 0; c < x && 2 * (xs[c] as number) <= w; c++) {
          const other = toX[w - (xs[c] as number)] as number;
          if (other < 0) continue;
          const v = (flipped[column + c] as number) + (flipped[column + other] as number);
          if (v > best) {
            best = v;
            way = 2 * c;
          }
        }
        for (let c = 0; c < y && 2 * (ys[c] as number) <= h; c++) {
          const other = toY[h - (ys[c] as number)] as number;
          if (other < 0) continue;
          const v = (value[row + c] as number) + (value[row + other] as number);
          if (v > best) {
            best = v;
            way = 2 * c + 1;
          }
        }
        value[cell] = best;
        flipped[column + x] = best;
        how[cell] = way;
        if (mirrored && y < x) {
          value[column + x] = best;
          flipped[cell] = best;
          how[column + x] = this.#mirror(way);
        }
      }
    }
  }

  /** How the mirror image of a cell came about. */
  #mirror(way: number): number {
    if (way >= 0) return way ^ 1;
    if (way === -1 || !at(this.#model.types, (-2 - way) >> 1).turns) return way;
    return -2 - ((-2 - way) ^ 1);
  }

  /** The best plan, and the best of those with another first cut. */
  #plans(grid: Grid, threshold: number): Placed[][] {
    const { xs, ys, toX, toY } = grid;
    const value = this.#value;
    const nx = xs.length;
    const ny = ys.length;
    const first: Placed[] = [];
    this.#trace(grid, nx - 1, ny - 1, 0, 0, first);
    const cuts: { across: boolean; c: number; other: number; worth: number }[] = [];
    const add = (across: boolean, c: number, other: number, a: number, b: number): void => {
      if (other >= 0 && (value[a] as number) + (value[b] as number) > threshold)
        cuts.push({ across, c, other, worth: (value[a] as number) + (value[b] as number) });
    };
    const w = xs[nx - 1] as number;
    const h = ys[ny - 1] as number;
    for (let c = 0; 2 * (xs[c] as number) <= w; c++) {
      const other = toX[w - (xs[c] as number)] as number;
      add(true, c, other, c * ny + ny - 1, other * ny + ny - 1);
    }
    for (let c = 0; 2 * (ys[c] as number) <= h; c++) {
      const other = toY[h - (ys[c] as number)] as number;
      add(false, c, other, (nx - 1) * ny + c, (nx - 1) * ny + other);
    }
    cuts.sort((a, b) => b.worth - a.worth);
    const plans = [first];
    for (const { across, c, other } of cuts.slice(0, MOST_PLANS)) {
      const placed: Placed[] = [];
      this.#trace(grid, across ? c : nx - 1, across ? ny - 1 : c, 0, 0, placed);
      if (across) this.#trace(grid, other, ny - 1, xs[c] as number, 0, placed);
      else this.#trace(grid, nx - 1, other, 0, ys[c] as number, placed);
      plans.push(placed);
    }
    return plans;
  }

  #trace(grid: Grid, x: number, y: number, left: number, low: number, placed: Placed[]): void {
    const way = this.#how[x * grid.ys.length + y] as number;
    if (way === -1) return;
    if (way < -1) {
      const code = -2 - way;
      placed.push({ type: code >> 1, x: left, y: low, turned: (code & 1) === 1 });
      return;
    }
    const c = way >> 1;
    if (way & 1) {
      this.#trace(grid, x, c, left, low, placed);
      this.#trace(
        grid,
        x,
        grid.toY[(grid.ys[y] as number) - (grid.ys[c] as number)] as number,
        left,
        low + (grid.ys[c] as number),
        placed,
      );
    } else {
      this.#trace(grid, c, y, left, low, placed);
      this.#trace(
        grid,
        grid.toX[(grid.xs[x] as number) - (grid.xs[c] as number)] as number,
        y,
        left + (grid.xs[c] as number),
        low,
        placed,
      );
    }
  }
}

function makeGrid(model: SheetModel, w: number, h: number): Grid {
  const across = model.types.flatMap((t) => (t.turns ? [t.w, t.h] : [t.w]));
  const along = model.types.flatMap((t) => (t.turns ? [t.w, t.h] : [t.h]));
  const xs = rasterPoints(across, w);
  const ys = rasterPoints(along, h);
  return {
    xs,
    ys,
    toX: floorIndex(xs, w),
    toY: floorIndex(ys, h),
    fromX: ceilIndex(xs, w),
    fromY: ceilIndex(ys, h),
    mirrored: w === h && model.types.every((t) => t.turns || t.w === t.h),
  };
}

/** Reduced raster points: what combinations reach, seen from the far edge; the full size last. */
function rasterPoints(sizes: readonly number[], span: number): Int32Array {
  const reach = new Uint8Array(span + 1);
  reach[0] = 1;
  for (let x = 1; x <= span; x++) {
    for (const s of sizes) {
      if (s <= x && reach[x - s]) {
        reach[x] = 1;
        break;
      }
    }
  }
  const below = new Int32Array(span + 1);
  for (let x = 1; x <= span; x++) below[x] = reach[x] ? x : (below[x - 1] as number);
  const points = new Set<number>();
  for (let x = 0; x <= span; x++) if (reach[x]) points.add(below[span - x] as number);
  points.add(span);
  points.delete(0);
  return Int32Array.from(points).sort();
}

function floorIndex(points: Int32Array, span: number): Int32Array {
  const index = new Int32Array(span + 1).fill(-1);
  let cell = -1;
  for (let x = 0; x <= span; x++) {
    while (cell + 1 < points.length && (points[cell + 1] as number) <= x) cell++;
    index[x] = cell;
  }
  return index;
}

function ceilIndex(points: Int32Array, span: number): Int32Array {
  const index = new Int32Array(span + 1);
  let cell = 0;
  for (let x = 0; x <= span; x++) {
    while ((points[cell] as number) < x) cell++;
    index[x] = cell;
  }
  return index;
}
