/** What Excel loads first: the ids of all functions, since it calls those of an opened workbook as soon as they are there. A family follows at its first call. */
import { FAMILY_FOLDERS, type FamilyFolder, functionNames, idOf, NAMES } from "../../functions/declare/names.ts";
import { families } from "./families.ts";
import type { ExcelFunction } from "./functions.ts";
import { associateLate } from "./late-functions.ts";

const inOffice = typeof CustomFunctions !== "undefined" && typeof Office !== "undefined";

if (inOffice) {
  for (const family of FAMILY_FOLDERS) {
    associateLate(CustomFunctions, NAMES[family].map(idOf), () => loadCalculations(family), hostError);
  }
  document.documentElement.dataset.functions = String(functionNames.length);
}

async function loadCalculations(family: FamilyFolder): Promise<ReadonlyMap<string, ExcelFunction>> {
  const [{ calculationsOf }, functions] = await Promise.all([
    import(/* webpackChunkName: "calculations" */ "./calculations.ts"),
    families.load(family),
  ]);
  return calculationsOf(functions);
}

function hostError(sentence: string): Error {
  const host = CustomFunctions as Partial<typeof CustomFunctions>;
  if (host.Error === undefined || host.ErrorCode === undefined) return new Error(sentence);
  return new host.Error(host.ErrorCode.notAvailable, sentence) as unknown as Error;
}
