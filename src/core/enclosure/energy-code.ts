import { BadInput, OutOfRange } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { CODE_COLUMNS, CODE_SOURCE, type CodeEdition } from "./tables/energy-code.ts";
import { isMarine4, type Zone, zoneName } from "./zone.ts";

const ALSO: Readonly<Record<string, string>> = {
  roof: "ceiling",
  attic: "ceiling",
  wall: "wood wall",
  "frame wall": "wood wall",
  "wood frame wall": "wood wall",
  "wood-frame wall": "wood wall",
  fenestration: "window",
  windows: "window",
  door: "window",
  basement: "basement wall",
  crawlspace: "crawl wall",
  "crawlspace wall": "crawl wall",
  "crawl space wall": "crawl wall",
  shgc: "SHGC",
};

/**
 * What the residential energy code asks of a component.
 * @param kind "R" for the insulation table, "U" for the U-factor table
 * @param part such as "wood wall", "ceiling", "floor", "window"
 * @returns the cell: a number, or text such as "20 or 13+5"
 * @throws BadInput for a part that the edition does not list, OutOfRange for a zone that it does not
 * Source: IECC 2018 and 2021 Tables R402.1.2 to R402.1.4; Washington State Energy Code 2021.
 */
export function codeValue(
  kind: "R" | "U",
  zone: Zone,
  part: string,
  edition: CodeEdition,
  tape?: Tape,
): number | string {
  const wanted = part.trim().toLowerCase().replace(/\s+/g, " ");
  const name = Object.hasOwn(ALSO, wanted) ? (ALSO[wanted] ?? wanted) : wanted;
  const own = CODE_COLUMNS.filter((c) => c.edition === edition && c.kind === kind);
  const columns = own.filter((c) => c.part.toLowerCase() === name.toLowerCase());
  const clause = CODE_SOURCE[edition][kind];
  if (columns.length === 0) {
    const parts = [...new Set(own.map((c) => c.part))];
    throw new BadInput(
      `"${part}" is not a part that is kept for ${clause}`,
      parts.length === 0 ? `no ${kind} table of that edition is kept` : "only some rows were found or are known",
      parts.length === 0 ? "Use another edition" : `Use one of: ${parts.join(", ")}`,
    );
  }
  const key = isMarine4(zone, tape) ? "4C" : String(zone.number);
  const column = columns.find((c) => Object.hasOwn(c.byZone, key));
  const text = column?.byZone[key];
  if (column === undefined || text === undefined) {
    throw new OutOfRange(
      `Zone ${zoneName(zone)} is not in the table`,
      `${clause} is kept for zones ${columns.flatMap((c) => Object.keys(c.byZone)).join(", ")}`,
      "Ask the building department for the row",
    );
  }
  if (column.memory) tape?.caution(`This cell (${clause}, ${column.part}) is from memory: check it against the code.`);
  const value = /^[\d.]+$/.test(text) ? Number(text) : text;
  const unit = kind === "R" ? "h ft2 F/Btu" : column.part === "SHGC" ? "" : "Btu/(h ft2 F)";
  tape?.step(kind, `${column.part}, zone ${zoneName(zone)}`, value, unit, clause);
  return value;
}
