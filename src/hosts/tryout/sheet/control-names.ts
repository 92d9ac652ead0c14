/** Names of the engine's controls, which it draws as pictures without words, by a selector; several names go to its matches in their order. */
const NAMES: readonly (readonly [selector: string, ...names: string[]])[] = [
  ["[data-u-command='univer.command.undo']", "Undo"],
  ["[data-u-command='univer.command.redo']", "Redo"],
  ["[data-u-command='sheet.command.set-once-format-painter']", "Copy format"],
  ["[data-u-command='sheet.command.clear-selection-all']", "Clear cells and formats"],
  ["[data-u-command='sheet.command.set-range-font-increase']", "Larger text"],
  ["[data-u-command='sheet.command.set-range-font-decrease']", "Smaller text"],
  ["[data-u-command='sheet.command.set-range-bold']", "Bold"],
  ["[data-u-command='sheet.command.set-range-italic']", "Italic"],
  ["[data-u-command='sheet.command.set-range-underline']", "Underline"],
  ["[data-u-command='sheet.command.set-range-stroke']", "Strike through"],
  ["[data-u-command='sheet.command.numfmt.set.percent']", "Percent format"],
  ["[data-u-command='sheet.command.numfmt.set.currency']", "Currency format"],
  ["[data-u-command='sheet.command.numfmt.add.decimal.command']", "More decimals"],
  ["[data-u-command='sheet.command.numfmt.subtract.decimal.command']", "Fewer decimals"],
  ["[data-u-command='sheet.command.add-range-protection-from-toolbar']", "Protect cells"],
  ["[data-u-command='base-ui.operation.toggle-shortcut-panel']", "Keyboard shortcuts"],
  ["[data-u-comp='defined-name'] input", "Cell or name"],
  ["[data-u-comp='defined-name'] a", "Names"],
  ["[data-u-comp='formula-bar'] button", "Height of the formula bar"],
  ["[data-u-comp='sheet-bar-append-button']", "Add a worksheet", "All worksheets"],
  ["button[data-u-comp='button']", "Smaller zoom", "Larger zoom"],
  ["a[role='button']", "Zoom at 100 %"],
  ["button[role='handle']", "Zoom"],
  ["[data-u-comp='editor'][contenteditable]", "Cell contents"],
];

/** Words from a command's id, for a control that has no name in the list. */
function wordsOf(command: string): string {
  const last =
    command
      .replace(/\.command$/, "")
      .split(".")
      .at(-1) ?? command;
  const words = last.replace(/^set-/, "").replaceAll("-", " ");
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** Gives every control of the embedded spreadsheet a name that a screen reader can say, now and whenever it draws new ones. */
export function nameControls(sheet: HTMLElement): void {
  const name = (): void => {
    for (const [selector, ...names] of NAMES) {
      [...sheet.querySelectorAll(selector)].forEach((control, i) => {
        giveName(control, names[Math.min(i, names.length - 1)] ?? "");
      });
    }
    for (const control of sheet.querySelectorAll<HTMLElement>("button, input, a, [role='button']")) {
      giveName(control, nameFor(control));
    }
    giveRoles(sheet);
  };
  name();
  new MutationObserver(name).observe(sheet, { childList: true, subtree: true, attributeFilter: ["aria-haspopup"] });
}

/** The engine marks what opens a menu, what is typed in and what slides in words that mean nothing to a screen reader, or leaves the mark off. */
function giveRoles(sheet: HTMLElement): void {
  for (const opener of sheet.querySelectorAll("div[aria-haspopup]:not([role]), a[aria-haspopup]:not([role])")) {
    if (opener.querySelector("button, input, [tabindex]") !== null) {
      // The control inside it is what the keys reach.
      for (const mark of ["aria-haspopup", "aria-expanded"]) opener.removeAttribute(mark);
      continue;
    }
    opener.setAttribute("role", "button");
    if (!opener.hasAttribute("tabindex")) opener.setAttribute("tabindex", "0");
    giveName(opener, nameFor(opener as HTMLElement));
  }
  for (const editor of sheet.querySelectorAll("[contenteditable][aria-label]:not([role])")) {
    editor.setAttribute("role", "textbox");
  }
  for (const unknown of sheet.querySelectorAll("[role='track'], [role='handle']")) unknown.removeAttribute("role");
  for (const early of sheet.querySelectorAll("[tabindex='1']")) early.setAttribute("tabindex", "0");
  const places = [...document.querySelectorAll("section[aria-live][aria-label^='Notifications']")];
  for (const [i, place] of places.entries()) if (i > 0) place.setAttribute("aria-label", `Notifications ${i + 1}`);
}

function giveName(control: Element, words: string): void {
  if (control.hasAttribute("aria-label") || control.textContent?.trim()) return;
  control.setAttribute("aria-label", words);
}

function nameFor(control: HTMLElement): string {
  const command = control.dataset.uCommand ?? control.closest<HTMLElement>("[data-u-command]")?.dataset.uCommand;
  if (command !== undefined) return wordsOf(command);
  if (!(control instanceof HTMLInputElement)) return "Spreadsheet control";
  return Number.isNaN(Number(control.value)) ? "Font" : "Size of text";
}
