import { render } from "lit-html";
import { AsyncDirective } from "lit-html/async-directive.js";
import { directive, type ElementPart } from "lit-html/directive.js";
import type { PictureBase } from "../../core/kit/picture.ts";
import { drawing, NARROWEST } from "./index.ts";

/** A drawing is laid out anew when its place has changed by this many pixels; in between it is scaled. */
const STEP = 20;

class Fitted extends AsyncDirective {
  #picture: PictureBase | undefined;
  #place: Element | undefined;
  #width = 0;
  #watch: ResizeObserver | undefined;

  render(_picture: PictureBase): undefined {
    return undefined;
  }

  override update(part: ElementPart, [picture]: [PictureBase]): undefined {
    const changed = picture !== this.#picture;
    this.#picture = picture;
    if (part.element !== this.#place) {
      this.#place = part.element;
      this.reconnected();
    }
    if (changed) this.#draw();
  }

  override disconnected(): void {
    this.#watch?.disconnect();
    this.#watch = undefined;
  }

  override reconnected(): void {
    this.#watch?.disconnect();
    if (this.#place === undefined) return;
    this.#watch = new ResizeObserver(() => this.#resized());
    this.#watch.observe(this.#place);
  }

  #resized(): void {
    const width = Math.floor((this.#place?.clientWidth ?? 0) / STEP) * STEP;
    // A hidden pane has no width; what is drawn stays.
    if (width === 0 || width === this.#width) return;
    this.#width = width;
    this.#draw();
  }

  #draw(): void {
    if (this.#picture === undefined || this.#place === undefined) return;
    const drawn = drawing(this.#picture, Math.max(NARROWEST, this.#width));
    if (drawn !== undefined) render(drawn, this.#place as HTMLElement);
  }
}

/** Draws a picture into an element and keeps it laid out for the element's width. */
export const fitted = directive(Fitted);
