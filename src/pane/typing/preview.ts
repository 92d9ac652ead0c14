import type { Table } from "../../core/kit/tape.ts";
import { type CellFunction, NAMESPACE } from "../../functions/declare/cell-function.ts";
import { isOptional } from "../../functions/declare/param.ts";
import type { Raw, RawArgument } from "../../functions/declare/raw.ts";
import type { Working } from "../../functions/run/invoke.ts";
import type { Explainer } from "../../functions/run/tables-on-demand.ts";
import type { Host } from "../../workbook/host.ts";
import { isErrorText } from "../../workbook/scan.ts";
import { arrayConstant } from "../parts/literals.ts";
import { words } from "../parts/notation.ts";
import { argumentTexts, closesAtEnd, isName, referenceStart } from "../working/argument-places.ts";

/** A call worked out before it stands in a cell, or a sentence why it cannot be yet. */
export type Preview = { readonly fn: CellFunction; readonly working: Working } | { readonly waits: string };

/** What a preview needs to know of where it is made. */
export interface PreviewPlace {
  readonly functions: readonly CellFunction[];
  readonly explain: Explainer;
  readonly host: Host | undefined;
  /** the worksheet that references without one mean */
  readonly sheet: string;
  /** whether a search may be run */
  readonly searches?: boolean;
}

/** Cannot be worked out outside the sheet; the message says what for. */
class Unknown extends Error {}

/** Works a call such as `=SILL.WIND_KZ(B4,"C")` out, with the cells that it names read from the workbook. */
export async function previewOf(call: string, place: PreviewPlace): Promise<Preview> {
  try {
    return await worked(call, place);
  } catch (error) {
    if (error instanceof Unknown) return { waits: error.message };
    return { waits: "The cells it names cannot be read just now." };
  }
}

async function worked(call: string, place: PreviewPlace): Promise<Preview> {
  const [, name = ""] = new RegExp(`^=?${NAMESPACE}\\.(\\w+)`, "i").exec(call) ?? [];
  const fn = place.functions.find((f) => f.name === name.toUpperCase());
  const texts = fn && argumentTexts(call, fn.name);
  if (fn === undefined || texts === undefined) throw new Unknown("There is no such function.");
  const blank = fn.params.filter(({ param }, i) => !isOptional(param) && (texts[i] ?? "") === "");
  if (blank.length > 0) throw new Unknown(`Still to come: ${blank.map((p) => words(p.name)).join(", ")}.`);
  if (fn.heavy && place.searches !== true) throw new Unknown("A search: its result appears in the cell.");
  const given = texts.length === 1 && texts[0] === "" ? [] : texts;
  const raw = await Promise.all(given.map((text) => argumentOf(text, place)));
  return { fn, working: await place.explain(fn, raw) };
}

async function argumentOf(text: string, place: PreviewPlace): Promise<RawArgument> {
  const plain = literalOf(text);
  if (plain !== undefined) return plain;
  if (new RegExp(`^${NAMESPACE}\\.\\w+\\(`, "i").test(text) && closesAtEnd(text)) {
    const inner = await worked(`=${text}`, place);
    if ("waits" in inner) throw new Unknown(inner.waits);
    const { outcome } = inner.working;
    return outcome.ok ? (outcome.value as RawArgument) : { error: outcome.code };
  }
  const rows = await cellsOf(text, place);
  if (rows === undefined) throw new Unknown(`The spreadsheet works out ${text}; the result appears in the cell.`);
  const raw = rows.map((row) => row.map(rawOf));
  return raw.length === 1 && raw[0]?.length === 1 ? raw[0][0] : raw;
}

/** A number, a text, a truth or an array constant; undefined for what needs the workbook. */
function literalOf(text: string): RawArgument | undefined {
  if (text === "") return null;
  if (/^"(?:[^"]|"")*"$/.test(text)) return text.slice(1, -1).replaceAll('""', '"');
  if (/^(true|false)$/i.test(text)) return text.toUpperCase() === "TRUE";
  const [, number, percent] = /^([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)(%?)$/i.exec(text) ?? [];
  if (number !== undefined) return Number(number) / (percent === "%" ? 100 : 1);
  return arrayConstant(text);
}

async function cellsOf(text: string, { host, sheet }: PreviewPlace): Promise<Table | undefined> {
  if (isName(text)) return (await host?.readName?.(text))?.rows;
  return referenceStart(text, sheet) === undefined ? undefined : host?.readRange?.(text, sheet);
}

function rawOf(value: unknown): Raw {
  if (value === "" || value === undefined) return null;
  return isErrorText(value) ? { error: value } : (value as Raw);
}
