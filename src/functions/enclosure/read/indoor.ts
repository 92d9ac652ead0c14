import type { IndoorCondition } from "../../../core/enclosure/moisture/indoor.ts";
import { BadInput } from "../../../core/kit/refusal.ts";

/**
 * Reads an indoor condition by its name.
 * @throws BadInput for anything else
 */
export function readIndoor(text: string): IndoorCondition {
  const tidy = text.trim().toLowerCase().replace(/\s+/g, " ");
  const byClass = /^(?:iso )?(?:humidity )?class ([1-4])( 2001| x ?1\.10?)?$/.exec(tidy);
  if (byClass !== null) {
    return { kind: "class", level: Number(byClass[1]) as 1 | 2 | 3 | 4, margin2001: byClass[2] !== undefined };
  }
  const en = /^en ?15026( high)?$/.exec(tidy);
  if (en !== null) return { kind: "EN 15026", high: en[1] !== undefined };
  if (/^(air[- ]?condition(ed|ing)|cooled|cooling)$/.test(tidy)) return { kind: "air conditioned" };
  throw new BadInput(
    `The indoor condition "${text}" is not known`,
    "it is a humidity class, EN 15026, air conditioned, or a temperature with a humidity",
    'Use "class 2", "EN 15026", "air conditioned", or a row such as {"heated",70,40}',
  );
}
