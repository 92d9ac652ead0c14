const LEAST = 280;
const STEP = 24;

/** Lets the divider between sheet and pane be dragged, or moved by the arrow keys; the width is the style variable --pane on `page`. */
export function makeResizable(page: HTMLElement, divider: HTMLElement): void {
  const setWidth = (wanted: number): void => {
    const most = Math.max(LEAST, page.clientWidth - LEAST);
    const width = Math.round(Math.min(most, Math.max(LEAST, wanted)));
    page.style.setProperty("--pane", `${width}px`);
    divider.setAttribute("aria-valuenow", String(width));
    divider.setAttribute("aria-valuemax", String(most));
  };
  const current = (): number => page.clientWidth - divider.offsetLeft - divider.offsetWidth;

  divider.setAttribute("aria-valuemin", String(LEAST));
  setWidth(current());
  divider.addEventListener("pointerdown", (event) => {
    divider.setPointerCapture(event.pointerId);
    event.preventDefault();
  });
  divider.addEventListener("pointermove", (event) => {
    if (divider.hasPointerCapture(event.pointerId)) setWidth(page.getBoundingClientRect().right - event.clientX);
  });
  divider.addEventListener("keydown", (event) => {
    const way = { ArrowLeft: STEP, ArrowRight: -STEP }[event.key];
    if (way === undefined) return;
    event.preventDefault();
    setWidth(current() + way);
  });
}
