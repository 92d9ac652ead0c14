/** How often and how long to wait for Excel while a cell is being edited, in milliseconds. */
const TRIES = 6;
const PAUSE_MS = 350;

/** Excel's code while somebody types in a cell. */
const CELL_EDIT = "InvalidOperationInCellEditMode";

/** Excel's code for a protected worksheet or workbook. */
const PROTECTED = "AccessDenied";

/** What to do about what Excel refuses, by its code. */
const SENTENCES: Readonly<Record<string, string>> = {
  [CELL_EDIT]: "Excel is waiting for a cell to be finished. Press Enter or Esc in the cell, then try again.",
  [PROTECTED]:
    "Excel refused: the worksheet or the workbook is protected or read-only. Take the protection off, then try again.",
  ApiNotFound: "This Excel is too old for that. Update Excel, or do it by hand.",
  UnsupportedOperation: "This Excel does not offer that here.",
  RequestPayloadSizeLimitExceeded: "That is more than Excel takes at once. Try again with fewer cells.",
  ResponsePayloadSizeLimitExceeded: "That is more than Excel gives at once. Try again with fewer cells.",
  ItemNotFound: "What that needs is no longer in the workbook. Look whether its worksheet or name was deleted.",
  ItemAlreadyExists: "The workbook has something of that name already. Try again.",
  InsertDeleteConflict: "Excel cannot put rows in there: other cells would be pushed out of the worksheet.",
  OperationCellsExceedLimit: "That is more cells than Excel takes at once. Try again with fewer cells.",
  RequestAborted: "Excel broke the work off. Try again.",
  ServiceNotAvailable: "Excel is not answering just now. Wait a moment, then try again.",
};

/** Excel has refused; the message is a sentence for the user. */
export class HostRefusal extends Error {
  /** Excel's own code */
  readonly code: string;

  constructor(code: string, said: string, cause: unknown) {
    super(SENTENCES[code] ?? `Excel refused: ${said.replace(/\.?$/, ".")} Try again.`, { cause });
    this.code = code;
  }
}

/**
 * `Excel.run`, tried again while Excel refuses because a cell is being edited. A cell may be opened between two requests of the work, so the work must
 * bear being done again from its start.
 * @throws HostRefusal with a sentence for the pane when Excel refuses or goes on refusing
 */
export async function runInExcel<T>(
  work: (context: Excel.RequestContext) => Promise<T>,
  options: Excel.RunOptions = {},
): Promise<T> {
  for (let tried = 1; ; tried++) {
    try {
      return await (Object.keys(options).length === 0 ? Excel.run(work) : Excel.run(options, work));
    } catch (error) {
      const code = codeOf(error);
      if (code === undefined) throw error;
      if (code !== CELL_EDIT || tried === TRIES) throw new HostRefusal(code, String((error as Error).message), error);
      await new Promise((done) => setTimeout(done, PAUSE_MS));
    }
  }
}

/**
 * Work that leaves nothing half-done: where it fails, `takeOut` removes what it has made. Each part may run again from its start.
 * @param left tells what to do by hand where that is refused too
 */
export async function wholeOrNothing<T>(
  work: (context: Excel.RequestContext) => Promise<T>,
  takeOut: (context: Excel.RequestContext) => Promise<void>,
  left: string,
  options: Excel.RunOptions = {},
): Promise<T> {
  let begun = false;
  try {
    return await runInExcel(async (context) => {
      // A cell was opened in the middle, and Excel is asked again.
      if (begun) await takeOut(context);
      begun = true;
      return work(context);
    }, options);
  } catch (failure) {
    try {
      // Outside a group of undo, which takes no deletion.
      await runInExcel(takeOut);
    } catch {
      const why = failure instanceof Error ? failure.message : String(failure);
      throw new Error(`${why} ${left}`, { cause: failure });
    }
    throw failure;
  }
}

/** Whether Excel refused since something is protected; any other error goes on its way. */
export function isProtected(error: unknown): boolean {
  return codeOf(error) === PROTECTED;
}

/** The code that Excel's errors carry; undefined for any other error. */
function codeOf(error: unknown): string | undefined {
  if (error instanceof HostRefusal || typeof error !== "object" || error === null || !("code" in error))
    return undefined;
  return typeof error.code === "string" ? error.code : undefined;
}
