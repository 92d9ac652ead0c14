/** Runs a command: the engine reports to the console, so that standard output holds nothing but answers. Ends the process with the code that it gives. */
export async function quietly(main: () => Promise<number>): Promise<never> {
  for (const level of ["log", "info", "warn", "error", "debug"] as const) console[level] = () => {};
  // A reader that has seen enough (head, a pager) closes the pipe: that is no fault.
  process.stdout.on("error", (error: NodeJS.ErrnoException) => process.exit(error.code === "EPIPE" ? 0 : 1));
  try {
    process.exit(await main());
  } catch (problem) {
    process.stderr.write(`${problem instanceof Error ? problem.message : String(problem)}\n`);
    process.exit(2);
  }
}

/** Writes to standard output and waits until it is out: a process that ends cuts off what a pipe has not taken yet. */
export function print(text: string): Promise<void> {
  return new Promise((done) => process.stdout.write(text, () => done()));
}
