import { BadInput } from "../../core/kit/refusal.ts";
import { addressText } from "../host.ts";
import { type FileCell, type FileSheet, placeOf, type WorkbookFile } from "./model.ts";

/** What the file format holds, by ISO/IEC 29500-1 and the program's own published limits. */
const LONGEST_TEXT = 32_767;
const LONGEST_FORMULA = 8_192;
const LONGEST_HINT = 255;
const LONGEST_CHOICES = 255;
const LONGEST_SHEET_NAME = 31;
const NAME = /^[A-Za-z_][A-Za-z0-9_.]*$/;
/** A name of this kind would be read as a cell. */
const LIKE_A_CELL = /^(?:[A-Z]{1,3}\d+|R\d*C\d*|[RC])$/i;

/** @throws BadInput with the place of the first thing that a file cannot hold */
export function checkFile(file: WorkbookFile): void {
  for (const [name] of file.names) {
    if (!NAME.test(name) || LIKE_A_CELL.test(name)) {
      throw refused(
        `The name "${name}"`,
        "cannot be used",
        "letters, digits and _ only, and not like a cell such as B5",
      );
    }
  }
  for (const sheet of file.sheets) checkSheet(sheet);
}

function checkSheet(sheet: FileSheet): void {
  if (sheet.name === "" || sheet.name.length > LONGEST_SHEET_NAME || /[\\/?*[\]:]/.test(sheet.name)) {
    const rule = `a worksheet has 1 to ${LONGEST_SHEET_NAME} characters, none of \\ / ? * [ ] :`;
    throw refused(`The worksheet's name "${sheet.name}"`, "cannot be saved", rule);
  }
  for (const [key, cell] of sheet.cells) {
    const fault = faultOf(cell);
    if (fault !== undefined) throw refused(addressText({ sheet: sheet.name, ...placeOf(key) }), ...fault);
  }
}

function faultOf({ value, formula, choices, hint }: FileCell): [what: string, why: string] | undefined {
  if (typeof value === "number" && !Number.isFinite(value)) return ["is no finite number", "a file holds no other"];
  if (typeof value === "string" && value.length > LONGEST_TEXT) return tooLong("text", value.length, LONGEST_TEXT);
  if (formula !== undefined && formula.length > LONGEST_FORMULA) {
    return tooLong("formula", formula.length, LONGEST_FORMULA);
  }
  if (hint !== undefined && hint.length > LONGEST_HINT) return tooLong("hint", hint.length, LONGEST_HINT);
  const list = choices?.join(",") ?? "";
  if (list.length > LONGEST_CHOICES) return tooLong("list of choices", list.length, LONGEST_CHOICES);
  if (choices?.some((choice) => /[",]/.test(choice))) {
    return ["has a choice with a comma or a quotation mark", "the file parts choices by commas"];
  }
  return undefined;
}

function tooLong(what: string, length: number, most: number): [string, string] {
  return [`has a ${what} of ${length} characters`, `a file holds ${most}`];
}

function refused(where: string, what: string, why: string): BadInput {
  return new BadInput(`${where} ${what}`, why, "Shorten or change it, then save again");
}
