import { isRange, type Raw, type RawArgument } from "../../functions/declare/raw.ts";

/** What Excel adds after the arguments. */
export interface Invocation {
  /** "Sheet1!B4", when the metadata asks for it */
  readonly address?: string;
  /** set while the user looks at the value of a part of a formula */
  readonly isInValuePreview?: unknown;
}

export interface SplitArguments {
  readonly args: readonly RawArgument[];
  readonly invocation: Invocation | undefined;
}

/**
 * Parts the arguments from the invocation object, which comes last: Excel may know an older declaration with fewer parameters than this page has,
 * so its place is not counted from the front.
 */
export function splitArguments(given: readonly unknown[]): SplitArguments {
  const last = given.at(-1);
  const invocation = isInvocation(last) ? last : undefined;
  return { args: (invocation === undefined ? given : given.slice(0, -1)).map(argument), invocation };
}

/** Told by its members, all getters of its class; the error and number objects of Excel have none of them. */
function isInvocation(value: unknown): value is Invocation {
  return typeof value === "object" && value !== null && ("functionName" in value || "address" in value);
}

function argument(value: unknown): RawArgument {
  if (!Array.isArray(value)) return cell(value);
  return value.every(Array.isArray) ? value.map((row: unknown[]) => row.map(cell)) : [value.map(cell)];
}

/** A cell as Excel hands it over: a plain value, or an object with a plain value and an error code inside. */
function cell(value: unknown): Raw {
  if (value === null || value === undefined) return null;
  if (typeof value === "number" || typeof value === "string" || typeof value === "boolean") return value;
  if (typeof value !== "object") return { error: "#VALUE!" };
  const { code, basicValue } = value as { code?: unknown; basicValue?: unknown };
  if (typeof code === "string") return { error: code };
  if (typeof basicValue === "string" && basicValue.startsWith("#")) return { error: basicValue };
  if (typeof basicValue === "number" || typeof basicValue === "string" || typeof basicValue === "boolean") {
    return basicValue;
  }
  return { error: "#VALUE!" };
}

/**
 * A choice is declared to Excel as a string, so a number in the cell arrives as its digits. Turned back into a number it keeps its sentence,
 * such as the one about a code that became a date.
 */
export function numberAgain(raw: RawArgument): RawArgument {
  if (isRange(raw) || typeof raw !== "string" || raw === "" || String(Number(raw)) !== raw) return raw;
  return Number.isFinite(Number(raw)) ? Number(raw) : raw;
}
