import { HOW_KNOWN, type Known } from "../../kit/known.ts";
import { BadInput, OutOfRange } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { type Zone, zoneColumn, zoneName } from "../climate/zone.ts";
import {
  CODE_COLUMNS,
  CODE_EDITIONS,
  CODE_SOURCE,
  type CodeColumn,
  type CodeEdition,
  type CodeKind,
} from "../tables/energy-code.ts";

const UNIT: Readonly<Record<CodeKind, string>> = { R: "h ft2 F/Btu", U: "Btu/(h ft2 F)", ACH50: "1/h" };

/** Parts that a kind of table lists in any edition. */
export function codeParts(kind: CodeKind): readonly string[] {
  return [...new Set(CODE_COLUMNS.filter((c) => c.kind === kind).map((c) => c.part))];
}

/** Where the figures of an edition stand and how its cells are known; undefined where none is kept. */
export function codeSource(kind: CodeKind, edition: CodeEdition): string | undefined {
  const cells = CODE_COLUMNS.filter((c) => c.kind === kind && c.editions.includes(edition)).flatMap((c) =>
    Object.keys(c.byZones)
      .flatMap((zones) => zones.split(" "))
      .map((zone) => knownOf(c, edition, zone)),
  );
  if (cells.length === 0) return undefined;
  const count = (known: Known) => cells.filter((k) => k === known).length;
  if (count("read") === cells.length) return `${CODE_SOURCE[edition][kind]} (read in a print)`;
  const parts = [
    [count("read"), "read in a print"],
    [count("checked"), "the same in prints of an earlier and a later edition"],
    [count("memory"), "from memory"],
  ] as const;
  const words = parts.filter(([n]) => n > 0).map(([n, how]) => `${n} ${how}`);
  return `${CODE_SOURCE[edition][kind]} (of ${cells.length} cells ${words.join(", ")})`;
}

/** The sources of a kind of table, edition by edition. */
export function codeSources(kind: CodeKind): readonly [string, ...string[]] {
  const [first = "", ...rest] = CODE_EDITIONS.flatMap((edition) => codeSource(kind, edition) ?? []);
  return [first, ...rest];
}

/** Whether an edition's table lists a part at all. */
export function codeKeeps(kind: CodeKind, part: string, edition: CodeEdition): boolean {
  return CODE_COLUMNS.some((c) => c.kind === kind && c.part === part && c.editions.includes(edition));
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
  const known = knownOf(column, edition, key);
  if (known !== "read")
    tape?.caution(`This cell (${clause}, ${column.part}) is ${HOW_KNOWN[known]}: check it against the code.`);
  const value = /^[\d.]+$/.test(text) ? Number(text) : text;
  const unit = part.endsWith("slab edge") ? "Btu/(h ft F)" : part === "SHGC" ? "" : UNIT[kind];
  tape?.step(kind, `${column.part}, zone ${zoneName(zone)}`, value, unit, `${clause}, ${HOW_KNOWN[known]}`);
  return value;
}

/** How the cell of a zone is known for an edition. */
export function knownOf(column: CodeColumn, edition: CodeEdition, zone: string): Known {
  const among = (zones: string | undefined) => zones?.split(" ").includes(zone) === true;
  if (among(column.read[edition])) return "read";
  return among(column.checked) ? "checked" : "memory";
}

function cellOf(column: CodeColumn, zone: string): string | undefined {
  return Object.entries(column.byZones).find(([zones]) => zones.split(" ").includes(zone))?.[1];
}

function columnsOf(kind: CodeKind, part: string, edition: CodeEdition): readonly CodeColumn[] {
  const own = CODE_COLUMNS.filter((c) => c.editions.includes(edition) && c.kind === kind);
  const columns = own.filter((c) => c.part === part);
  if (columns.length > 0) return columns;
  const parts = [...new Set(own.map((c) => c.part))];
  const others = [
    ...new Set(CODE_COLUMNS.filter((c) => c.kind === kind && c.part === part).flatMap((c) => c.editions)),
  ];
  throw new BadInput(
    `"${part}" is not kept for ${CODE_SOURCE[edition][kind]}`,
    parts.length === 0 ? `no ${kind} table of that edition is kept` : `what is kept: ${parts.join(", ")}`,
    `Use one of these editions: ${others.join(", ")}`,
  );
}
