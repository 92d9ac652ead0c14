/** A part of the page that the keyboard can go to. */
export interface Region {
  /** undefined while it is not drawn */
  readonly element: () => Element | null;
  focus(): void;
}

/**
 * F6 and Shift+F6 go from one part of the page to the next, as in other spreadsheets: Tab stays inside the sheet, where it goes from cell to cell, so
 * without them the keyboard could never leave it.
 */
export function goRoundRegions(regions: readonly Region[]): void {
  const go = (event: KeyboardEvent): void => {
    if (event.key !== "F6" || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    const there = regions.filter(({ element }) => element() !== null);
    const here = there.findIndex(({ element }) => element()?.contains(document.activeElement));
    const step = event.shiftKey ? -1 : 1;
    there[(here + step + there.length) % there.length]?.focus();
  };
  // Before the embedded spreadsheet hears of the key.
  window.addEventListener("keydown", go, { capture: true });
}
