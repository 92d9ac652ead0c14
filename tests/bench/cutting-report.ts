/** What the command line asks for, and the table that comes out. */
export const flags = {
  every: 1,
  offset: 0,
  limitMs: Number.POSITIVE_INFINITY,
  effort: 1,
  each: false,
  seed: 1961,
  only: "",
};

export function setFlags(args: readonly string[]): string[] {
  const sets: string[] = [];
  for (let i = 0; i < args.length; i++) {
    const a = args[i]!;
    if (a === "--every") flags.every = Number(args[++i]);
    else if (a === "--offset") flags.offset = Number(args[++i]);
    else if (a === "--limit") flags.limitMs = Number(args[++i]);
    else if (a === "--effort") flags.effort = Number(args[++i]);
    else if (a === "--seed") flags.seed = Number(args[++i]);
    else if (a === "--only") flags.only = args[++i]!;
    else if (a === "--each") flags.each = true;
    else sets.push(a);
  }
  return sets;
}

export const search = (): { effort: number; seed: number; expired: () => boolean } => {
  const end = now() + flags.limitMs;
  return { effort: flags.effort, seed: flags.seed, expired: () => now() > end };
};

/** Processor time of this thread's process in ms: a busy machine does not lengthen it. */
export const now = (): number => process.cpuUsage().user / 1000;

/** The longest that an instance may take, in ms of processor time. */
export const LONGEST_MS = 2000;

/** A search and its processor time. It does the same work each time, so one that took too long is run twice more and the least counts: the rest is the machine's. */
export function timed<T>(run: () => T): { readonly found: T; readonly ms: number } {
  const once = (): { found: T; ms: number } => {
    const start = now();
    const found = run();
    return { found, ms: now() - start };
  };
  const first = once();
  if (first.ms <= LONGEST_MS) return first;
  return { ...first, ms: Math.min(first.ms, once().ms, once().ms) };
}

export interface Row {
  group: string;
  id: string;
  best: number;
  ours: number;
  bound: number;
  proven: boolean;
  ms: number;
  cutShort: boolean;
  wrong: readonly string[];
}

const pad = (v: unknown, n: number): string => String(v).padStart(n);

/** Prints the table, and gives the rows back. */
export function report(title: string, rows: readonly Row[]): readonly Row[] {
  console.log(`\n${title}`);
  console.log("group         n       best       ours   better  worse      bound  proven   avg cpu  max ms  cut short");
  const groups = [...new Set(rows.map((r) => r.group))];
  if (groups.length > 1) groups.push("all");
  for (const g of groups) {
    const of = rows.filter((r) => g === "all" || r.group === g);
    const sum = (f: (r: Row) => number): number => of.reduce((s, r) => s + f(r), 0);
    const better = sum((r) => Number(r.ours < r.best));
    const worse = sum((r) => Number(r.ours > r.best));
    console.log(
      g.padEnd(10) +
        pad(of.length, 5) +
        pad(
          sum((r) => r.best),
          11,
        ) +
        pad(
          sum((r) => r.ours),
          11,
        ) +
        pad(better, 9) +
        pad(worse, 7) +
        pad(
          sum((r) => r.bound),
          11,
        ) +
        pad(`${((100 * sum((r) => Number(r.proven))) / of.length).toFixed(1)}%`, 8) +
        pad((sum((r) => r.ms) / of.length).toFixed(1), 10) +
        pad(Math.max(...of.map((r) => r.ms)).toFixed(0), 8) +
        pad(
          sum((r) => Number(r.cutShort)),
          11,
        ),
    );
  }
  for (const r of rows) {
    if (r.wrong.length > 0) console.log(`WRONG ${r.id}: ${r.wrong.slice(0, 3).join("; ")}`);
    if (flags.each && (r.ours !== r.best || !r.proven)) {
      console.log(`${r.id} best ${r.best} ours ${r.ours} bound ${r.bound} ${r.ms.toFixed(0)} ms`);
    }
  }
  return rows;
}
