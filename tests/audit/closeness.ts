import { createHash } from "node:crypto";
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Cell, Table } from "../../src/core/kit/tape.ts";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { invoke } from "../../src/functions/run/invoke.ts";
import { withoutHeadings } from "../../src/functions/run/present.ts";
import { countRows } from "../../src/publish/rows.ts";
import { type Row, rows } from "../published/rows.ts";

/** What kind of evidence a row is; as the README counts it. */
export function kindOf(row: Row): "printed" | "library" | "memory" {
  const { memory, library } = countRows([`head\n${Object.values(row).join(",").replaceAll("\n", " ")}`]);
  return memory > 0 ? "memory" : library > 0 ? "library" : "printed";
}

/** Whether a row says that its print departs from its own formula, and how far at most. */
export function departs(row: Row): boolean {
  return ["disagrees", "recomputed", "disagrees_percent"].some((column) => (row[column] ?? "") !== "");
}

/** An example by where its answer comes from. */
export function exampleKind(fn: CellFunction): "printed" | "memory" | "arithmetic" {
  if (/from memory/i.test(fn.example.source)) return "memory";
  return /arithmetic|definition/i.test(fn.example.source) ? "arithmetic" : "printed";
}

/** How far the example lies from its answer, as a share of what it may. */
export function exampleShare(fn: CellFunction): number {
  const outcome = invoke(fn, positional(fn, fn.example.args));
  if (!outcome.ok) return Number.POSITIVE_INFINITY;
  const flat = (value: Cell | Table): readonly Cell[] =>
    Array.isArray(value) ? (value as Table).flat() : [value as Cell];
  const got = flat(withoutHeadings(fn, outcome.value));
  const shares = flat(fn.example.gives).map((cell, i) => {
    if (typeof cell !== "number") return cell === got[i] ? 0 : Number.POSITIVE_INFINITY;
    const off = Math.abs(cell - Number(got[i]));
    return off === 0 ? 0 : off / fn.example.within;
  });
  return Math.max(...shares);
}

const published = fileURLToPath(new URL("../published/", import.meta.url));
export const CSVS: readonly string[] = readdirSync(published).filter((name) => name.endsWith(".csv"));

/** How far a row may be off beyond its last digit, by a name that stays when other rows come and go. */
export interface Ceiling {
  readonly row: string;
  readonly most: number;
  readonly why: string;
}

const CEILINGS = ["off_at_most", "disagrees", "disagrees_percent"];

/** Every row that may be off, and why. */
export function ceilings(): readonly Ceiling[] {
  return CSVS.flatMap((file) =>
    rows(file).flatMap((row): Ceiling[] => {
      const most = CEILINGS.map((column) => row[column] ?? "").find(
        (cell) => cell !== "" && Number.isFinite(Number(cell)),
      );
      if (most === undefined) return [];
      const { off_at_most: _a, disagrees: _b, disagrees_percent: _c, note: _d, ...rest } = row;
      const name = createHash("sha256").update(Object.values(rest).join("|")).digest("hex").slice(0, 10);
      const why = [row.disagrees ?? "", row.note ?? ""].filter((text) => text !== "" && !Number.isFinite(Number(text)));
      return [{ row: `${file} ${name}`, most: Number(most), why: why.join("; ") }];
    }),
  );
}
