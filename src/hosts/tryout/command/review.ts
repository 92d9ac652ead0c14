import { sentence } from "../../../core/kit/refusal.ts";
import type { Cell } from "../../../core/kit/tape.ts";
import type { CellFunction } from "../../../functions/declare/cell-function.ts";
import { registry } from "../../../functions/registry.ts";
import { explain } from "../../../functions/run/invoke.ts";
import { type FileCell, placeKey, placeOf, type WorkbookFile } from "../../../workbook/file/model.ts";
import { type ReadWorkbook, readWorkbook } from "../../../workbook/file/read.ts";
import { callsOurs } from "../../../workbook/formula.ts";
import { addressText } from "../../../workbook/host.ts";
import type { LedgerCall, LedgerEntry } from "../../../workbook/ledger.ts";
import { isErrorText, isNoValue } from "../../../workbook/scan.ts";
import { HeadlessWorkbook } from "../engine/headless.ts";

/** Numbers that differ by less are the same: programs keep fifteen digits. */
const SAME = 1e-9;
/** Arguments that name an edition of a standard or code. */
const EDITION = /(edition|code|standard)$/i;

/** What was found in one workbook. */
export interface Review {
  readonly file: string;
  /** version of Sillwork that stored the values; null where the file does not say */
  readonly storedBy: string | null;
  readonly formulas: number;
  readonly errors: readonly { readonly cell: string; readonly error: string; readonly says: string }[];
  readonly cautions: readonly { readonly caution: string; readonly cells: readonly string[] }[];
  readonly changed: readonly { readonly cell: string; readonly stored: Cell; readonly now: Cell }[];
  /** an edition that cells give differently, with the cells of each */
  readonly mixedEditions: readonly {
    readonly edition: string;
    readonly cells: Readonly<Record<string, readonly string[]>>;
  }[];
  /** what of the file was not looked at */
  readonly leftOut: readonly string[];
}

/**
 * Opens a workbook's file, calculates it again and compares.
 * @throws BadInput where it cannot be opened
 */
export async function review(bytes: Uint8Array, name: string): Promise<Review> {
  const { file, leftOut, spilled } = await readWorkbook(bytes, name);
  const workbook = await HeadlessWorkbook.openFile(file);
  await workbook.arrived();
  const now = workbook.file("");
  const entries = workbook.ledger.entries();
  workbook.dispose();
  const cells = formulaCells(now);
  return {
    file: name,
    storedBy: file.version ?? null,
    formulas: cells.filter(({ cell }) => callsOurs(cell.formula)).length,
    errors: errorsOf(cells, entries),
    cautions: cautionsOf(entries),
    changed: changesOf(file, spilled, now),
    mixedEditions: mixed(entries),
    leftOut,
  };
}

interface Placed {
  readonly sheet: string;
  readonly key: string;
  readonly address: string;
  readonly cell: FileCell;
}

function formulaCells(file: WorkbookFile): Placed[] {
  return file.sheets.flatMap((sheet) =>
    [...sheet.cells].flatMap(([key, cell]) =>
      cell.formula === undefined
        ? []
        : [{ sheet: sheet.name, key, cell, address: addressText({ sheet: sheet.name, ...placeOf(key) }) }],
    ),
  );
}

function errorsOf(cells: readonly Placed[], entries: readonly LedgerEntry[]): Review["errors"] {
  const said = new Map(
    entries.flatMap(({ address, calls }) => {
      const outcome = calls.map((call) => call.outcome).findLast((made) => !made.ok);
      return outcome === undefined || outcome.ok ? [] : [[addressText(address), sentence(outcome.said)] as const];
    }),
  );
  return cells.flatMap(({ cell, address }) =>
    isErrorText(cell.value) ? [{ cell: address, error: cell.value, says: said.get(address) ?? "" }] : [],
  );
}

function cautionsOf(entries: readonly LedgerEntry[]): Review["cautions"] {
  const cautions = new Map<string, Set<string>>();
  const add = (address: string, all: readonly string[]): void => {
    for (const caution of all) cautions.set(caution, (cautions.get(caution) ?? new Set()).add(address));
  };
  for (const { address, working } of workings(entries)) add(address, working.cautions);
  for (const { address, calls } of entries) {
    for (const fn of calls.map(functionOf)) if (fn?.heavy) add(addressText(address), fn.cautions);
  }
  return [...cautions].map(([caution, cells]) => ({ caution, cells: [...cells] }));
}

function functionOf(call: LedgerCall): CellFunction | undefined {
  return registry.find(({ id }) => id === call.id);
}

function* workings(entries: readonly LedgerEntry[]) {
  for (const { address, calls } of entries) {
    for (const call of calls) {
      const fn = functionOf(call);
      // A search is not made a second time for its words; those that hold of it always stand in its declaration.
      if (fn !== undefined && !fn.heavy) yield { address: addressText(address), working: explain(fn, call.args) };
    }
  }
}

/**
 * Cells whose value is another than the stored one: those with a formula, of ours or of the spreadsheet's own that goes by them, and those that a table
 * fills or has filled. What changes by the clock or by chance is left out, and so is what cannot be calculated here, which stands among the errors.
 */
function changesOf(before: WorkbookFile, spilled: ReadWorkbook["spilled"], now: WorkbookFile): Review["changed"] {
  return before.sheets.flatMap((sheet) => {
    const after = now.sheets.find(({ name }) => name === sheet.name)?.cells ?? new Map<string, FileCell>();
    const formulas = [...sheet.cells].flatMap(([key, { formula, value }]) =>
      formula === undefined || RESTLESS.test(formula) ? [] : [[key, value] as const],
    );
    const filled = [...(spilled.get(sheet.name) ?? [])];
    const stored = new Map<string, Cell>([...newlyFilled(after), ...filled, ...formulas]);
    return [...stored].flatMap(([key, value]) => {
      const shown = after.get(key)?.value ?? "";
      const isNone = isErrorText(shown) && isNoValue(shown) && !callsOurs(after.get(key)?.formula);
      if (isNone || isSame(value, shown)) return [];
      return [{ cell: addressText({ sheet: sheet.name, ...placeOf(key) }), stored: value, now: shown }];
    });
  });
}

/** Functions that give another value each time. */
const RESTLESS = /\b(?:TODAY|NOW|RAND|RANDBETWEEN|RANDARRAY)\(/i;

/** Places that tables fill now, with nothing stored: what was stored there comes over it. */
function newlyFilled(cells: ReadonlyMap<string, FileCell>): (readonly [string, Cell])[] {
  return [...cells].flatMap(([key, { spill }]) => {
    if (spill === undefined) return [];
    const { row, column } = placeOf(key);
    const places = Array.from({ length: spill.rows * spill.columns }, (_, i) =>
      placeKey(row + Math.floor(i / spill.columns), column + (i % spill.columns)),
    );
    return places.slice(1).map((place) => [place, ""] as const);
  });
}

function isSame(a: Cell, b: Cell): boolean {
  if (typeof a !== "number" || typeof b !== "number") return a === b;
  return Math.abs(a - b) <= SAME * Math.max(1, Math.abs(a), Math.abs(b));
}

/** The edition alone: one that was left out is shown as a sentence about it. */
function editionIn(shown: string): string {
  return /\d[\d-]*\d/.exec(shown)?.[0] ?? shown;
}

function mixed(entries: readonly LedgerEntry[]): Review["mixedEditions"] {
  const found = new Map<string, Map<string, Set<string>>>();
  for (const { address, working } of workings(entries)) {
    for (const { name, shown } of working.arguments) {
      if (!EDITION.test(name) || shown === "") continue;
      const byValue = found.get(name) ?? new Map<string, Set<string>>();
      found.set(name, byValue);
      const given = editionIn(shown);
      byValue.set(given, (byValue.get(given) ?? new Set()).add(address));
    }
  }
  return [...found].flatMap(([edition, byValue]) =>
    byValue.size < 2
      ? []
      : [{ edition, cells: Object.fromEntries([...byValue].map(([value, cells]) => [value, [...cells]])) }],
  );
}
