import { type CellFunction, NAMESPACE } from "../../functions/declare/cell-function.ts";
import { literal as literalOf, positional } from "../../functions/declare/formula.ts";
import { isOptional, type ParamKind, type Raw, type RawArgument } from "../../functions/declare/param.ts";
import { arrayConstant, quoted } from "../parts/literals.ts";

/** What stands in the form, by parameter: the text of each field. */
export type FormTexts = Readonly<Record<string, string>>;

/** A field as it goes into a formula, and what it was read as. */
export type FieldValue =
  | { readonly kind: "omitted" }
  | { readonly kind: "literal"; readonly formula: string; readonly raw: RawArgument }
  | { readonly kind: "reference"; readonly formula: string };

const SHEET = String.raw`(?:'(?:[^']|'')+'!|[\p{L}_][\p{L}\d_.]*!)?`;
const CELL = String.raw`\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}`;
const CELL_REFERENCE = new RegExp(`^${SHEET}${CELL}(?::${CELL})?#?$`, "u");
const LINES_REFERENCE = new RegExp(String.raw`^${SHEET}(?:\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}|\$?\d+:\$?\d+)$`, "u");
const NAME = new RegExp(String.raw`^${SHEET}[\p{L}_\\][\p{L}\d_.]*#?$`, "u");
const TABLE_COLUMN = /^[\p{L}_][\p{L}\d_.]*\[.*\]$/u;
const NUMBER = /^[-+]?(?:\d{1,3}(?:,\d{3})+|\d+)?(?:\.\d*)?(?:e[-+]?\d+)?$/i;

/**
 * Reads one field.
 * - `=...` is taken as it stands, `"..."` is text whatever is in it
 * - references to cells are passed on; in a text field only with capitals, since "ft2" is a unit and a cell
 * - a lone word is a name of the workbook where a number or a range is wanted, else text
 * - anything else that is no number is text: lengths such as 12'-6" with their marks
 */
export function fieldValue(text: string, kind: ParamKind): FieldValue {
  const t = text.trim();
  if (t === "") return { kind: "omitted" };
  if (t.startsWith("=")) return { kind: "reference", formula: t.slice(1).trim() };
  if (/^"(?:[^"]|"")*"$/.test(t)) return literal(t.slice(1, -1).replaceAll('""', '"'));
  if (kind === "flag" && /^(true|false)$/i.test(t)) return literal(t.toUpperCase() === "TRUE");
  const words = kind === "text" || kind === "choice";
  if (isReference(t, kind)) return { kind: "reference", formula: t };
  if (t.startsWith("{")) {
    const rows = arrayConstant(t);
    if (rows !== undefined) return { kind: "literal", formula: t, raw: rows };
  }
  // A choice may be a number, such as an edition or a factor in the place of a word.
  if ((!words || (kind === "choice" && String(Number(t)) === t)) && NUMBER.test(t) && /\d/.test(t))
    return literal(Number(t.replaceAll(",", "")));
  // A text parameter may take a number as well; what would change when it is written as one ("007") stays text.
  if (kind === "text" && String(Number(t)) === t && Number.isFinite(Number(t))) return literal(Number(t));
  return literal(t);
}

function isReference(t: string, kind: ParamKind): boolean {
  if (kind === "choice") return false;
  if (kind === "text")
    return (CELL_REFERENCE.test(t) && t === t.toUpperCase()) || (/!/.test(t) === NAME.test(t) && /!/.test(t));
  const range = kind === "table" || kind === "list";
  return CELL_REFERENCE.test(t) || TABLE_COLUMN.test(t) || NAME.test(t) || (range && LINES_REFERENCE.test(t));
}

function literal(raw: Raw): FieldValue {
  const formula =
    typeof raw === "string" ? quoted(raw) : typeof raw === "boolean" ? String(raw).toUpperCase() : String(raw);
  return { kind: "literal", formula, raw };
}

/** The fields in the order of the parameters. `cells` names choices that are read from a cell. */
export function fieldValues(fn: CellFunction, texts: FormTexts, cells: ReadonlySet<string> = new Set()): FieldValue[] {
  return fn.params.map(({ name, param }) => {
    const kind = cells.has(name) ? "number" : param.kind;
    return fieldValue(texts[name] ?? "", kind);
  });
}

/** Required parameters that are still blank. */
export function missing(fn: CellFunction, values: readonly FieldValue[]): string[] {
  return fn.params.filter(({ param }, i) => !isOptional(param) && values[i]?.kind === "omitted").map((p) => p.name);
}

/** The call as a formula; arguments left out at the end are not written. */
export function formulaFrom(fn: CellFunction, values: readonly FieldValue[]): string {
  const parts = values.map((v) => (v.kind === "omitted" ? "" : v.formula));
  while (parts.at(-1) === "") parts.pop();
  return `=${NAMESPACE}.${fn.name}(${parts.join(", ")})`;
}

/** The example of a function as texts for the form. */
export function exampleTexts(fn: CellFunction): FormTexts {
  const texts: Record<string, string> = {};
  const places = positional(fn, fn.example.args);
  for (const [i, { name, param }] of fn.params.entries()) {
    const value = places[i];
    if (value === undefined || value === null) continue;
    if (Array.isArray(value)) texts[name] = literalOf(value);
    else if (typeof value === "boolean") texts[name] = literalOf(value);
    else texts[name] = unambiguous(String(value), param.kind, typeof value === "string");
  }
  return texts;
}

/** A text that the form would take for something else stands in quotes. */
function unambiguous(text: string, kind: ParamKind, isText: boolean): string {
  const read = fieldValue(text, kind);
  return isText && (read.kind !== "literal" || read.raw !== text) ? quoted(text) : text;
}
