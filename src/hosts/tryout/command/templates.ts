/** The command `npm run -s templates`. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { templates } from "../../../templates/index.ts";
import type { WorkbookTemplate } from "../../../templates/kit/template.ts";
import { placeOf, type WorkbookFile } from "../../../workbook/file/model.ts";
import { writeWorkbook } from "../../../workbook/file/write.ts";
import { columnLetters } from "../../../workbook/host.ts";
import { VERSION } from "../../../workbook/version.ts";
import { HeadlessWorkbook } from "../engine/headless.ts";
import { print, quietly } from "./quietly.ts";

const USAGE = `Usage:
  npm run -s templates                        every template and the demo as JSON: sheets, cells with address, formula, value
  npm run -s templates -- NAME                one of them
  npm run -s templates -- --save FOLDER       writes each as .xlsx, and beside it one with values only`;

async function calculated(template: WorkbookTemplate): Promise<WorkbookFile> {
  const workbook = await HeadlessWorkbook.open(template);
  await workbook.arrived();
  const file = workbook.file(VERSION);
  workbook.dispose();
  return file;
}

/** A template as it is printed. */
function listed(template: WorkbookTemplate, file: WorkbookFile) {
  return {
    name: template.name,
    names: Object.fromEntries(file.names),
    sheets: file.sheets.map((sheet, i) => ({
      name: sheet.name,
      says: template.sheets[i]?.says ?? "",
      cells: [...sheet.cells]
        .map(([key, cell]) => ({ ...placeOf(key), cell }))
        .filter(({ cell }) => cell.value !== "" || cell.formula !== undefined)
        .sort((a, b) => a.row - b.row || a.column - b.column)
        .map(({ row, column, cell }) => ({
          address: `${columnLetters(column)}${row + 1}`,
          ...(cell.formula === undefined ? {} : { formula: cell.formula }),
          value: cell.value,
        })),
    })),
  };
}

async function save(folder: string): Promise<string[]> {
  mkdirSync(folder, { recursive: true });
  const lines: string[] = [];
  for (const template of templates) {
    const file = await calculated(template);
    for (const valuesOnly of [false, true]) {
      const path = join(folder, `${template.name}${valuesOnly ? " (values only)" : ""}.xlsx`);
      writeFileSync(path, await writeWorkbook(file, { version: VERSION, valuesOnly }));
      lines.push(path);
    }
  }
  return lines;
}

await quietly(async () => {
  const [first, folder, ...more] = process.argv.slice(2);
  if (more.length > 0 || (first === "--save") !== (folder !== undefined)) {
    process.stderr.write(`${USAGE}\n`);
    return 2;
  }
  if (folder !== undefined) {
    await print(`${(await save(folder)).join("\n")}\n`);
    return 0;
  }
  const wanted = templates.filter(({ name }) => first === undefined || name.toLowerCase() === first.toLowerCase());
  if (wanted.length === 0) {
    process.stderr.write(
      `There is no template ${first}. There are: ${templates.map(({ name }) => name).join(", ")}.\n`,
    );
    return 2;
  }
  const all = [];
  for (const template of wanted) all.push(listed(template, await calculated(template)));
  await print(`${JSON.stringify(all, null, 1)}\n`);
  return 0;
});
