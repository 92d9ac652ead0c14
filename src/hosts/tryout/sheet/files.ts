import type { WorkbookFile } from "../../../workbook/file/model.ts";
import { VERSION } from "../../../workbook/version.ts";
import type { TryOutSheet } from "./browser.ts";
import { download } from "./download.ts";
import { drafts, type Source } from "./drafts.ts";

/** Work is kept as a draft after this long without a change, in milliseconds. */
const DRAFT_PAUSE_MS = 1_500;

/** What the bar above the sheet does: workbooks from files and into them, and a draft of the work. */
export class Files {
  readonly #sheet: TryOutSheet;
  readonly #say: (sentence: string) => void;
  #pause: ReturnType<typeof setTimeout> | undefined;
  /** changed since the work was last written into a file */
  #unsaved = false;
  /** the file that the workbook came from */
  #source: Source | undefined;
  #drafts = true;

  /** @param say shows a sentence to the user */
  constructor(sheet: TryOutSheet, say: (sentence: string) => void) {
    this.#sheet = sheet;
    this.#say = say;
    sheet.onEdit(() => this.#edited());
    addEventListener("beforeunload", (event) => {
      if (this.#unsaved) event.preventDefault();
    });
  }

  /** Takes up the work that was left, if the browser kept any. */
  async resume(): Promise<void> {
    const draft = await drafts.last().catch(() => undefined);
    if (draft === undefined) return;
    await this.#sheet.openFile(draft.file);
    this.#source = draft.source;
    this.#sheet.moved = draft.moved === true;
    this.#unsaved = true;
    this.#say(
      `Your work of ${new Date(draft.kept).toLocaleString()} is open again. Open the demo brings the demo back.`,
    );
  }

  async open(chosen: File): Promise<void> {
    if (!this.#mayLeave()) return;
    await this.#tried(async () => {
      const { readWorkbook } = await import("../../../workbook/file/read.ts");
      const bytes = new Uint8Array(await chosen.arrayBuffer());
      const { file, leftOut } = await readWorkbook(bytes, chosen.name);
      await this.#sheet.openFile(file);
      this.#source = { bytes, file: await this.#sheet.file(), leftOut };
      this.#unsaved = false;
      const missing =
        leftOut.length === 0 ? "" : ` Not shown here: ${leftOut.join(", ")}. Saving keeps them in the file.`;
      return `${chosen.name} is open.${missing}`;
    });
  }

  async save(valuesOnly: boolean): Promise<void> {
    await this.#tried(async () => {
      const file = await this.#sheet.file();
      const title = file.title.replace(/\.xlsx$/i, "");
      if (valuesOnly) return this.#saveValues(file, `${title} (values only).xlsx`);
      const kept = await this.#intoSource(file);
      if (kept !== undefined) return this.#saved(`${title}.xlsx`, kept, "");
      const lost = this.#source?.leftOut ?? [];
      const name = lost.length === 0 ? `${title}.xlsx` : `${title} (Sillwork).xlsx`;
      if (lost.length > 0 && !confirm(loss(name, lost))) return "Not saved: your file is as it was.";
      const { writeWorkbook } = await import("../../../workbook/file/write.ts");
      const bytes = await writeWorkbook(file, { version: VERSION });
      return this.#saved(name, bytes, lost.length === 0 ? "" : ` It does not hold: ${lost.join(", ")}.`);
    });
  }

  async #saveValues(file: WorkbookFile, name: string): Promise<string> {
    const { writeWorkbook } = await import("../../../workbook/file/write.ts");
    download(name, await writeWorkbook(file, { version: VERSION, valuesOnly: true }));
    return `${name} holds values in the place of formulas; your work is unchanged.`;
  }

  #saved(name: string, bytes: Uint8Array, says: string): string {
    download(name, bytes);
    this.#unsaved = false;
    return `${name} is saved.${says}`;
  }

  /** The file that was opened with the changes in it; undefined where there is none, or where rows, columns or worksheets have moved. */
  async #intoSource(file: WorkbookFile): Promise<Uint8Array | undefined> {
    const source = this.#source;
    if (source === undefined || source.leftOut.length === 0 || this.#sheet.moved) return undefined;
    const { fitsInto, writeInto } = await import("../../../workbook/file/into.ts");
    return fitsInto(source, file) ? writeInto(source, file) : undefined;
  }

  /** Back to the demo, or to a workbook with nothing in it. */
  async startAnew(what: "demo" | "blank"): Promise<void> {
    if (!this.#mayLeave()) return;
    await this.#tried(async () => {
      await drafts.forget().catch(() => {});
      await (what === "demo" ? this.#sheet.openDemo() : this.#sheet.openBlank());
      this.#source = undefined;
      this.#unsaved = false;
      return what === "demo"
        ? "The demo is open."
        : "A new workbook is open: Templates in the pane has sheets to start from.";
    });
  }

  #mayLeave(): boolean {
    return !this.#unsaved || confirm("The work in the sheet is not in a file yet. Leave it?");
  }

  async #tried(work: () => Promise<string>): Promise<void> {
    try {
      this.#say(await work());
    } catch (error) {
      this.#say(error instanceof Error ? error.message : String(error));
    }
  }

  #edited(): void {
    this.#unsaved = true;
    clearTimeout(this.#pause);
    this.#pause = setTimeout(() => void this.#keep(), DRAFT_PAUSE_MS);
  }

  async #keep(): Promise<void> {
    if (!this.#drafts) return;
    try {
      const [source, moved] = [this.#source, this.#sheet.moved];
      await drafts.keep({ file: await this.#sheet.file(), kept: Date.now(), source, moved });
    } catch {
      this.#drafts = false;
      this.#say("This browser keeps no draft of your work here: save it as a file before you leave.");
    }
  }
}

/** What is asked before a file is made that holds less than the one that was opened. */
function loss(name: string, lost: readonly string[]): string {
  return `Rows, columns or worksheets have moved since the file was opened, so it is written anew as ${name}. The new file will not hold: ${lost.join(", ")}. The file that you opened stays as it is. Save?`;
}
