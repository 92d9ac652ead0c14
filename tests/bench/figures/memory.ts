/** What the ledger of the cells keeps. */
import { positional } from "../../../src/functions/declare/formula.ts";
import { invoke } from "../../../src/functions/run/invoke.ts";
import { Ledger } from "../../../src/workbook/ledger.ts";
import { type Line, line } from "./line.ts";
import { named } from "./named.ts";

const ROWS = 10_000;

/** Megabytes in use after the garbage is gone. */
function megabytes(): number {
  (globalThis as { gc?: () => void }).gc?.();
  return process.memoryUsage().heapUsed / 2 ** 20;
}

const CELLS = 2_000;
const PASSES = 20;
const MOST_MB = 100;

/** Cells that all look at one long range, which a host copies for every call; the values change with every pass. */
function oneLongRange(): Line {
  const fn = named("LOAD_COMBINE");
  const ledger = new Ledger();
  const before = megabytes();
  for (let pass = 0; pass < PASSES; pass++) {
    for (let row = 0; row < CELLS; row++) {
      const range = Array.from({ length: 1_000 }, (_, r) => [`row ${r}`, r + pass, 1.5]);
      ledger.record(
        { sheet: "Takeoff", row, column: 1 },
        { id: fn.id, args: [range], outcome: { ok: true, value: 1 } },
      );
    }
  }
  const more = megabytes() - before;
  return line(
    `Ledger of ${CELLS.toLocaleString("en-US")} cells on a range of 1,000 x 3 after ${PASSES} passes, above the start`,
    `${more.toFixed(1)} MB, ${ledger.entries().length.toLocaleString("en-US")} cells`,
    `at most ${MOST_MB} MB`,
    more <= MOST_MB,
  );
}

export function ledgerMemory(): Line[] {
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
    oneLongRange(),
  ];
}
