import type { Raw } from "../../functions/declare/param.ts";

/** A text as a formula writes it. */
export function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

/** Reads an array constant such as `{"stud",3.5;"sheathing",0.5}`; undefined when it is none or its rows differ in length. */
export function arrayConstant(text: string): Raw[][] | undefined {
  const t = text.trim();
  if (!t.startsWith("{") || !t.endsWith("}")) return undefined;
  const cell = /\s*(?:"((?:[^"]|"")*)"|(true|false)|([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?))\s*([,;]|$)/iy;
  const inner = t.slice(1, -1);
  const rows: Raw[][] = [[]];
  let at = 0;
  for (;;) {
    cell.lastIndex = at;
    const match = cell.exec(inner);
    if (match === null) return undefined;
    at = cell.lastIndex;
    const [, words, flag, number, mark] = match;
    rows
      .at(-1)
      ?.push(
        words !== undefined
          ? words.replaceAll('""', '"')
          : flag !== undefined
            ? flag.toUpperCase() === "TRUE"
            : Number(number),
      );
    if (mark === "") break;
    if (mark === ";") rows.push([]);
  }
  return rows.every((row) => row.length === rows[0]?.length) ? rows : undefined;
}
