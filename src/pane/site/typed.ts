import type { Cell } from "../../core/kit/tape.ts";
import type { ParamKind } from "../../functions/declare/param.ts";

const NUMBER = /^[-+]?(?:\d{1,3}(?:,\d{3})+|\d+)?(?:\.\d*)?$/;

/** What is typed in a control as the cell holds it: plain numbers as numbers, all else as texts, so that 6:12, 1/8 and 7-16 stay what they are. */
export function typed(text: string, kind: ParamKind): Cell {
  const t = text.trim();
  const number = kind === "number" || kind === "length" || kind === "quantity";
  return number && NUMBER.test(t) && /\d/.test(t) ? Number(t.replaceAll(",", "")) : t;
}
