import { html, nothing, render } from "lit-html";
import type { PictureBase } from "../../core/kit/picture.ts";
import { fitted } from "../drawings/fitted.ts";

/**
 * Shows a picture as large as the window. It stands beside the pane and not in it: the pane is drawn anew whenever the cell calculates again, and a picture
 * that someone looks at would be gone.
 */
export function enlarge(event: Event, picture: PictureBase): void {
  const from = event.currentTarget as HTMLElement;
  const dialog = document.createElement("dialog");
  dialog.className = "sw-pane sw-large";
  const theme = from.closest<HTMLElement>("[data-theme]")?.dataset.theme;
  if (theme !== undefined) dialog.dataset.theme = theme;
  dialog.setAttribute("aria-label", picture.alt);
  render(
    html`<form method="dialog"><button type="submit" class="sw-plain">Close</button></form>
      <div class="sw-drawing" aria-hidden="true" ${fitted(picture)}></div>`,
    dialog,
  );
  dialog.addEventListener("close", () => {
    render(nothing, dialog);
    dialog.remove();
  });
  document.body.append(dialog);
  dialog.showModal();
}
