import { FormulaDependencyGenerator } from "@univerjs/engine-formula";
import { afterEach, expect, test, vi } from "vitest";
import { HeadlessWorkbook } from "../../../../src/hosts/tryout/engine/headless.ts";
import { workbook } from "../sheet/sheet.ts";

/** On a busy machine the engine takes a while to find what depends on what, and edits come meanwhile. */

const sheets: HeadlessWorkbook[] = [];
afterEach(() => {
  vi.restoreAllMocks();
  for (const sheet of sheets.splice(0)) sheet.dispose();
});

const wait = (ms: number) => new Promise((done) => setTimeout(done, ms));

function busy(ms: number): void {
  const generate = FormulaDependencyGenerator.prototype.generate;
  vi.spyOn(FormulaDependencyGenerator.prototype, "generate").mockImplementation(async function (
    this: FormulaDependencyGenerator,
    ...args
  ) {
    await wait(ms);
    const found = await generate.apply(this, args);
    await wait(ms);
    return found;
  });
}

/** A chain of sums down column B, and a table that spills, with what depends on it. */
const ROWS = [
  [1, "=A1*2", "=SEQUENCE(A1,1,A1)", "=MAX(C1:C20)"],
  [1, "=A2+B1"],
  [1, "=A3+B2"],
];

type Edit = readonly [address: string, value: number, afterMs: number];

async function edited(edits: readonly Edit[]): Promise<HeadlessWorkbook> {
  const sheet = await HeadlessWorkbook.open(workbook({ Sheet: ROWS }), []);
  sheets.push(sheet);
  for (const [address, value, afterMs] of edits) {
    sheet.api.getActiveWorkbook()?.getSheetByName("Sheet")?.getRange(address).setValue({ v: value, f: null, p: null });
    await wait(afterMs);
  }
  return sheet;
}

test("no edit is lost, whenever it comes", async () => {
  busy(40);
  const spacings = Array.from({ length: 40 }, (_, n) => 100 + 5 * n);
  const turns = (ms: number) =>
    [1, 2, 3, 4].flatMap((i): Edit[] => [
      ["A1", i, ms],
      ["A2", 10 * i, ms],
      ["A3", 100 * i, ms],
    ]);
  const edits = await Promise.all(spacings.map((ms) => edited(turns(ms))));
  const shown = () => edits.map((sheet) => ["A1", "B1", "B2", "B3", "D1"].map((at) => sheet.valueAt(`Sheet!${at}`)));
  await expect.poll(shown, { timeout: 60_000 }).toEqual(spacings.map(() => [4, 8, 48, 448, 7]));
});
