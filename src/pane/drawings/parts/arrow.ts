import { type Part, path } from "./frame.ts";
import { at } from "./scale.ts";

const HEAD = 6;

/** A force: a line from one place to another with a head at its end. */
export function arrow(x1: number, y1: number, x2: number, y2: number, look = "dw-force"): Part {
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
  const wing = (side: 1 | -1) => `${at(x2 - HEAD * (ux - side * uy * 0.6))} ${at(y2 - HEAD * (uy + side * ux * 0.6))}`;
  return path(`M${at(x1)} ${at(y1)}L${at(x2)} ${at(y2)}M${wing(1)}L${at(x2)} ${at(y2)}L${wing(-1)}`, look);
}
