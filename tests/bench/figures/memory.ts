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
  ];
}
