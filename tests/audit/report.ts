import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import { positional } from "../../src/functions/declare/formula.ts";
import { registry } from "../../src/functions/registry.ts";
import { explain } from "../../src/functions/run/invoke.ts";
import { withoutHeadings } from "../../src/functions/run/present.ts";
import type { HowClose } from "../../src/publish/help/how-close.ts";
import { rows } from "../published/rows.ts";
import { rowFiles } from "./attribution.ts";
import { ceilings, departs, exampleKind, exampleShare, kindOf } from "./closeness.ts";

interface Miss {
  readonly file: string;
  readonly row: number;
  readonly share: number;
}

const top = fileURLToPath(new URL("../..", import.meta.url));
const noted = `${top}.cache/audit/`;
const misses = readdirSync(noted).flatMap((file) => JSON.parse(readFileSync(noted + file, "utf8")) as Miss[]);

function closeness(fn: CellFunction, files: ReadonlySet<string>): HowClose {
  const counts = { printed: 0, library: 0, memory: 0, disagree: 0 };
  let worst: { share: number; row: string; source: string } | null = null;
  for (const file of files) {
    const all = rows(file);
    for (const row of all) {
      counts[kindOf(row)]++;
      if (departs(row)) counts.disagree++;
    }
    for (const miss of misses) {
      const row = miss.file === file ? all[miss.row - 1] : undefined;
      if (row === undefined || departs(row) || miss.share <= (worst?.share ?? -1)) continue;
      worst = { share: miss.share, row: `${file.replace(".csv", "")} ${miss.row}`, source: row.source ?? "" };
    }
  }
  const share = exampleShare(fn);
  const kind = exampleKind(fn);
  if (kind === "printed") counts.printed++;
  if (kind === "memory") counts.memory++;
  if (kind !== "arithmetic" && share > (worst?.share ?? -1))
    worst = { share, row: "the example", source: fn.example.source };
  const rounded = worst === null ? null : { ...worst, share: Math.round(worst.share * 100) / 100 };
  return { ...counts, arithmetic: kind === "arithmetic", worst: rounded };
}

/** Whether the working of the example ends with the answer of the cell. */
function tapeIsAnswer(fn: CellFunction): boolean {
  const { outcome, steps } = explain(fn, positional(fn, fn.example.args));
  return outcome.ok && JSON.stringify(steps.at(-1)?.value) === JSON.stringify(withoutHeadings(fn, outcome.value));
}

test("the audit of every function", () => {
  const files = rowFiles();
  const close = Object.fromEntries(registry.map((fn) => [fn.name, closeness(fn, files.get(fn.name) ?? new Set())]));
  const shown = Object.entries(close).map(([name, entry]) => `  ${JSON.stringify(name)}: ${JSON.stringify(entry)}`);
  writeFileSync(`${top}src/publish/help/how-close.json`, `{\n${shown.join(",\n")}\n}\n`);
  writeFileSync(
    `${top}tests/audit/ceilings.json`,
    `[\n${ceilings()
      .map((c) => JSON.stringify(c))
      .join(",\n")}\n]\n`,
  );
  const lines = registry.map((fn) => {
    const { printed, library, memory, disagree, worst } = close[fn.name] as HowClose;
    const far = worst === null ? "exact arithmetic" : `${worst.share} ${worst.row}`;
    const cells = [
      fn.name,
      fn.sources.length,
      printed,
      library,
      memory,
      disagree,
      fn.refuses.length,
      fn.cautions.length,
    ];
    return `| ${[...cells, tapeIsAnswer(fn) ? "yes" : "NO", far].join(" | ")} |`;
  });
  const head =
    "| function | sources | printed | library | memory | disagree | refusals | cautions | tape = answer | largest miss and its row |";
  writeFileSync(`${top}.cache/audit.md`, [head, `|${" --- |".repeat(10)}`, ...lines, ""].join("\n"));
  expect(lines.filter((line) => line.includes("| NO |"))).toEqual([]);
});
