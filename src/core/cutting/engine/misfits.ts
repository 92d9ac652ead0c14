import { BadInput } from "../../kit/refusal.ts";
import { byText } from "./goal-costs.ts";

/** Names that a refusal lists. */
const MOST_NAMES = 6;
/** Stock no longer than this was written in feet, or is an offcut. */
const SHORT_STOCK_IN = 40;

interface Named {
  readonly id: string;
  readonly name?: string;
}

/** What sentences call a part. */
export const nameOfPart = (p: Named): string => p.name ?? p.id;

/** The refusal of parts that no stock holds, by name. */
export function misfitsRefused(
  parts: readonly Named[],
  stocks: readonly { readonly lengthIn: number }[],
  why: string,
  todo: string,
): BadInput {
  const names = [...new Set(parts.map(nameOfPart))].sort(byText);
  const more = names.length > MOST_NAMES ? ` and ${names.length - MOST_NAMES} more` : "";
  const short = stocks.every((s) => s.lengthIn <= SHORT_STOCK_IN);
  return new BadInput(
    `${names.slice(0, MOST_NAMES).join(", ")}${more} fit${names.length === 1 ? "s" : ""} no stock`,
    why,
    short ? `${todo}; a bare number is in inches: where feet are meant, write 8 ft` : todo,
  );
}
