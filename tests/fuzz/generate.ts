import { Random } from "../../src/core/kit/random.ts";
import { GLOSSARY } from "../../src/functions/basis/glossary/index.ts";
import type { CellFunction, NamedParam } from "../../src/functions/declare/cell-function.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import type { ParamFacts } from "../../src/functions/declare/param.ts";
import type { Raw, RawArgument } from "../../src/functions/declare/raw.ts";

/** The seed of one call: another for each function and each run of it. */
export function seedOf(name: string, seed: number, run: number): number {
  let hash = seed ^ Math.imul(run + 1, 0x9e3779b1);
  for (const c of name) hash = Math.imul(hash ^ c.charCodeAt(0), 0x01000193);
  return hash >>> 0;
}

const LONGEST = 32_767;

/** Cells that break things: what hosts send, what people paste, what attackers type. */
const ODD: readonly Raw[] = [
  null,
  undefined,
  0,
  -0,
  "",
  "   ",
  true,
  false,
  -1,
  1,
  0.5,
  12,
  100,
  1e-300,
  1e300,
  -1e15,
  2 ** 53,
  46_351,
  0.1 + 0.2,
  { error: "#DIV/0!" },
  { error: "#N/A" },
  { error: "#SPILL!" },
  "none",
  "12'-6 1/2\"",
  "12 ft 6.5 in",
  "3.8 m",
  "1,5",
  "1.234,5",
  "10%",
  "6:12",
  "26.6 deg",
  "20 C",
  "-40 F",
  "5 perm",
  "36 pcf",
  "1/0",
  "1e999",
  "0x1F",
  "NaN",
  "Infinity",
  "=1+1",
  "+SUM(A1)",
  "-2+3",
  "@cmd",
  "<img src=x onerror=alert(1)>",
  "<script>alert(1)</script>",
  "&lt;b&gt;",
  "__proto__",
  "constructor",
  "toString",
  "hasOwnProperty",
  "gypsum board",
  "plywood",
  "B",
  "7-22",
  "wall",
  "strength",
  "\u00a0",
  "\u200b",
  "\ufeff12",
  "１２",
  "½",
  "5′ 6″",
  "–3",
  "ß",
  "İ",
  "👷‍♀️",
  "\ud800",
  "مرحبا",
  "e\u0301",
  "a\nb",
  "a\tb",
  "'12",
  '"12"',
  "x".repeat(LONGEST),
  "9".repeat(LONGEST),
  " ".repeat(LONGEST),
  "1/".repeat(LONGEST / 2),
  "'\"".repeat(LONGEST / 2),
  "é".repeat(300),
];

const MANY_ROWS = 100_000;
const huge = new Map<string, RawArgument>();

/** A range of a hundred thousand rows, made once for each kind of row. */
function manyRows(row: readonly Raw[]): RawArgument {
  // A hundred thousand of the longest texts are more than a host can hold.
  if (row.some((cell) => typeof cell === "string" && cell.length > 100)) return manyRows(["a"]);
  const key = JSON.stringify(row);
  const known = huge.get(key) ?? Array.from({ length: MANY_ROWS }, () => row);
  if (huge.size < 50) huge.set(key, known);
  return known;
}

/** How often, of a thousand places, a range of a hundred thousand rows is put in. */
const HUGE_IN_1000 = 0.3;

/** Arguments of one call near the example: some as they are, some bent, some broken. */
export class Calls {
  readonly #random: () => number;

  constructor(seed: number) {
    const random = new Random(seed);
    this.#random = () => random.unit();
  }

  #pick<T>(list: readonly T[]): T {
    return list[Math.floor(this.#random() * list.length)] as T;
  }

  #chance(share: number): boolean {
    return this.#random() < share;
  }

  argumentsOf(fn: CellFunction, mayBeHuge = true): RawArgument[] {
    const example = positional(fn, fn.example.args);
    const broken = 0.15 + this.#random() * 0.35;
    const args = fn.params.map((named, i): RawArgument => {
      if (named.param.kind === "basis") return this.#chance(0.5) ? (example[i] ?? null) : this.#basis(fn);
      if (!this.#chance(broken)) return example[i] ?? null;
      return this.#argument(named, example[i] ?? null, mayBeHuge);
    });
    if (this.#chance(0.02)) args.splice(Math.floor(this.#random() * args.length), 1);
    if (this.#chance(0.02)) args.push(this.#odd());
    return args;
  }

  #odd(): Raw {
    return this.#pick(ODD);
  }

  #argument({ param }: NamedParam, example: RawArgument, mayBeHuge: boolean): RawArgument {
    const range = param.kind === "table" || param.kind === "list";
    if (mayBeHuge && this.#chance(HUGE_IN_1000 / 1000)) {
      const first = Array.isArray(example) ? (example[0] as readonly Raw[]) : [this.#odd()];
      return manyRows(this.#chance(0.5) ? first : [this.#pick([null, 0, "x", 1])]);
    }
    if (range && this.#chance(0.8)) return this.#rows(param, example);
    if (this.#chance(0.1)) return [[this.#cell(param, example)]];
    if (this.#chance(0.05)) return this.#rows(param, example);
    return this.#cell(param, example);
  }

  /** One cell: a value that the parameter might take, one at or beyond its limits, or anything. */
  #cell(param: ParamFacts, example: RawArgument): Raw {
    if (this.#chance(0.3)) return this.#odd();
    if (param.choices !== undefined && this.#chance(0.8)) return this.#pick(param.choices);
    const { min, max, above, below } = param.limits ?? {};
    const low = min ?? above ?? -10;
    const high = max ?? below ?? 1000;
    const number = this.#pick([
      low,
      high,
      low - Math.abs(low) * 1e-9 - 1e-12,
      high + Math.abs(high) * 1e-9,
      low + (high - low) * this.#random(),
      low + (high - low) * this.#random() ** 6,
      ...(typeof example === "number" ? [example * (0.5 + this.#random()), example * 12, example / 12, -example] : []),
    ]);
    return this.#chance(0.2)
      ? `${number}${this.#pick(["", ` ${param.unit}`, " ft", " in", "%", " deg", " mm"])}`
      : number;
  }

  /** Rows of a table bent: cells replaced, rows doubled, left out, turned, widened, many. */
  #rows(param: ParamFacts, example: RawArgument): readonly (readonly Raw[])[] {
    const columns = param.columns ?? [];
    const made = () => columns.map((column): Raw => (this.#chance(0.7) ? this.#cell(column, null) : this.#odd()));
    const from = Array.isArray(example) ? (example as readonly (readonly Raw[])[]) : [made()];
    let rows = from.map((row) => [...row]);
    for (let bends = 1 + Math.floor(this.#random() * 4); bends > 0; bends--) rows = this.#bend(rows, columns, made);
    return rows;
  }

  #bend(rows: Raw[][], columns: readonly ParamFacts[], made: () => Raw[]): Raw[][] {
    const row = this.#pick(rows);
    switch (Math.floor(this.#random() * 8)) {
      case 0:
        return [...rows, [...(row ?? [])]];
      case 1:
        return rows.length > 1 ? rows.filter((r) => r !== row) : rows;
      case 2:
        return [...rows, made()];
      case 3:
        return [...rows, [null, 0, ""]].reverse();
      case 4:
        return this.#chance(0.05) ? Array.from({ length: 300 }, () => [...(row ?? [])]) : rows;
      default: {
        if (row === undefined) return rows;
        const at = Math.floor(this.#random() * Math.max(columns.length, row.length, 1));
        row[at] = this.#cell(columns[at] ?? { kind: "text", says: "", unit: "" }, (row[at] ?? null) as RawArgument);
        return rows;
      }
    }
  }

  /** A basis of a few terms, those of the function and others. */
  #basis(fn: CellFunction): RawArgument {
    if (this.#chance(0.1)) return this.#odd();
    const own = fn.named.map(({ name, param }) => ("term" in param ? String(param.term) : name));
    const names = [...own, ...own, ...Object.keys(GLOSSARY), "Wind speed, mph", "nonsense", ""];
    const rows = Array.from({ length: 1 + Math.floor(this.#random() * 5) }, (): Raw[] => {
      const name = this.#pick(names);
      const facts = (GLOSSARY as Readonly<Record<string, { readonly param: ParamFacts } | undefined>>)[name]?.param;
      return [
        name,
        this.#cell(facts ?? { kind: "text", says: "", unit: "" }, null),
        this.#pick(["", "ft", "psf", facts?.unit ?? ""]),
      ];
    });
    return this.#chance(0.8) ? [["Basis", "Value", "Unit"], ...rows] : rows;
  }
}
