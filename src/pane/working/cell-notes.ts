import type { Said } from "../../core/kit/refusal.ts";
import type { Cell } from "../../core/kit/tape.ts";
import { NAMESPACE } from "../../functions/declare/cell-function.ts";

/** What the pane says of a cell for which it has no call to show. */
export interface CellNote extends Said {
  readonly tone: "plain" | "error";
}

const OWN_ERRORS: Readonly<Record<string, readonly [why: string, todo: string]>> = {
  "#DIV/0!": ["The formula divides by zero or by a blank cell.", "Fill in the divisor."],
  "#REF!": ["The formula points at a cell that is no longer there.", "Point it at the right cell again."],
  "#NAME?": [
    "The spreadsheet does not know a name in the formula.",
    "Check the spelling of functions and names, and that the add-in is loaded.",
  ],
  "#NUM!": ["A number in the formula is too large or cannot be worked with.", "Check the numbers it reads."],
  "#NULL!": ["Two ranges in the formula do not meet.", "Put a comma between them, or name one range."],
  "#SPILL!": ["The result is a table and something stands in its way.", "Clear the cells below and to the right."],
  "#CALC!": ["The spreadsheet cannot calculate this form of formula.", "Put its parts into cells of their own."],
  "#VALUE!": ["A value in the formula has the wrong kind, such as text for a number.", "Check the cells it reads."],
  "#N/A": ["A value that the formula looks for is not there.", "Check what it looks up, and the cells it reads."],
  "#BUSY!": ["The cell is still being calculated.", "Wait a moment."],
  "#GETTING_DATA": ["The cell is still being calculated.", "Wait a moment."],
};

/** The error that a cell shows, or undefined. */
export function errorIn(value: Cell | undefined): string | undefined {
  return typeof value === "string" && /^#[A-Z/_]+[0-9]?[!?]?$/.test(value.trim()) ? value.trim() : undefined;
}

export interface CellFacts {
  readonly formula: string;
  readonly value: Cell | undefined;
  /** names of ours in the formula */
  readonly names: readonly string[];
  /** the names of all functions */
  readonly known: readonly string[];
}

/** Says why there is nothing to show for a cell, and what to do next. */
export function noteFor({ formula, value, names, known }: CellFacts): CellNote {
  const unknown = names.find((name) => !known.includes(name));
  const error = errorIn(value);
  if (unknown !== undefined) {
    const near = nearest(unknown, known);
    return {
      tone: "error",
      what: `There is no function ${NAMESPACE}.${unknown}.`,
      why: near === undefined ? "No function has a name like it." : `The nearest name is ${NAMESPACE}.${near}.`,
      todo: "Correct the name, or look under Functions.",
    };
  }
  const bare = bareName(formula, known);
  if (bare !== undefined && (error === "#NAME?" || error === undefined)) {
    return {
      tone: "error",
      what: `${bare} stands without ${NAMESPACE} in front.`,
      why: `Functions of Sillwork are called ${NAMESPACE}.NAME.`,
      todo: `Write ${NAMESPACE}.${bare}.`,
    };
  }
  if (names.length > 0) {
    const [why, todo] = OWN_ERRORS[error ?? ""] ?? [];
    const called = `${NAMESPACE}.${names[0]}`;
    if (error === undefined) {
      return {
        tone: "plain",
        what: `${called} has not run here since the workbook was opened.`,
        why: "The working is made from the arguments of a run.",
        todo: "Calculate the cell again: edit it and press Enter, or recalculate the workbook.",
      };
    }
    if (error === "#NAME?" && /\bBasis\b/i.test(formula)) {
      return {
        tone: "error",
        what: `The cell shows ${error}, and ${called} has not run.`,
        why: "The spreadsheet does not know a name in the formula: most likely there is no name Basis in this workbook.",
        todo: "Make it in Site.",
      };
    }
    const passed = error === "#VALUE!" || error === "#N/A" || error === "#DIV/0!" || error === "#REF!";
    return {
      tone: "error",
      what: `The cell shows ${error}, and ${called} has not run.`,
      why: passed ? "A cell that it reads most likely holds an error." : (why ?? "The spreadsheet stopped before it."),
      todo: passed ? "Go to the cells named in the formula and mend the first one that shows an error." : (todo ?? ""),
    };
  }
  if (error !== undefined) {
    const [why, todo] = OWN_ERRORS[error] ?? ["It is an error of the spreadsheet's own.", "Check the formula."];
    return {
      tone: "error",
      what: `The cell shows ${error}.`,
      why: `This cell holds no Sillwork function. ${why}`,
      todo,
    };
  }
  const blank = formula === "" && (value === undefined || value === "");
  return {
    tone: "plain",
    what: blank ? "This cell is empty." : "This cell holds no Sillwork function.",
    why: "",
    todo: `Type =${NAMESPACE}. into a cell, or find a function under Functions and insert it here. To see a working, select a cell that holds one.`,
  };
}

/** A name of ours that a formula calls without the namespace. */
function bareName(formula: string, known: readonly string[]): string | undefined {
  const called = [...formula.replace(/"(?:[^"]|"")*"/g, "").matchAll(/(?<![\w.])([A-Z][A-Z0-9_]*)\s*\(/gi)];
  // A name that the spreadsheet has too, such as CONVERT, is not missed.
  return called.map((m) => (m[1] ?? "").toUpperCase()).find((n) => n.includes("_") && known.includes(n));
}

/** The function whose name is least edits away, if it is near enough to be meant. */
function nearest(name: string, known: readonly string[]): string | undefined {
  const ranked = known.map((other) => ({ name: other, d: edits(name, other) })).sort((a, b) => a.d - b.d)[0];
  return ranked !== undefined && ranked.d <= Math.max(2, name.length / 3) ? ranked.name : undefined;
}

/** Levenshtein distance: the least single-letter edits from one text to the other. */
function edits(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
