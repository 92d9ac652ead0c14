import { Ledger } from "../../workbook/ledger.ts";
import { Searches } from "../../workbook/searches/searches.ts";
import { startSearchWorker } from "../../workbook/searches/start-worker.ts";

/** What the functions and the pane of one page share. */
export const ledger = new Ledger();
export const searches = new Searches(startSearchWorker);

/** A page whose office.js did not load (no network, a blocked address) still shows the help of the pane. */
export const officeLoaded = typeof CustomFunctions !== "undefined" && typeof Office !== "undefined";
