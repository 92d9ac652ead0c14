import { BadInput, OutOfRange, plain, refused } from "../../core/kit/refusal.ts";
import { capital } from "./cell.ts";
import { isDate } from "./dates.ts";
import type { Limits, Notes, Usual } from "./param.ts";

/** Nothing that is measured here is nearer to nothing in its unit: such a number is what rounding left, and one by it has no end. */
const NEAREST_TO_ZERO = 1e-30;

/** Limits and usual range of a number that has been read. */
export function checkLimits(
  value: number,
  at: string,
  unit: string,
  o: Limits,
  usual: Usual | undefined,
  notes: Notes,
): void {
  if (value !== 0 && Math.abs(value) < NEAREST_TO_ZERO) {
    throw new BadInput(
      `${capital(at)} is ${value}${unit === "" ? "" : ` ${unit}`}`,
      "nothing is measured that finely: it is what rounding left of a sum",
      inside(o, 0) ? "Give 0, or the number that is meant" : "Give the number that is meant",
    );
  }
  if (!inside(o, value)) {
    const Kind = o.source === undefined ? BadInput : OutOfRange;
    const date = isDate(value) ? " (a date arrives as such a number)" : "";
    throw new Kind(
      `${capital(at)} is ${refused(value, (x) => inside(o, x))}${unit === "" ? "" : ` ${unit}`}${date}`,
      `it must be ${limitText(o, unit)}${o.source === undefined ? "" : ` (${o.source})`}`,
      otherUnit(value, unit, o) ?? "Use a value inside that range",
    );
  }
  if (usual !== undefined) askUnusual(value, at, unit, usual, notes);
}

function askUnusual(value: number, at: string, unit: string, usual: Usual, notes: Notes): void {
  const size = usual.eitherSign ? Math.abs(value) : value;
  if (size >= usual.min && size <= usual.max) return;
  const side = size < usual.min ? `below the usual ${plain(usual.min)}` : `above the usual ${plain(usual.max)}`;
  const sign = usual.eitherSign ? " of either sign" : "";
  notes.caution(`${capital(at)} of ${withUnit(value, unit)} is ${side}${sign}: ${usual.ask}`);
}

/** How to write a length that is right in the other unit of the tape: feet where inches are read, inches where feet are. */
function otherUnit(value: number, unit: string, o: Limits): string | undefined {
  const times = unit === "in" ? 12 : unit === "ft" ? 1 / 12 : undefined;
  if (times === undefined || value <= 0 || !inside(o, value * times)) return undefined;
  const other = unit === "in" ? "ft" : "in";
  return `Use a value inside that range; if ${other} is meant, type "${plain(value)} ${other}"`;
}

/** Whether a number lies inside limits. */
export function inside(o: Limits, value: number): boolean {
  const low = (o.min !== undefined && value < o.min) || (o.above !== undefined && value <= o.above);
  const high = (o.max !== undefined && value > o.max) || (o.below !== undefined && value >= o.below);
  return !low && !high && Number.isFinite(value);
}

/** "from 15 to 500 ft", "above 0", "at most 1" */
export function limitText(o: Limits, unit: string): string {
  const u = unit === "" ? "" : ` ${unit}`;
  if (o.min !== undefined && o.max !== undefined) return `from ${plain(o.min)} to ${plain(o.max)}${u}`;
  const words: string[] = [];
  if (o.min !== undefined) words.push(`at least ${plain(o.min)}${u}`);
  if (o.above !== undefined) words.push(`above ${plain(o.above)}${u}`);
  if (o.max !== undefined) words.push(`at most ${plain(o.max)}${u}`);
  if (o.below !== undefined) words.push(`below ${plain(o.below)}${u}`);
  return words.join(" and ") || "a finite number";
}

/** A number with its unit, where it has one. */
export function withUnit(value: number, unit: string): string {
  return unit === "" ? plain(value) : `${plain(value)} ${unit}`;
}
