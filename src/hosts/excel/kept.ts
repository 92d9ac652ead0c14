import { runInExcel } from "./sheet/run.ts";

/** Before the keys of ours among a workbook's settings. */
const MARK = "sillwork-";

/** See `Host.kept`: the settings of the workbook, which are saved with it and travel with it. */
export function kept(key: string): Promise<string | undefined> {
  return runInExcel(async (context) => {
    const setting = context.workbook.settings.getItemOrNullObject(`${MARK}${key}`);
    setting.load("value");
    await context.sync();
    return setting.isNullObject ? undefined : String(setting.value);
  });
}

/** See `Host.keep`. */
export function keep(key: string, text: string): Promise<void> {
  return runInExcel(async (context) => {
    const { settings } = context.workbook;
    const before = settings.getItemOrNullObject(`${MARK}${key}`);
    await context.sync();
    if (text !== "") settings.add(`${MARK}${key}`, text);
    else if (!before.isNullObject) before.delete();
    await context.sync();
  });
}
