import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { Workbook } from "@cj-tech-master/excelts";
import { afterAll, beforeAll, expect, test } from "vitest";
import { templates } from "../../src/templates/index.ts";
import { placeOf, type WorkbookFile } from "../../src/workbook/file/model.ts";
import { asNewFunctions } from "../../src/workbook/file/new-functions.ts";
import { readWorkbook } from "../../src/workbook/file/read.ts";
import { callsOurs } from "../../src/workbook/formula.ts";
import { addressText } from "../../src/workbook/host.ts";

/**
 * Every template and its copy with values only, opened and saved again by an office suite without a screen: `SOFFICE` is the path of its program. It has none of
 * our functions, so in a template only the cells that do not depend on them say something; in a copy with values only every cell does.
 */

const top = fileURLToPath(new URL("../..", import.meta.url));
/** Functions of the spreadsheet that the suite's version may not know yet. */
const isNew = (formula: string): boolean => asNewFunctions(formula) !== formula;

let folder: string;
const at = (...path: string[]): string => join(folder, ...path);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "sillwork-office-"));
  mkdirSync(at("made"));
  run(process.execPath, ["src/hosts/tryout/command/templates.mjs", "--save", at("made")]);
  const files = readdirSync(at("made")).map((name) => at("made", name));
  // A profile of its own: the suite runs once for each.
  const profile = `-env:UserInstallation=${pathToFileURL(at("profile")).href}`;
  run(process.env.SOFFICE ?? "soffice", [
    profile,
    "--headless",
    "--convert-to",
    "xlsx",
    "--outdir",
    at("saved"),
    ...files,
  ]);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(command: string, args: readonly string[]): void {
  const done = spawnSync(command, args, { cwd: top, encoding: "utf8" });
  if (done.status !== 0) throw new Error(`${command} failed:\n${done.stdout}${done.stderr}`);
}

/** Cells that the suite shows otherwise, as "Sheet!A1: shown, written"; `leave` says which cells are not asked. */
async function shownOtherwise(name: string, leave: (formula: string | undefined) => boolean): Promise<string[]> {
  const { file } = await readWorkbook(readFileSync(at("made", name)), name);
  const book = new Workbook();
  await book.xlsx.load(readFileSync(at("saved", name)));
  return file.sheets.flatMap((sheet) => {
    const left = spilledBy(sheet, leave);
    return [...sheet.cells].flatMap(([key, { value, formula }]) => {
      if (left.has(key) || leave(formula)) return [];
      const { row, column } = placeOf(key);
      const shown = plain(book.getWorksheet(sheet.name)?.getCell(row + 1, column + 1).value);
      const where = addressText({ sheet: sheet.name, row, column });
      return same(shown, value) ? [] : [`${where}: ${shown}, ${value}`];
    });
  });
}

/** Places that a formula which is not asked has filled. */
function spilledBy(
  sheet: WorkbookFile["sheets"][number],
  leave: (formula: string | undefined) => boolean,
): Set<string> {
  const places = new Set<string>();
  for (const [key, { formula, spill }] of sheet.cells) {
    if (spill === undefined || !leave(formula)) continue;
    const { row, column } = placeOf(key);
    for (let r = 0; r < spill.rows; r++) for (let c = 0; c < spill.columns; c++) places.add(`${row + r},${column + c}`);
  }
  return places;
}

function plain(value: unknown): unknown {
  if (value === null || value === undefined) return "";
  if (typeof value !== "object") return value;
  if ("error" in value) return value.error;
  return "result" in value ? plain(value.result) : "";
}

function same(shown: unknown, written: unknown): boolean {
  if (typeof shown !== "number" || typeof written !== "number") return shown === written;
  // The suite writes fifteen digits.
  return Math.abs(shown - written) <= 1e-12 * Math.abs(written);
}

test.each(templates.map(({ name }) => name))("%s opens, and all that was typed stands in it", async (name) => {
  expect(await shownOtherwise(`${name}.xlsx`, (formula) => formula !== undefined)).toEqual([]);
});

test.each(templates.map(({ name }) => name))("the values-only copy of %s shows every value", async (name) => {
  const file = `${name} (values only).xlsx`;
  expect(
    await shownOtherwise(file, (formula) => formula !== undefined && (isNew(formula) || callsOurs(formula))),
  ).toEqual([]);
});
