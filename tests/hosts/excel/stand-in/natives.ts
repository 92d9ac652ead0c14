/** The spreadsheet's own functions and signs, as far as the templates use them. Blank cells are null here. */
export interface CellError {
  readonly error: string;
}
export type Scalar = number | string | boolean | null | CellError;
export type Grid = readonly (readonly Scalar[])[];
export type Value = Scalar | Grid;

export const isGrid = (value: Value): value is Grid => Array.isArray(value);
export const isError = (value: Value): value is CellError =>
  typeof value === "object" && value !== null && !isGrid(value) && "error" in value;
export const error = (text: string): CellError => ({ error: text });

export function gridOf(value: Value): Grid {
  return isGrid(value) ? value : [[value]];
}

function scalarOf(value: Value): Scalar {
  return isGrid(value) ? (value[0]?.[0] ?? null) : value;
}

function numberOf(value: Scalar): number | CellError {
  if (isError(value)) return value;
  if (value === null || value === "") return value === "" ? error("#VALUE!") : 0;
  const number = Number(value);
  return Number.isFinite(number) ? number : error("#VALUE!");
}

function numbersIn(values: readonly Value[]): number[] | CellError {
  const found: number[] = [];
  for (const value of values) {
    for (const cell of gridOf(value).flat()) {
      if (isError(cell)) return cell;
      if (typeof cell === "number") found.push(cell);
    }
  }
  return found;
}

function sameText(a: Scalar, b: Scalar): boolean {
  const plain = (value: Scalar) => (value === null ? "" : typeof value === "string" ? value.toLowerCase() : value);
  if ((a === null && b === 0) || (a === 0 && b === null)) return true;
  return plain(a) === plain(b);
}

/** A sign between two values, cell by cell where one of them is a table. */
export function combine(sign: string, left: Value, right: Value): Value {
  if (!isGrid(left) && !isGrid(right)) return between(sign, left, right);
  const [a, b] = [gridOf(left), gridOf(right)];
  const rows = Math.max(a.length, b.length);
  const columns = Math.max(a[0]?.length ?? 0, b[0]?.length ?? 0);
  const cell = (grid: Grid, r: number, c: number): Scalar =>
    grid[grid.length === 1 ? 0 : r]?.[(grid[0]?.length ?? 0) === 1 ? 0 : c] ?? null;
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (_, c) => between(sign, cell(a, r, c), cell(b, r, c))),
  );
}

function between(sign: string, left: Scalar, right: Scalar): Scalar {
  if (isError(left)) return left;
  if (isError(right)) return right;
  if (sign === "&") return `${left ?? ""}${right ?? ""}`;
  if (sign === "=") return sameText(left, right);
  if (sign === "<>") return !sameText(left, right);
  if (/[<>]/.test(sign) && (typeof left === "string" || typeof right === "string")) {
    const [a, b] = [String(left ?? "").toLowerCase(), String(right ?? "").toLowerCase()];
    return { "<": a < b, ">": a > b, "<=": a <= b, ">=": a >= b }[sign] ?? false;
  }
  const [a, b] = [numberOf(left), numberOf(right)];
  if (typeof a !== "number") return a;
  if (typeof b !== "number") return b;
  if (sign === "/" && b === 0) return error("#DIV/0!");
  const results: Record<string, Scalar> = {
    "+": a + b,
    "-": a - b,
    "*": a * b,
    "/": a / b,
    "^": a ** b,
    "<": a < b,
    ">": a > b,
    "<=": a <= b,
    ">=": a >= b,
  };
  return results[sign] ?? error("#VALUE!");
}

/** IF of a table of flags: each cell from the one or the other, a single value or line for all. */
export function chosen(flags: Grid, yes: Value, no: Value): Value {
  const cell = (value: Value, r: number, c: number): Scalar => {
    const grid = gridOf(value);
    return grid[grid.length === 1 ? 0 : r]?.[(grid[0]?.length ?? 0) === 1 ? 0 : c] ?? null;
  };
  return flags.map((row, r) =>
    row.map((flag, c) => (isError(flag) ? flag : flag === true ? cell(yes, r, c) : cell(no, r, c))),
  );
}

/** Each cell through a function of one number. */
export function mapped(value: Value, work: (cell: Scalar) => Scalar): Value {
  return isGrid(value) ? value.map((row) => row.map(work)) : work(value);
}

function onNumber(work: (n: number) => number): (cell: Scalar) => Scalar {
  return (cell) => {
    const n = numberOf(cell);
    return typeof n === "number" ? work(n) : n;
  };
}

export const negated = onNumber((n) => -n);
export const hundredth = onNumber((n) => n / 100);

type Native = (...args: Value[]) => Value;

const overNumbers =
  (work: (numbers: number[]) => number): Native =>
  (...args) => {
    const numbers = numbersIn(args);
    return Array.isArray(numbers) ? work(numbers) : numbers;
  };

/** Whether a cell meets a criterion of SUMIF and its like; `*` stands for any text. */
function meets(criterion: Scalar): (cell: Scalar) => boolean {
  const [, sign, than] = /^([<>])(-?[\d.]+)$/.exec(typeof criterion === "string" ? criterion : "") ?? [];
  if (sign === ">") return (cell) => typeof cell === "number" && cell > Number(than);
  if (sign === "<") return (cell) => typeof cell === "number" && cell < Number(than);
  if (typeof criterion !== "string" || !criterion.includes("*")) return (cell) => sameText(cell, criterion);
  const pattern = new RegExp(`^${criterion.replace(/[.+?^${}()|[\]\\]/g, "\\$&").replaceAll("*", ".*")}$`, "i");
  return (cell) => typeof cell === "string" && pattern.test(cell);
}

/** The numbers of a range beside which every criterion is met: of MAXIFS(numbers, cells, criterion, cells, criterion). */
function numbersIf([numbers = null, ...rules]: readonly Value[]): number[] {
  const kept = rules.flatMap((cells, i) =>
    i % 2 === 1
      ? []
      : [
          gridOf(cells)
            .flat()
            .map(meets(scalarOf(rules[i + 1] ?? null))),
        ],
  );
  return gridOf(numbers)
    .flat()
    .filter((cell, i): cell is number => typeof cell === "number" && kept.every((rule) => rule[i] === true));
}

export const NATIVES: Readonly<Record<string, Native>> = {
  SUM: overNumbers((n) => n.reduce((a, b) => a + b, 0)),
  MAX: overNumbers((n) => (n.length === 0 ? 0 : Math.max(...n))),
  MIN: overNumbers((n) => (n.length === 0 ? 0 : Math.min(...n))),
  COUNT: (...args) => args.flatMap((arg) => gridOf(arg).flat()).filter((cell) => typeof cell === "number").length,
  AND: (...args) => args.flatMap((arg) => gridOf(arg).flat()).every((cell) => cell === true),
  SQRT: (value = null) => mapped(value, onNumber(Math.sqrt)),
  ISNUMBER: (value = null) => mapped(value, (cell) => typeof cell === "number"),
  SUMPRODUCT: overNumbers((n) => n.reduce((a, b) => a + b, 0)),
  ROWS: (value = null) => gridOf(value).length,
  MAXIFS: (...args) => Math.max(0, ...numbersIf(args)),
  MINIFS: (...args) => {
    const numbers = numbersIf(args);
    return numbers.length === 0 ? 0 : Math.min(...numbers);
  },
  SUMIFS: (...args) => numbersIf(args).reduce((a, b) => a + b, 0),
  ROUNDUP: (value = null) => mapped(value, onNumber(Math.ceil)),
  ABS: (value = null) => mapped(value, onNumber(Math.abs)),
  ROUND: (value = null, digits = 0) => {
    const scale = 10 ** Number(scalarOf(digits));
    return mapped(
      value,
      onNumber((n) => Math.round(n * scale) / scale),
    );
  },
  UPPER: (value = null) => mapped(value, (cell) => (isError(cell) ? cell : String(cell ?? "").toUpperCase())),
  LEFT: (value = null, count = 1) =>
    mapped(value, (cell) => (isError(cell) ? cell : String(cell ?? "").slice(0, Number(scalarOf(count))))),
  INDEX: (table = null, row = 0, column = 0) => {
    if (isError(table)) return table;
    const [r, c] = [Number(scalarOf(row)), Number(scalarOf(column))];
    const grid = gridOf(table);
    if (r > grid.length || c > (grid[0]?.length ?? 0)) return error("#REF!");
    const rows = r === 0 ? grid : [grid[r - 1] ?? []];
    const cells = rows.map((line) => (c === 0 ? line : [line[c - 1] ?? null]));
    return cells.length === 1 && cells[0]?.length === 1 ? (cells[0][0] ?? null) : cells;
  },
  VLOOKUP: (wanted = null, table = null, column = 1) => {
    if (isError(wanted)) return wanted;
    if (isError(table)) return table;
    return mapped(wanted, (one) => {
      const row = gridOf(table).find((line) => sameText(line[0] ?? null, one));
      return row === undefined ? error("#N/A") : (row[Number(scalarOf(column)) - 1] ?? 0);
    });
  },
  FILTER: (table = null, keep = null, none = error("#CALC!")) => {
    if (isError(table)) return table;
    const flags = gridOf(keep).flat();
    const failed = flags.find(isError);
    if (failed !== undefined) return failed;
    const rows = gridOf(table).filter((_, r) => flags[r] === true || flags[r] === 1);
    return rows.length === 0 ? none : rows;
  },
  CHOOSEROWS: (table = null, ...rows) => rows.map((row) => gridOf(table)[Number(scalarOf(row)) - 1] ?? []),
  SUMIF: (cells = null, criterion = null, sums = cells) => {
    const keep = meets(scalarOf(criterion));
    const amounts = gridOf(sums).flat();
    const kept = gridOf(cells)
      .flat()
      .map((cell, i) => (keep(cell) ? (amounts[i] ?? null) : null));
    return kept.reduce<number>((sum, cell) => (typeof cell === "number" ? sum + cell : sum), 0);
  },
  COUNTIF: (cells = null, criterion = null) =>
    gridOf(cells)
      .flat()
      .filter(meets(scalarOf(criterion))).length,
};
