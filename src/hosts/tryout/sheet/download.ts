import { saveFile } from "../../../pane/parts/files.ts";

const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** Hands a workbook to the browser as a file. */
export function download(name: string, bytes: Uint8Array): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: TYPE }));
  saveFile(name, address);
  // The browser reads the file after the click.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
