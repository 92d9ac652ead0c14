import { BadInput, OutOfRange } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { type Zone, zoneColumn, zoneName } from "../climate/zone.ts";
import { CODE_COLUMNS, CODE_SOURCE, type CodeColumn, type CodeEdition, type CodeKind } from "../tables/energy-code.ts";

const UNIT: Readonly<Record<CodeKind, string>> = { R: "h ft2 F/Btu", U: "Btu/(h ft2 F)", ACH50: "1/h" };

/** Parts that a kind of table lists in any edition. */
export function codeParts(kind: CodeKind): readonly string[] {
  return [...new Set(CODE_COLUMNS.filter((c) => c.kind === kind).map((c) => c.part))];
}

/**
 * What the residential energy code asks of a component.
 * @param kind "R" for the insulation table, "U" for the U-factor table, "ACH50" for air leakage
 * @param part such as "wood wall", "ceiling", "floor", "window": one of codeParts
 * @returns the cell: a number, or text such as "20 or 13+5"
 * @throws BadInput for a part that the edition does not list, OutOfRange for a zone that it does not
 * Source: IECC 2012 to 2024 Tables R402.1.2 to R402.1.4 and R402.4.1, and the codes of three states.
 */
export function codeValue(
  kind: CodeKind,
  zone: Zone,
  part: string,
  edition: CodeEdition,
  tape?: Tape,
): number | string {
  const columns = columnsOf(kind, part, edition);
  const clause = CODE_SOURCE[edition][kind];
  const key = zoneColumn(zone, tape);
  const column = columns.find((c) => cellOf(c, key) !== undefined);
  const text = column === undefined ? undefined : cellOf(column, key);
  if (column === undefined || text === undefined) {
    throw new OutOfRange(
      `Zone ${zoneName(zone)} is not kept for ${part}`,
      `${clause} is kept for zones ${columns
        .flatMap((c) => Object.keys(c.byZones))
        .join(" ")
        .replaceAll(" ", ", ")}`,
      "Ask the building department for the row, or use another edition",
    );
  }
  if (column.known === "memory") {
    tape?.caution(`This cell (${clause}, ${column.part}) is from memory: check it against the code.`);
  }
  const value = /^[\d.]+$/.test(text) ? Number(text) : text;
  const unit = part.endsWith("slab edge") ? "Btu/(h ft F)" : part === "SHGC" ? "" : UNIT[kind];
  tape?.step(kind, `${column.part}, zone ${zoneName(zone)}`, value, unit, clause);
  return value;
}

function cellOf(column: CodeColumn, zone: string): string | undefined {
  return Object.entries(column.byZones).find(([zones]) => zones.split(" ").includes(zone))?.[1];
}

function columnsOf(kind: CodeKind, part: string, edition: CodeEdition): readonly CodeColumn[] {
  const own = CODE_COLUMNS.filter((c) => c.edition === edition && c.kind === kind);
  const columns = own.filter((c) => c.part === part);
  if (columns.length > 0) return columns;
  const parts = [...new Set(own.map((c) => c.part))];
  const others = [...new Set(CODE_COLUMNS.filter((c) => c.kind === kind && c.part === part).map((c) => c.edition))];
  throw new BadInput(
    `"${part}" is not kept for ${CODE_SOURCE[edition][kind]}`,
    parts.length === 0 ? `no ${kind} table of that edition is kept` : `what is kept: ${parts.join(", ")}`,
    `Use one of these editions: ${others.join(", ")}`,
  );
}
