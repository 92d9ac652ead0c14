import { saveFile } from "../../../pane/parts/files.ts";
import { VERSION } from "../../../workbook/version.ts";

/** See `Host.templateFile`. The build has calculated the templates and written them beside the page: see webpack.config.js. */
export async function templateFile(template: string): Promise<string> {
  const name = `${template}.xlsx`;
  const address = new URL(`templates/${encodeURIComponent(name)}?${VERSION}`, location.href).href;
  saveFile(name, address);
  return `${name} goes where the browser keeps its downloads. Where Excel shows none, open this address in a browser: ${address}`;
}
