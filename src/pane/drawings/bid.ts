import type { SVGTemplateResult } from "lit-html";
import type { BidPicture } from "../../core/cost/pictures.ts";
import { dollars } from "./parts/figures.ts";
import { box, frame, line, type Part, SMALL, TEXT, write } from "./parts/frame.ts";
import { linear } from "./parts/scale.ts";
import { fitText, textWidth } from "./parts/text.ts";

const BAR = 12;
const ROW = 34;

/** The build-up of a price: each step a bar from where the one before it ends, the price below them all. */
export function bid(picture: BidPicture, width: number): SVGTemplateResult {
  const ends = picture.steps.flatMap((s) => [s.from, s.to]);
  const x = linear([Math.min(0, ...ends), Math.max(picture.price, ...ends, 1)], [1, width - 1]);
  const rows = [...picture.steps, { step: "price", from: 0, to: picture.price }];
  const parts: Part[] = [];
  rows.forEach(({ step, from, to }, i) => {
    const y = i * ROW;
    const last = i === rows.length - 1;
    const look = last ? "dw-strong" : "dw-text";
    const amount = dollars(to - from);
    const room = width - textWidth(amount, TEXT) - 12;
    parts.push(write(fitText(step, TEXT, room), 0, y + TEXT, look), write(amount, width, y + TEXT, look, "end"));
    parts.push(
      box(Math.min(x(from), x(to)), y + TEXT + 4, Math.abs(x(to) - x(from)), BAR, last ? "dw-governs" : "dw-part"),
    );
    if (!last) parts.push(line(x(to), y + TEXT + 4, x(to), y + ROW + TEXT + 4, "dw-leader"));
  });
  return frame(picture, "Build-up of the price", width, rows.length * ROW + SMALL / 2, parts);
}
