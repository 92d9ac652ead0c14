import { keepValuesOnly } from "./keep-values.ts";
import { repairFormulas } from "./repair.ts";

/** Tells the user what a command has done. */
export type Report = (sentence: string) => void;

/** Binds the ribbon's buttons; the names are those of the manifest. */
export function associateCommands(report: Report): void {
  Office.actions.associate("repairFormulas", command(repairFormulas, report));
  Office.actions.associate("keepValuesOnly", command(keepValuesOnly, report));
}

/** A button is free again as soon as its work is done or has failed, whatever the pane does; the sentence then stands in the pane. */
export function command(
  work: () => Promise<string>,
  report: Report,
): (event: Office.AddinCommands.Event) => Promise<void> {
  return async (event) => {
    try {
      report(await work());
    } catch (error) {
      report(error instanceof Error ? error.message : String(error));
    } finally {
      event.completed();
    }
    await Office.addin.showAsTaskpane().catch(() => {});
  };
}
