import { CellValueType } from "@univerjs/core";
import type { FRange } from "@univerjs/sheets/facade";
import type { Cell } from "../../core/tape.ts";

/** What a single cell holds, whether it was typed, calculated or spilled; undefined for a blank one. */
export function cellValue(range: FRange): Cell | undefined {
  const cell = range.getCellData();
  const value = cell?.v;
  if (value === null || value === undefined) return undefined;
  return cell?.t === CellValueType.BOOLEAN ? value === 1 || value === true || value === "TRUE" : value;
}
