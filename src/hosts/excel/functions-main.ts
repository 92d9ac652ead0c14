/** What Excel loads first: the ids of all functions, since it calls those of an opened workbook as soon as they are there. The calculations follow. */
import type { ExcelFunction } from "./functions.ts";
import { associateLate } from "./late-functions.ts";

/** Written by the build from the declarations. */
declare const SILLWORK_IDS: readonly string[];

const inOffice = typeof CustomFunctions !== "undefined" && typeof Office !== "undefined";

if (inOffice) {
  const loadNow = associateLate(CustomFunctions, SILLWORK_IDS, loadCalculations, hostError);
  document.documentElement.dataset.functions = String(SILLWORK_IDS.length);
  loadNow();
}

async function loadCalculations(): Promise<ReadonlyMap<string, ExcelFunction>> {
  const { calculations } = await import(/* webpackChunkName: "calculations" */ "./calculations.ts");
  return calculations;
}

function hostError(sentence: string): Error {
  const host = CustomFunctions as Partial<typeof CustomFunctions>;
  if (host.Error === undefined || host.ErrorCode === undefined) return new Error(sentence);
  return new host.Error(host.ErrorCode.notAvailable, sentence) as unknown as Error;
}
