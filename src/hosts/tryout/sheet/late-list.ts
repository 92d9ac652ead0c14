import { ICommandService, type Univer } from "@univerjs/core";
import { DeviceInputEventType } from "@univerjs/engine-render";
import { IEditorService, KeyCode } from "@univerjs/preset-sheets-core";

const KEYS = new Set(["Enter", "Tab"]);

/**
 * The engine's list of function names follows the keys by a third of a second, more on a busy machine. When it opens after the bracket is closed, Enter
 * would not leave the cell but put the first name of the list in the place of the function that was typed. Such a list is closed, then the key goes on.
 *
 * Call it before the engine is made: its own ears for keys come later then.
 * @param engine gives the engine when there is one
 */
export function closeLateLists(engine: () => Univer | undefined): () => void {
  const listen = (event: KeyboardEvent): void => {
    const univer = engine();
    if (univer === undefined || !event.isTrusted || !KEYS.has(event.key) || event.isComposing) return;
    const close = lateList(univer);
    if (close === undefined) return;
    event.stopImmediatePropagation();
    event.preventDefault();
    close();
    const { key, code, keyCode, shiftKey } = event;
    const again = new KeyboardEvent("keydown", { key, code, keyCode, shiftKey, bubbles: true, cancelable: true });
    // The list lets go of the keys when it has been drawn without its names.
    setTimeout(() => (event.target as Element).dispatchEvent(again), 50);
  };
  window.addEventListener("keydown", listen, { capture: true });
  return () => window.removeEventListener("keydown", listen, { capture: true });
}

/** What closes the list of names, where one is open though no name stands before the caret. */
function lateList(univer: Univer): (() => void) | undefined {
  const injector = univer.__getInjector();
  const editor = injector.get(IEditorService).getFocusEditor();
  if (!editor) return undefined;
  const operation = `sheet.formula-embedding-editor.search_function.${editor.getEditorId()}`;
  const commands = injector.get(ICommandService);
  const text = editor.getDocumentData().body?.dataStream ?? "";
  const caret = editor.getSelectionRanges()[0]?.startOffset ?? text.length;
  if (!text.startsWith("=") || /[\w.]/.test(text.charAt(caret - 1)) || !commands.hasCommand(operation))
    return undefined;
  return () => {
    const parameters = { eventType: DeviceInputEventType.Keyboard, keyCode: KeyCode.ESC };
    commands.syncExecuteCommand(operation, parameters);
  };
}
