import { BadInput } from "../../core/kit/refusal.ts";
import { LONGEST_TEXT, plainForms } from "../../core/units/text.ts";
import { isBlank, isCellError, isRange, type Raw, type RawArgument } from "./raw.ts";

/** The one cell of an argument: a 1x1 range counts as its cell; errors and blanks get their sentence. */
export function oneCell(raw: RawArgument, at: string, wants: string): Exclude<Raw, null | undefined | object> {
  const cell = isRange(raw) ? singleCell(raw, at) : raw;
  if (isCellError(cell)) {
    throw new BadInput(
      `The cell for ${at} holds ${cell.error}`,
      "an error cannot be calculated with",
      "Mend that cell first",
    );
  }
  if (isBlank(cell) || cell === null || cell === undefined) {
    throw new BadInput(`${capital(at)} is missing`, "the argument is left out or its cell is blank", `Give ${wants}`);
  }
  if (typeof cell === "number" && !Number.isFinite(cell)) {
    throw new BadInput(`${capital(at)} is not a finite number`, "it cannot be calculated with", `Give ${wants}`);
  }
  if (typeof cell === "string") return ordinary(cell, at, wants);
  // A zero has no sign in a cell.
  return cell === 0 ? 0 : (cell as number | boolean);
}

/** A text of a length that can be an argument, as a plain keyboard types it. */
function ordinary(text: string, at: string, wants: string): string {
  if (text.length <= LONGEST_TEXT) return plainForms(text);
  throw new BadInput(
    `${capital(at)} is a text of ${text.length} characters`,
    `at most ${LONGEST_TEXT} are read here`,
    `Give ${wants}`,
  );
}

function singleCell(rows: readonly (readonly Raw[])[], at: string): Raw {
  if (rows.length === 1 && rows[0]?.length === 1) return rows[0][0];
  throw new BadInput(
    `${capital(at)} is a range of ${rows.length} x ${rows[0]?.length ?? 0} cells`,
    "this argument takes one value",
    "Point at a single cell",
  );
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
