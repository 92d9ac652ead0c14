import { ICommandService, type Univer } from "@univerjs/core";
import { IEditorBridgeService, IEditorService } from "@univerjs/preset-sheets-core";
import type { Typed } from "../../../workbook/host.ts";
import type { CellAddress } from "../../../workbook/ledger.ts";

/** What the engine does while a cell is typed in: the text, the caret, and the editor that opens and closes. */
const COMMANDS = new Set([
  "doc.mutation.rich-text-editing",
  "doc.operation.set-selections",
  "sheet.operation.set-cell-edit-visible",
]);

/** See `Host.onTyping`. */
export function followTyping(
  univer: Univer,
  active: () => CellAddress | undefined,
  listener: (typed: Typed | undefined) => void,
): () => void {
  const injector = univer.__getInjector();
  let typing = false;
  const tell = (): void => {
    const typed = typedIn(univer, active());
    if (typed === undefined && !typing) return;
    typing = typed !== undefined;
    listener(typed);
  };
  const watch = injector.get(ICommandService).onCommandExecuted(({ id }) => {
    // The editor takes what a command says after it.
    if (COMMANDS.has(id)) setTimeout(tell, 0);
  });
  return () => watch.dispose();
}

function typedIn(univer: Univer, address: CellAddress | undefined): Typed | undefined {
  const injector = univer.__getInjector();
  const open = injector.get(IEditorBridgeService).isVisible().visible;
  const editor = injector.get(IEditorService).getFocusEditor();
  if (!open || !editor || address === undefined) return undefined;
  const text = (editor.getDocumentData().body?.dataStream ?? "").replace(/\r?\n$/, "");
  const caret = editor.getSelectionRanges()[0]?.startOffset ?? text.length;
  return { address, text, caret: Math.min(caret, text.length) };
}
