import type { Opened } from "../../../workbook/file/into.ts";
import type { WorkbookFile } from "../../../workbook/file/model.ts";

const DATABASE = "sillwork";
const STORE = "drafts";
const KEY = "workbook";

/** The file that a workbook was opened from. */
export interface Source extends Opened {
  /** what of it the sheet does not hold, in words */
  readonly leftOut: readonly string[];
}

/** The work as it stood when it was kept last. */
export interface Draft {
  readonly file: WorkbookFile;
  /** milliseconds since 1970 */
  readonly kept: number;
  readonly source?: Source | undefined;
  /** rows or columns have moved since it was opened */
  readonly moved?: boolean;
}

/** Keeps a draft in this browser, on this machine; nothing is sent. Each call fails where the browser keeps nothing for the page. */
export const drafts = {
  keep: (draft: Draft): Promise<unknown> => inStore("readwrite", (store) => store.put(draft, KEY)),
  forget: (): Promise<unknown> => inStore("readwrite", (store) => store.delete(KEY)),
  async last(): Promise<Draft | undefined> {
    return (await inStore("readonly", (store) => store.get(KEY))) as Draft | undefined;
  },
};

async function inStore(mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest): Promise<unknown> {
  const database = await asked(opened());
  try {
    return await asked(work(database.transaction(STORE, mode).objectStore(STORE)));
  } finally {
    database.close();
  }
}

function opened(): IDBOpenDBRequest {
  const request = indexedDB.open(DATABASE, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE);
  return request;
}

function asked<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((done, fail) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error ?? new Error("The browser keeps nothing for this page"));
  });
}
