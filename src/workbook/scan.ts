import type { CellAddress, Ledger } from "./ledger.ts";

/** A cell that was found by looking at the worksheets themselves. */
export interface FoundCell {
  readonly address: CellAddress;
  readonly formula: string;
  /** the error that it shows, of any kind, as the host writes it; "" where it shows a value */
  readonly error: string;
  /** its formula calls a function of ours */
  readonly ours: boolean;
}

/** What a host finds in its workbook: every cell with a formula of ours, and every other formula that shows an error. */
export interface Scan {
  readonly cells: readonly FoundCell[];
  /** worksheets that could not be read, with the host's reason */
  readonly unread: readonly { readonly sheet: string; readonly says: string }[];
}

/** How much of the workbook the ledger knows: a workbook that was just opened keeps its stored values and has calculated nothing. */
export interface Coverage {
  readonly ours: number;
  readonly calculated: number;
  /** cells of ours that have not calculated since the workbook was opened */
  readonly waiting: readonly CellAddress[];
  /** "37 of 200 cells calculated" */
  readonly says: string;
}

/** Functions of the spreadsheet that work out one of their sides: behind one of them a function of ours may never be called. */
const SIDES = /(?<![\w.])(?:IF|IFS|IFERROR|IFNA|CHOOSE|SWITCH)\(/i;
const TEXTS = /"(?:[^"]|"")*"/g;

/**
 * A cell whose function stands behind an IF is not waited for by itself: when all others have calculated, its other side was taken, and there is nothing to tell
 * of it. One that shows an error is.
 */
export function coverage({ cells }: Scan, ledger: Ledger): Coverage {
  const ours = cells.filter((cell) => cell.ours);
  const silent = ours.filter(({ address }) => ledger.at(address) === undefined);
  const surely = silent.filter(({ formula, error }) => error !== "" || !SIDES.test(formula.replace(TEXTS, "")));
  const waiting = (surely.length === 0 ? [] : silent).map(({ address }) => address);
  const calculated = ours.length - waiting.length;
  const says = `${calculated.toLocaleString("en-US")} of ${ours.length.toLocaleString("en-US")} ${ours.length === 1 ? "cell" : "cells"} calculated`;
  return { ours: ours.length, calculated, waiting, says };
}

/** Whether a shown value is an error of the host: "#N/A", "#NOM?", "#SPILL!" */
export function isErrorText(value: unknown): value is string {
  return typeof value === "string" && /^#[\p{Lu}\d_/ ]+[!?]?$/u.test(value);
}

/** Errors that only say that there is no value yet, or that the formula cannot be calculated here: they are no result and are never kept as one. */
export function isNoValue(error: string): boolean {
  return !/^#(VALUE!|N\/A|DIV\/0!|NUM!|REF!|NULL!)$/.test(error);
}
