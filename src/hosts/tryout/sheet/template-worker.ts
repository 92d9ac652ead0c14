/** Makes the files of templates beside the page: the embedded spreadsheet in the page cannot have a second one, without a screen, beside it. */
import { templateNamed } from "../../../templates/insert.ts";
import { writeWorkbook } from "../../../workbook/file/write.ts";
import { VERSION } from "../../../workbook/version.ts";
import { HeadlessWorkbook } from "../engine/headless.ts";

/** What comes back: the file, or a sentence why there is none. */
export type TemplateReply = { readonly bytes: Uint8Array } | { readonly failed: string };

addEventListener("message", ({ data }: MessageEvent<string>) => {
  void fileOf(data).then((reply) => postMessage(reply));
});

async function fileOf(name: string): Promise<TemplateReply> {
  try {
    const workbook = await HeadlessWorkbook.open(templateNamed(name));

    await workbook.arrived();
    return { bytes: await writeWorkbook(workbook.file(VERSION), { version: VERSION }) };
  } catch (error) {
    return { failed: error instanceof Error ? error.message : String(error) };
  }
}
