/** What a workbook costs: calculating a takeoff in the engine, saving and opening a file. */
import type { Cell } from "../../../src/core/kit/tape.ts";
import { HeadlessWorkbook } from "../../../src/hosts/tryout/engine/headless.ts";
import type { WorkbookTemplate } from "../../../src/templates/kit/template.ts";
import { readWorkbook } from "../../../src/workbook/file/read.ts";
import { writeWorkbook } from "../../../src/workbook/file/write.ts";
import { type Line, line } from "./line.ts";

const ROWS = 10_000;

function grid(sheets: readonly (readonly [string, readonly (readonly Cell[])[]])[]): WorkbookTemplate {
  return {
    name: "Bench",
    names: [],
    sheets: sheets.map(([name, rows]) => ({
      name,
      says: "",
      widths: [],
      rows: rows.map((row) => row.map((is) => ({ is }))),
    })),
  };
}

async function seconds(open: () => Promise<HeadlessWorkbook>): Promise<number> {
  const started = performance.now();
  const workbook = await open();
  const took = (performance.now() - started) / 1000;
  workbook.dispose();
  return took;
}

export async function takeoff(): Promise<Line[]> {
  const rows = (formula: (row: number) => string) =>
    Array.from({ length: ROWS }, (_, i): Cell[] => [100 + i, formula(i + 1)]);
  const ours = grid([["Takeoff", rows((r) => `=SILL.SHEETS_COUNT(A${r},"4x8",0.1)`)]]);
  const native = grid([["Takeoff", rows((r) => `=ROUNDUP(A${r}*(1+0.1)/(4*8),0)`)]]);
  const best = { ours: Number.POSITIVE_INFINITY, native: Number.POSITIVE_INFINITY };
  for (let round = 0; round < 3; round++) {
    best.ours = Math.min(best.ours, await seconds(() => HeadlessWorkbook.open(ours)));
    best.native = Math.min(best.native, await seconds(() => HeadlessWorkbook.open(native)));
  }
  const times = best.ours / best.native;
  return [
    line(
      "10,000 rows of SHEETS_COUNT in the engine against native formulas",
      `${best.ours.toFixed(2)} against ${best.native.toFixed(2)} s: ${times.toFixed(2)} times`,
      "at most 1.5 times",
      times <= 1.5,
    ),
  ];
}

export async function workbookFile(): Promise<Line[]> {
  const rows = Array.from({ length: 200 }, (_, r) => [
    r,
    `=SILL.SHEETS_COUNT(A${r + 1},"4x8",0.1)`,
    `=A${r + 1}*2`,
    "text",
  ]);
  const template = grid(Array.from({ length: 12 }, (_, i) => [`Sheet ${i + 1}`, rows] as const));
  const workbook = await HeadlessWorkbook.open(template);
  const file = workbook.file("bench");
  workbook.dispose();
  const started = performance.now();
  const bytes = await writeWorkbook(file, { version: "bench" });
  const saved = performance.now() - started;
  const opening = performance.now();
  await readWorkbook(bytes, "bench.xlsx");
  const opened = performance.now() - opening;
  return [
    line(
      "Saving a workbook of 12 sheets, 9,600 cells",
      `${saved.toFixed(0)} ms, ${(bytes.length / 1000).toFixed(0)} kB`,
    ),
    line("Opening it", `${opened.toFixed(0)} ms`),
  ];
}
