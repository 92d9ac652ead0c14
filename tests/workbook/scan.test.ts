import { expect, test } from "vitest";
import { Ledger } from "../../src/workbook/ledger.ts";
import { coverage, type FoundCell } from "../../src/workbook/scan.ts";

const cell = (row: number, formula: string, error = ""): FoundCell => ({
  address: { sheet: "Wall", row, column: 0 },
  formula,
  error,
  ours: true,
});
const ledgerOf = (...cells: readonly FoundCell[]): Ledger => {
  const ledger = new Ledger();
  for (const { address } of cells) ledger.record(address, { id: "LENGTH", args: [], outcome: { ok: true, value: 1 } });
  return ledger;
};

const plain = cell(0, '=SILL.LENGTH("3 ft")');
const behind = cell(1, '=IF(A9="","",SILL.LENGTH(A9))');
const named = cell(2, '=SILL.LENGTH("IF(")');
const broken = cell(3, "=IF(A9,SILL.LENGTH(A8),1)", "#NAME?");

test("a workbook that was just opened waits for every cell", () => {
  expect(coverage({ cells: [plain, behind], unread: [] }, ledgerOf())).toMatchObject({
    calculated: 0,
    waiting: [plain.address, behind.address],
    says: "0 of 2 cells calculated",
  });
});

test("a function behind an IF that took its other side is not waited for once all others have calculated", () => {
  expect(coverage({ cells: [plain, behind], unread: [] }, ledgerOf(plain))).toMatchObject({
    waiting: [],
    says: "2 of 2 cells calculated",
  });
});

test("one that shows an error is, and so is one with an IF in a text", () => {
  const waiting = (cells: FoundCell[]) => coverage({ cells, unread: [] }, ledgerOf(plain)).waiting;
  expect(waiting([plain, named])).toEqual([named.address]);
  expect(waiting([plain, broken])).toEqual([broken.address]);
});
