/** `npm run bench`: what it costs to run; written to tests/bench/FIGURES.md, which the README names. `npm run bench -- figures calls` measures that part again and leaves the others as they stand. */
import { readFileSync, writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { registry } from "../../src/functions/registry.ts";
import { calls } from "./figures/calls.ts";
import { cutting } from "./figures/cutting.ts";
import type { Line } from "./figures/line.ts";
import { ledgerMemory } from "./figures/memory.ts";
import { sizes } from "./figures/sizes.ts";
import { start } from "./figures/start.ts";
import { takeoff, workbookFile } from "./figures/workbooks.ts";

interface Part {
  readonly title: string;
  readonly measure: () => Line[] | Promise<Line[]>;
}

const PARTS: Readonly<Record<string, Part>> = {
  cutting: { title: "Cutting", measure: cutting },
  calls: { title: "Processor time of a call", measure: calls },
  memory: { title: "Memory", measure: ledgerMemory },
  takeoff: { title: "A takeoff", measure: takeoff },
  files: { title: "A workbook's file", measure: workbookFile },
  sizes: { title: "What is loaded", measure: sizes },
  start: { title: "The first moment in a page", measure: start },
};

const FILE = "tests/bench/FIGURES.md";
const asked = process.argv.slice(3);
const unknown = asked.filter((name) => !Object.hasOwn(PARTS, name));
if (unknown.length > 0) {
  console.error(`no part ${unknown.join(", ")}: ${Object.keys(PARTS).join(", ")}`);
  process.exit(1);
}

/** What stands under a title in the table that was written before. */
function before(title: string): string | undefined {
  const sections = readFileSync(FILE, "utf8").split(/\n(?=## )/);
  return sections.find((section) => section.startsWith(`## ${title}\n`))?.trimEnd();
}

async function section({ title, measure }: Part): Promise<string> {
  const lines = await measure();
  return [
    `## ${title}`,
    "",
    "| what | found | goal | met |",
    "| --- | --- | --- | --- |",
    ...lines.map(({ what, found, goal, met }) => `| ${what} | ${found} | ${goal} | ${met} |`),
  ].join("\n");
}

const sections: string[] = [];
for (const [name, part] of Object.entries(PARTS)) {
  const measured = asked.length === 0 || asked.includes(name);
  const written = measured ? await section(part) : before(part.title);
  if (written === undefined) continue;
  sections.push(written);
  if (measured) console.log(`${written}\n`);
}
const processor = cpus()[0]?.model ?? "unknown";
const head = `# What it costs to run
Written by \`npm run bench\`: best of several rounds on one machine (${processor}, Node ${process.version}, ${registry.length} functions). \`npm run bench -- figures PART\` measures one part again. \`npm run bench -- cutting SET\` prints a cutting set group by group.`;
writeFileSync(FILE, `${[head, ...sections].join("\n\n")}\n`);
process.exit(0);
