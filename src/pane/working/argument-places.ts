import { NAMESPACE } from "../../functions/declare/cell-function.ts";
import { parseAddress } from "../../workbook/host.ts";
import type { CellAddress } from "../../workbook/ledger.ts";

/** The texts between the commas of the n-th call of a function in a formula; undefined where there is no such call. */
export function argumentTexts(formula: string, name: string, nth = 0): readonly string[] | undefined {
  const call = new RegExp(`(?<![\\w.])${NAMESPACE}\\.${name}\\s*\\(`, "gi");
  const starts = [...formula.matchAll(call)].map((m) => m.index + m[0].length);
  const start = starts[nth];
  if (start === undefined) return undefined;
  const parts = [""];
  let depth = 0;
  let quote = "";
  for (const c of formula.slice(start)) {
    if (quote !== "") quote = c === quote ? "" : quote;
    else if (c === '"' || c === "'") quote = c;
    else if (c === "(" || c === "{") depth++;
    else if (c === ")" && depth === 0) return parts.map((p) => p.trim());
    else if (c === ")" || c === "}") depth--;
    else if (c === "," && depth === 0) {
      parts.push("");
      continue;
    }
    parts[parts.length - 1] += c;
  }
  return undefined;
}

/** The first cell of a reference such as `B5`, `Site!$A$4:C40`; undefined for anything else. */
export function referenceStart(text: string, sheet: string): CellAddress | undefined {
  const [first = ""] = text.replace(/#$/, "").split(":");
  return parseAddress(first.includes("!") ? first : `'${sheet.replaceAll("'", "''")}'!${first}`);
}

/** Whether a text is a name of the workbook. */
export function isName(text: string): boolean {
  return /^[\p{L}_][\p{L}\d_.]*$/u.test(text) && !/^(true|false)$/i.test(text) && !/^[A-Z]{1,3}\d+$/i.test(text);
}

/** Whether a call's bracket closes at the end of the text: `A(1)` and not `A(1)+B(2)`. */
export function closesAtEnd(text: string): boolean {
  let depth = 0;
  let quoted = false;
  for (const [i, c] of [...text].entries()) {
    if (c === '"') quoted = !quoted;
    if (quoted) continue;
    if (c === "(") depth++;
    if (c === ")" && --depth === 0) return i === text.length - 1;
  }
  return false;
}
