import { BadInput } from "../../core/kit/refusal.ts";
import { capital } from "../declare/cell.ts";
import type { Notes, Param, Reading } from "../declare/param.ts";
import { quote, type Raw } from "../declare/raw.ts";
import type { BasisRow } from "./read.ts";

/** A number as text; one of hundreds of digits is left for the reader to refuse as it was typed. */
const NUMBER = /^[-+]?(\d{1,100}\.?\d{0,100}|\.\d{1,100})$/;

/** Reads the value of a row by a term's own reader; a unit in its column counts for a bare number. */
export function readRow<T>(row: BasisRow, param: Param<T, unknown>, at: string, notes: Notes): Reading<T> {
  return param.read(withUnit(row, param, at), at, notes);
}

function withUnit({ value, unit }: BasisRow, param: Param<unknown, unknown>, at: string): Raw {
  // On a choice, a text and a yes or no the third column says nothing.
  if (unit === "" || param.kind === "choice" || param.kind === "flag" || param.kind === "text") return value;
  const bare =
    typeof value === "number"
      ? value
      : typeof value === "string" && NUMBER.test(value.trim())
        ? Number(value)
        : undefined;
  // A number beyond all numbers stays as it is typed, for its reader to refuse.
  if (bare === undefined || !Number.isFinite(bare) || unit.toLowerCase() === param.unit.toLowerCase()) return value;
  if (unit.startsWith(":") || unit.startsWith("/")) return `${bare}${unit}`;
  if (unit === "%") return percent(bare, param, at);
  if (param.unit === "") {
    throw new BadInput(
      `${capital(at)} has the unit ${quote(unit)}`,
      "it is a number without a unit",
      "Clear the unit in the third column",
    );
  }
  return `${bare} ${unit}`;
}

/** A percent cell holds 0.1 where it shows 10%, so a small number beside a % is a question. */
function percent(bare: number, param: Param<unknown, unknown>, at: string): Raw {
  if (param.unit === "%" || bare === 0) return bare;
  if (param.unit !== "") return `${bare} %`;
  if (Math.abs(bare) >= 1) return `${bare}%`;
  throw new BadInput(
    `${capital(at)} is ${bare} with the unit %`,
    "it may be a share or so many hundredths of one",
    `Write ${bare * 100}% in one cell, or clear the unit`,
  );
}
