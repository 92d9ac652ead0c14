import type { Zone } from "../../../core/enclosure/climate/zone.ts";
import { zoneName } from "../../../core/enclosure/climate/zone.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import { oneCell } from "../../declare/cell.ts";
import type { Param } from "../../declare/param.ts";

const ZONES = [
  ...["0A", "0B", "1A", "1B", "2A", "2B", "3A", "3B", "3C", "4A", "4B", "4C"],
  ...["5A", "5B", "5C", "6A", "6B", "7", "8"],
] as const;
const SAYS = "climate zone of the energy code, such as 5, 5A, 4C or marine 4";

/**
 * Reads a climate zone: `5`, `5A`, `4C`, `marine 4`, `zone 6`.
 * @throws BadInput for anything else
 */
export function readZone(text: string): Zone {
  const tidy = text
    .trim()
    .toLowerCase()
    .replace(/^(climate )?zone /, "")
    .replace(/\s+/g, " ");
  const marine = /^(?:marine ([345])|([345]) marine)$/.exec(tidy);
  if (marine !== null) return { number: Number(marine[1] ?? marine[2]), regime: "C" };
  const zone = /^([0-8])([abc])?$/.exec(tidy);
  if (zone !== null) return { number: Number(zone[1]), regime: (zone[2] ?? "").toUpperCase() as Zone["regime"] };
  throw new BadInput(
    `"${text}" is not a climate zone`,
    "zones run from 0 to 8, with A moist, B dry or C marine behind",
    "Write it like 5A, 6, 4C or marine 4",
  );
}

/** A climate zone in the ways that people write it. */
export const climateZone: Param<Zone, string | number> = {
  kind: "choice",
  says: SAYS,
  unit: "",
  choices: ZONES,
  read(raw, at) {
    const zone = readZone(String(oneCell(raw, at, SAYS)));
    return { value: zone, shown: zoneName(zone) };
  },
};
