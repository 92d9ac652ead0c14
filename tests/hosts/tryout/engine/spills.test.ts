import { expect, test } from "vitest";
import { registry } from "../../../../src/functions/registry.ts";
import { HeadlessWorkbook } from "../../../../src/hosts/tryout/engine/headless.ts";
import { workbook } from "../sheet/sheet.ts";
import { grid } from "./probe.ts";

const open = (...given: Parameters<typeof workbook>) => HeadlessWorkbook.open(workbook(...given), [...registry, grid]);

test("a table that gets shorter is read without its old rows, in the same calculation, by name and by cells", async () => {
  const sheet = await open(
    {
      Start: [[4, "=SUM(room)", "=SUM(Other!A1:A6)", '=IFERROR(VLOOKUP(3,room,4,FALSE),"none")']],
      Other: [["=SILL.GRID(Start!A1)"]],
    },
    [["room", "Other!$A$1:$D$6"]],
  );
  const seen = () => ["B1", "C1", "D1"].map((cell) => sheet.valueAt(`Start!${cell}`));
  expect(seen()).toEqual([10, 10, "6:12"]);
  await sheet.set("Start!A1", 2);
  expect(seen()).toEqual([3, 3, "none"]);
  await sheet.set("Start!A1", 5);
  expect(seen()).toEqual([15, 15, "6:12"]);
  sheet.dispose();
});

test("a table that becomes an error or one value leaves nothing to read", async () => {
  const sheet = await open({ Start: [[3, "=COUNT(room)"]], Other: [['=IF(Start!A1=0,"none",SILL.GRID(Start!A1))']] }, [
    ["room", "Other!$A$1:$A$6"],
  ]);
  expect(sheet.valueAt("Start!B1")).toBe(3);
  await sheet.set("Start!A1", 0);
  expect(sheet.valueAt("Start!B1")).toBe(0);
  await sheet.set("Start!A1", 2);
  expect(sheet.valueAt("Start!B1")).toBe(2);
  sheet.dispose();
});

test("an empty text clears a cell", async () => {
  const sheet = await open({ Start: [[3, "=COUNT(A1)"]] });
  await sheet.set("Start!A1", "");
  expect(sheet.valueAt("Start!A1")).toBeUndefined();
  expect(sheet.valueAt("Start!B1")).toBe(0);
  sheet.dispose();
});
