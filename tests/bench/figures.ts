/** `npm run bench`: what it costs to run, in one table; written to tests/bench/FIGURES.md, which the README names. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { gzipSync } from "node:zlib";
// @ts-expect-error the peer brings no types
import psychrolib from "psychrolib";
import "../../src/functions/run/tables-at-once.ts";
import type { Cell } from "../../src/core/kit/tape.ts";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { functionNamed, registry } from "../../src/functions/registry.ts";
import { readArguments } from "../../src/functions/run/arguments.ts";
import { invoke } from "../../src/functions/run/invoke.ts";
import { HeadlessWorkbook } from "../../src/hosts/tryout/engine/headless.ts";
import type { WorkbookTemplate } from "../../src/templates/kit/template.ts";
import { readWorkbook } from "../../src/workbook/file/read.ts";
import { writeWorkbook } from "../../src/workbook/file/write.ts";
import { Ledger } from "../../src/workbook/ledger.ts";

interface Line {
  readonly what: string;
  readonly found: string;
  readonly goal: string;
  readonly met: string;
}

const line = (what: string, found: string, goal = "", met: boolean | undefined = undefined): Line => ({
  what,
  found,
  goal,
  met: met === undefined ? "" : met ? "yes" : "NO",
});

/** Processor time of a call in microseconds, the best of many short rounds: what else a busy machine does is not the program's. */
function microseconds(work: () => unknown, calls = 2000, rounds = 60): number {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const before = process.cpuUsage();
    for (let i = 0; i < calls; i++) work();
    const { user, system } = process.cpuUsage(before);
    best = Math.min(best, (user + system) / calls);
  }
  return best;
}

const named = (name: string): CellFunction => {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no ${name}`);
  return fn;
};

interface Peer {
  IP: number;
  SetUnitSystem(system: number): void;
  GetTDewPointFromRelHum(temp: number, rh: number): number;
}

function dewPoint(): Line[] {
  const peer = psychrolib as Peer;
  peer.SetUnitSystem(peer.IP);
  const fn = named("DEW_POINT");
  // Another temperature each time, as cells have.
  let i = 0;
  const temperature = () => 40 + (i++ % 500) / 10;
  const ours = microseconds(() => invoke(fn, [temperature(), 50]));
  const theirs = microseconds(() => peer.GetTDewPointFromRelHum(temperature(), 0.5));
  return [
    line(
      "DEW_POINT in a cell against psychrolib bare",
      `${ours.toFixed(2)} against ${theirs.toFixed(2)} us`,
      "not slower",
      ours <= theirs,
    ),
  ];
}

const TEN = [
  "LENGTH",
  "CONVERT",
  "WIND_KZ",
  "WIND_PRESSURE",
  "WIND_CLADDING",
  "LOAD_TRIBUTARY",
  "WOOD_COLUMN",
  "R_STACK",
  "U_FACTOR",
  "COST_BID",
];

/** Each of ten functions as a cell calls it, and its calculation alone on arguments that are read already. */
function declaredAgainstBare(): Line[] {
  return TEN.map((name) => {
    const fn = named(name);
    const raw = positional(fn, fn.example.args);
    const args = readArguments(fn, raw, { assume: () => {}, caution: () => {} }, undefined);
    const declared = microseconds(() => invoke(fn, raw), 500);
    const bare = microseconds(() => fn.run(args, undefined), 500);
    return line(
      `${name}: declared against its calculation alone`,
      `${declared.toFixed(2)} against ${bare.toFixed(2)} us`,
    );
  });
}

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

async function takeoff(): Promise<Line[]> {
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

/** Megabytes in use after the garbage is gone. */
function megabytes(): number {
  (globalThis as { gc?: () => void }).gc?.();
  return process.memoryUsage().heapUsed / 2 ** 20;
}

function ledgerMemory(): Line[] {
  const fn = named("WIND_CLADDING");
  const raw = positional(fn, fn.example.args);
  const outcome = invoke(fn, raw);
  const ledger = new Ledger();
  const before = megabytes();
  const pass = () => {
    for (let row = 0; row < ROWS; row++) {
      const args = raw.map((argument) => (Array.isArray(argument) ? argument.map((cells) => [...cells]) : argument));
      ledger.record({ sheet: "Takeoff", row, column: 1 }, { id: fn.id, args, outcome });
    }
  };
  for (let i = 0; i < 10; i++) pass();
  const once = megabytes() - before;
  for (let i = 0; i < 10; i++) pass();
  const after = megabytes() - before;
  return [
    line(
      "Ledger of 10,000 cells with a basis: memory after 10 passes and after 20",
      `${once.toFixed(1)} and ${after.toFixed(1)} MB`,
      "at most 10 % and 1 MB more",
      after <= once * 1.1 + 1,
    ),
    line("its cells", String(ledger.entries().length)),
  ];
}

async function workbookFile(): Promise<Line[]> {
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

/** Sizes of the last build, as they travel. */
function sizes(): Line[] {
  if (!existsSync("dist/functions.js")) return [line("Sizes of the add-in", "no build: npm run build first")];
  const gz = (name: string) => gzipSync(readFileSync(`dist/${name}`)).length / 1000;
  const scripts = readdirSync("dist").filter((name) => name.endsWith(".js"));
  const first = gz("functions.js");
  const page = readFileSync("dist/taskpane.html", "utf8");
  const asked = scripts.filter((name) => new RegExp(`src="?${name.replaceAll(".", "\\.")}`).test(page));
  const loaded = asked.reduce((sum, name) => sum + gz(name), 0);
  return [
    line("Script that registers every function, gzip", `${first.toFixed(0)} kB`, "90 kB", first <= 90),
    line(
      "Pane and the names of the functions at the first load, families later, gzip",
      `${loaded.toFixed(0)} kB in ${asked.length} files`,
      "150 kB",
      asked.length > 0 && loaded <= 150,
    ),
    line(
      "All scripts, families and tables that come later too, gzip",
      `${scripts.reduce((sum, name) => sum + gz(name), 0).toFixed(0)} kB`,
    ),
  ];
}

const lines = [
  ...dewPoint(),
  ...declaredAgainstBare(),
  ...ledgerMemory(),
  ...(await takeoff()),
  ...(await workbookFile()),
  ...sizes(),
];
const processor = cpus()[0]?.model ?? "unknown";
const table = [
  "# What it costs to run",
  `Written by \`npm run bench\`: best of several rounds on one machine (${processor}, Node ${process.version}, ${registry.length} functions). The cutting searches have benchmarks of their own: \`npm run bench -- cutting\`.`,
  "",
  "| what | found | goal | met |",
  "| --- | --- | --- | --- |",
  ...lines.map(({ what, found, goal, met }) => `| ${what} | ${found} | ${goal} | ${met} |`),
  "",
].join("\n");
writeFileSync("tests/bench/FIGURES.md", table);
console.log(table);
process.exit(0);
