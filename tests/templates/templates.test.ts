import { describe, expect, test } from "vitest";
import { functionNamed } from "../../src/functions/registry.ts";
import { HeadlessWorkbook } from "../../src/hosts/tryout/engine/headless.ts";
import { demo } from "../../src/templates/demo.ts";
import { templates } from "../../src/templates/index.ts";
import type { WorkbookTemplate } from "../../src/templates/kit/template.ts";
import { checkFile } from "../../src/workbook/file/limits.ts";
import { writeWorkbook } from "../../src/workbook/file/write.ts";
import { ourNames, unknownName } from "../../src/workbook/formula.ts";
import { addressText } from "../../src/workbook/host.ts";
import { isErrorText } from "../../src/workbook/scan.ts";
import { readOtherwise } from "../workbook/file/reader.ts";
import { schemaFaults } from "../workbook/file/schema.ts";

const ASKED = [
  ...["Site basis", "Wind schedule", "Snow and loads", "Panel, column and screw check", "Hold-down schedule"],
  ...["Wall assembly and dew point", "Twelve-month moisture", "Whole-house UA", "Wall takeoff and courses"],
  ...["House courses and cutting list", "Envelope order list with prices", "Lift plan", "Truck plan"],
  ...["Window labor", "Bid build-up", demo.name],
];

const formulasOf = ({ sheets }: WorkbookTemplate) =>
  sheets.flatMap(({ name, rows }) =>
    rows.flatMap((line, row) =>
      line.flatMap((cell, column) =>
        typeof cell?.is === "string" && cell.is.startsWith("=")
          ? [{ at: addressText({ sheet: name, row, column }), formula: cell.is }]
          : [],
      ),
    ),
  );
/** Texts with digits in formulas that are a rule of COUNTIF and its like. */
const OF_THE_METHOD = /^[<>]?0?$/;
/** Numbers in formulas that are of the method, each said in the note beside it: no input. */
const FACTORS = [
  ...[0, 1, 2, 4, 12],
  // zone of a wall and area of the smallest parts
  ...[5, 10, 32],
  // load combinations, moment and support factors of even spans
  ...[0.4, 0.6, 0.7, 0.75, 1.1, 1.15, 1.25],
  // least width of a piece of wall, h/3.5
  ...[3.5, 0.001],
];
/** A formula without the numbers that say which row or column. */
const withoutPlaces = (formula: string) => {
  let [before, after] = ["", formula.replace(/CHOOSEROWS\((\w+)[\d,]*\)/g, "$1")];
  while (before !== after) {
    before = after;
    after = before
      .replace(/INDEX\(([A-Za-z]\w*),\d+(?:,\d+)?\)/g, "$1")
      .replace(/VLOOKUP\(([^()]*),(\w+),\d+,(?:FALSE|0)\)/g, "$2")
      .replace(/LEFT\(([^()]*),\d+\)/g, "$1");
  }
  return after.replace(/INDEX\((.*),\d+,\d+\)/g, "$1");
};
const withoutTexts = (formula: string) => formula.replace(/"[^"]*"/g, '""');

/** Every cell that shows an error, with it. */
function errorsIn(workbook: HeadlessWorkbook): string[] {
  return workbook
    .file("")
    .sheets.flatMap((sheet) =>
      [...sheet.cells].flatMap(([key, { value, formula }]) =>
        isErrorText(value) ? [`${sheet.name} ${key} ${value} ${formula ?? ""}`] : [],
      ),
    );
}

test("there is a template for each day's work, and the demo", () => {
  expect(templates.map(({ name }) => name)).toEqual(ASKED);
});

describe.each(templates.map((template) => [template.name, template] as const))("%s", (_, template) => {
  const formulas = formulasOf(template);
  const names = template.names.map(([name]) => name);

  test("has no typed address, no empty place, no long formula, no unknown function", () => {
    for (const { at, formula } of formulas) {
      const bare = withoutTexts(formula);
      expect(bare, at).not.toMatch(/(?<![A-Za-z0-9_.])\$?[A-Z]{1,3}\$?\d+(?![A-Za-z0-9_(])/);
      expect(bare, at).not.toMatch(/,\s*,/);
      expect(unknownName(formula), at).toBeUndefined();
      expect(formula.length, `${at} ${formula}`).toBeLessThanOrEqual(90);
    }
  });

  test("has no input inside a formula: measures, sizes and grades stand in cells of their own", () => {
    for (const { at, formula } of formulas) {
      for (const [, quoted = ""] of formula.matchAll(/"([^"]*)"/g))
        expect(OF_THE_METHOD.test(quoted) || !/\d/.test(quoted), `"${quoted}" in ${at}`).toBe(true);
      const numbers = withoutPlaces(withoutTexts(formula)).match(/(?<![A-Za-z\d.])\d+(?:\.\d+)?/g) ?? [];
      for (const number of numbers) expect(FACTORS, `${number} in ${at} ${formula}`).toContain(Number(number));
    }
  });

  test("says on each sheet with preliminary results that they are, and at each input what it is", () => {
    for (const { name, rows } of template.sheets) {
      const called = rows.flat().flatMap((cell) => ourNames(String(cell?.is ?? "")));
      const isPreliminary = called.some((own) => functionNamed(own)?.cautions.some((c) => c.startsWith("Preliminary")));
      const notes = rows
        .slice(0, 12)
        .flatMap((row) => row.flatMap((cell) => (cell?.role === "note" ? [String(cell.is)] : [])));
      expect(
        notes.some((says) => says.startsWith("Preliminary figures for planning")),
        name,
      ).toBe(isPreliminary);
      for (const row of rows) {
        const [what, value] = row;
        if (what?.role === "label" && value?.role === "input")
          expect(value.hint ?? "", `${name}: ${what.is}`).not.toBe("");
      }
    }
  });

  test("knows every name that its formulas use, each once", () => {
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
    for (const { at, formula } of formulas) {
      for (const [word] of withoutTexts(formula).matchAll(/(?<![A-Za-z0-9_.])[A-Z][A-Za-z0-9]*(?![A-Za-z0-9_.(])/g)) {
        if (!["FALSE", "TRUE"].includes(word)) expect(names, `${word} in ${at}`).toContain(word);
      }
    }
  });

  test("calculates without an error; its files follow the schema and read as they were written", {
    timeout: 120_000,
  }, async () => {
    const workbook = await HeadlessWorkbook.open(template);
    await workbook.arrived();
    const errors = errorsIn(workbook);
    // A refusal that a formula catches would still stand among the errors of the view Cautions.
    const refused = workbook.ledger
      .entries()
      .filter(({ calls }) => calls.some(({ outcome }) => !outcome.ok))
      .map(({ address }) => addressText(address));
    const file = workbook.file("0.0.0");
    checkFile(file);
    workbook.dispose();
    expect(errors).toEqual([]);
    expect(refused).toEqual([]);
    for (const valuesOnly of [false, true]) {
      const bytes = await writeWorkbook(file, { version: "0.0.0", valuesOnly });
      expect(await schemaFaults(bytes)).toEqual([]);
      expect(await readOtherwise(bytes, file)).toEqual([]);
    }
  });

  test("keeps tables that spill beside each other: none stands above another or above anything", () => {
    for (const { name, rows } of template.sheets) {
      const spills = rows.flatMap((line, row) =>
        line.flatMap((cell, column) =>
          cell?.role === "label" && String(cell.is).startsWith("=") ? [{ row, column }] : [],
        ),
      );
      for (const { row, column } of spills) {
        for (const below of rows.slice(row + 1)) expect(below[column]?.is ?? "", `${name}, under row ${row}`).toBe("");
      }
    }
  });
});
