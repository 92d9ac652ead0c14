/** How many rows of a published check come from where. A row counts when a test runs it and it can fail. */
export interface RowCounts {
  readonly printed: number;
  readonly library: number;
  readonly memory: number;
}

const MEMORY = /from memory/i;
/** Output of a general library, or a table of constants: a peer and not a print. */
const LIBRARY = /psychrolib|librar(?:y|ies)|SP 811|table of constants/i;

/** Counts the rows of CSV files, comments and headings left out. */
export function countRows(files: readonly string[]): RowCounts {
  const counts = { printed: 0, library: 0, memory: 0 };
  for (const text of files) {
    const lines = text.split(/\r?\n/).filter((line) => line.trim() !== "" && !line.startsWith("#"));
    for (const line of lines.slice(1)) {
      if (MEMORY.test(line)) counts.memory++;
      else if (LIBRARY.test(line)) counts.library++;
      else counts.printed++;
    }
  }
  return counts;
}

const BEGIN = "<!-- rows: begin -->";
const END = "<!-- rows: end -->";

/** The README with its three figures made anew. */
export function withRowCounts(readme: string, { printed, library, memory }: RowCounts): string {
  const from = readme.indexOf(BEGIN);
  const to = readme.indexOf(END);
  if (from < 0 || to < from) throw new Error(`The README lacks ${BEGIN} or ${END}`);
  const n = (count: number) => count.toLocaleString("en-US");
  const line = `Rows of \`tests/published\` that are run and can fail: ${n(printed)} printed (standards, codes, handbooks, worked examples), ${n(library)} of general libraries or tables of constants, ${n(memory)} from memory, each with its source.`;
  return `${readme.slice(0, from)}${BEGIN}\n${line}\n${readme.slice(to)}`;
}
