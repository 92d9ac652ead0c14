/** How often and how long to wait for Excel while a cell is being edited, in milliseconds. */
const TRIES = 6;
const PAUSE_MS = 350;

/**
 * `Excel.run`, tried again while Excel refuses because a cell is being edited. Such a refusal comes before anything is done, so nothing is done twice.
 * @throws an error with a sentence for the pane when Excel goes on refusing
 */
export async function runInExcel<T>(
  work: (context: Excel.RequestContext) => Promise<T>,
  pauseMs: number = PAUSE_MS,
): Promise<T> {
  for (let tried = 1; ; tried++) {
    try {
      return await Excel.run(work);
    } catch (error) {
      if (!isCellEdit(error)) throw error;
      if (tried === TRIES) {
        throw new Error("Excel is waiting for a cell to be finished. Press Enter or Esc in the cell, then try again.");
      }
      await new Promise((done) => setTimeout(done, pauseMs));
    }
  }
}

function isCellEdit(error: unknown): boolean {
  return (
    typeof error === "object" && error !== null && "code" in error && error.code === "InvalidOperationInCellEditMode"
  );
}
