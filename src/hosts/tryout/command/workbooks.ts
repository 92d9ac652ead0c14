/** The command `npm run -s workbooks -- FOLDER`, for the person who keeps an office's templates. */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { print, quietly } from "./quietly.ts";
import { type Review, review } from "./review.ts";

const USAGE = `Usage:
  npm run -s workbooks -- FOLDER      a line of JSON for each .xlsx file: errors, cautions, values that differ from the stored ones, mixed editions
Ends with 1 where a file has an error, a changed value or mixed editions, or cannot be opened.`;

/** The .xlsx files of a folder, or the file itself; not the ones that a program keeps beside an open workbook. */
function filesOf(place: string): string[] {
  if (statSync(place).isFile()) return [place];
  return readdirSync(place)
    .filter((name) => /\.xlsx$/i.test(name) && !name.startsWith("~$"))
    .sort()
    .map((name) => join(place, name));
}

function isSound({ errors, changed, mixedEditions }: Review): boolean {
  return errors.length === 0 && changed.length === 0 && mixedEditions.length === 0;
}

await quietly(async () => {
  const [place, ...more] = process.argv.slice(2);
  if (place === undefined || more.length > 0 || statSync(place, { throwIfNoEntry: false }) === undefined) {
    process.stderr.write(`${USAGE}\n`);
    return 2;
  }
  const files = filesOf(place);
  if (files.length === 0) {
    process.stderr.write(`There is no .xlsx file in ${place}.\n`);
    return 2;
  }
  let sound = true;
  for (const file of files) {
    try {
      const found = await review(readFileSync(file), file);
      sound &&= isSound(found);
      await print(`${JSON.stringify(found)}\n`);
    } catch (problem) {
      sound = false;
      await print(`${JSON.stringify({ file, says: problem instanceof Error ? problem.message : String(problem) })}\n`);
    }
  }
  return sound ? 0 : 1;
});
