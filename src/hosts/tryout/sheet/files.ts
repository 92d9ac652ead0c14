import { VERSION } from "../../../workbook/version.ts";
import type { TryOutSheet } from "./browser.ts";
import { download } from "./download.ts";
import { drafts } from "./drafts.ts";

/** Work is kept as a draft after this long without a change, in milliseconds. */
const DRAFT_PAUSE_MS = 1_500;

/** What the bar above the sheet does: workbooks from files and into them, and a draft of the work. */
export class Files {
  readonly #sheet: TryOutSheet;
  readonly #say: (sentence: string) => void;
  #pause: ReturnType<typeof setTimeout> | undefined;
  /** changed since the work was last written into a file */
  #unsaved = false;
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
    this.#unsaved = true;
    this.#say(
      `Your work of ${new Date(draft.kept).toLocaleString()} is open again. Open the demo brings the demo back.`,
    );
  }

  async open(chosen: File): Promise<void> {
    if (!this.#mayLeave()) return;
    await this.#tried(async () => {
      const { readWorkbook } = await import("../../../workbook/file/read.ts");
      const { file, leftOut } = await readWorkbook(new Uint8Array(await chosen.arrayBuffer()), chosen.name);
      await this.#sheet.openFile(file);
      this.#unsaved = false;
      const missing =
        leftOut.length === 0 ? "" : ` Left out: ${leftOut.join(", ")}; they would be missing when you save.`;
      return `${chosen.name} is open.${missing}`;
    });
  }

  async save(valuesOnly: boolean): Promise<void> {
    await this.#tried(async () => {
      const { writeWorkbook } = await import("../../../workbook/file/write.ts");
      const file = await this.#sheet.file();
      const name = `${file.title.replace(/\.xlsx$/i, "")}${valuesOnly ? " (values only)" : ""}.xlsx`;
      download(name, await writeWorkbook(file, { version: VERSION, valuesOnly }));
      if (!valuesOnly) this.#unsaved = false;
      return valuesOnly
        ? `${name} holds values in the place of formulas; your work is unchanged.`
        : `${name} is saved.`;
    });
  }

  /** Back to the demo, or to a workbook with nothing in it. */
  async startAnew(what: "demo" | "blank"): Promise<void> {
    if (!this.#mayLeave()) return;
    await this.#tried(async () => {
      await drafts.forget().catch(() => {});
      await (what === "demo" ? this.#sheet.openDemo() : this.#sheet.openBlank());
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
      await drafts.keep({ file: await this.#sheet.file(), kept: Date.now() });
    } catch {
      this.#drafts = false;
      this.#say("This browser keeps no draft of your work here: save it as a file before you leave.");
    }
  }
}
