/** What Excel loads first: every function, before anything else and without waiting, since it calls those of an opened workbook as soon as they are there. */
import { associateFunctions } from "./functions.ts";
import { ledger, officeLoaded, searches } from "./session.ts";

if (officeLoaded) {
  const count = associateFunctions(CustomFunctions, ledger, searches.answer);
  document.documentElement.dataset.functions = String(count);
}
