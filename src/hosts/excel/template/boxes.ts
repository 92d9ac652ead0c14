/** A rectangle of cells that are alike; row and column count from 0. */
export interface Box<T> {
  readonly row: number;
  readonly column: number;
  rows: number;
  readonly columns: number;
  readonly of: T;
}

/**
 * Cells that are alike, gathered into rectangles, so that a host is asked once for many of them.
 * @param look what makes cells alike; undefined for one that is in no rectangle
 */
export function boxesOf<C, T>(
  rows: readonly (readonly (C | undefined)[])[],
  look: (cell: C) => T | undefined,
): Box<T>[] {
  const boxes: Box<T>[] = [];
  /** those that end in the row above, by place and look */
  let open = new Map<string, Box<T>>();
  rows.forEach((line, row) => {
    const next = new Map<string, Box<T>>();
    for (const run of runsOf(line, look)) {
      const key = `${run.column} ${run.columns} ${run.key}`;
      const above = open.get(key);
      const box = above ?? { row, column: run.column, rows: 0, columns: run.columns, of: run.of };
      box.rows++;
      if (above === undefined) boxes.push(box);
      next.set(key, box);
    }
    open = next;
  });
  return boxes;
}

interface Run<T> {
  readonly column: number;
  columns: number;
  readonly key: string;
  readonly of: T;
}

function runsOf<C, T>(line: readonly (C | undefined)[], look: (cell: C) => T | undefined): Run<T>[] {
  const runs: Run<T>[] = [];
  line.forEach((cell, column) => {
    const of = cell === undefined ? undefined : look(cell);
    if (of === undefined) return;
    const key = JSON.stringify(of);
    const last = runs.at(-1);
    if (last?.key === key && last.column + last.columns === column) last.columns++;
    else runs.push({ column, columns: 1, key, of });
  });
  return runs;
}
