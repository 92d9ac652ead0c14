import { expect, test } from "vitest";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import type { RawArgument } from "../../src/functions/declare/param.ts";
import { find } from "../../src/functions/find/find.ts";
import { registry } from "../../src/functions/registry.ts";
import { invoke } from "../../src/functions/run/invoke.ts";
import { BASIS_SHEET, basisRows } from "../../src/pane/cautions/basis-sheet.ts";
import { familiesOf, Gathering } from "../../src/pane/cautions/findings.ts";
import { asksFormula, Survey } from "../../src/pane/cautions/survey.ts";
import type { Looked } from "../../src/pane/cautions/workbook-scan.ts";
import { runs } from "../../src/pane/parts/cells.ts";
import type { NamedCell, NamedRows } from "../../src/workbook/host.ts";
import { type CellAddress, Ledger } from "../../src/workbook/ledger.ts";
import { count, push, samples } from "./samples.ts";

const cell = (row: number, column = 1, sheet = "Wall"): CellAddress => ({ sheet, row, column });

function filled(calls: readonly (readonly [CellAddress, readonly RawArgument[]])[]): Ledger {
  const ledger = new Ledger();
  for (const [address, args] of calls) ledger.record(address, { id: push.id, args, outcome: invoke(push, args) });
  return ledger;
}

/** @param formula of the first cell, where the ledger alone cannot tell */
function reviewed(ledger: Ledger, formula?: string) {
  const survey = new Survey(() => samples);
  const entries = ledger.entries();
  const [first] = entries;
  survey.start(entries, first === undefined || formula === undefined ? new Map() : new Map([[first, formula]]));
  survey.work(() => true);
  const gathering = new Gathering();
  for (const found of survey.cells) gathering.add(found);
  return gathering.findings();
}

test("errors, cautions by weight, and assumptions, each with its cells", () => {
  const found = reviewed(
    filled([
      [cell(3), [100, 10, "B"]],
      [cell(4), [50, 10, "B"]],
      [cell(5), [50, 10, "B", 2]],
      [cell(6), [100, 900, "B"]],
      [cell(7), [100, 10, "X"]],
    ]),
  );
  expect(found.cells).toBe(5);
  expect(found.errors.map((e) => [e.address.row, e.code])).toEqual([
    [6, "#N/A"],
    [7, "#VALUE!"],
  ]);
  expect(found.inputCautions).toHaveLength(1);
  expect(found.inputCautions[0]?.cells.map((c) => c.row)).toEqual([4, 5]);
  expect(found.standingCautions.map((s) => s.sentence)).toEqual([...push.cautions]);
  expect(found.assumptions).toHaveLength(1);
  expect(found.assumptions[0]?.cells.map((c) => c.row)).toEqual([3, 4]);
  expect(found.sources).toEqual([expect.objectContaining({ sentence: "A table of pushes", functions: ["WIND_PUSH"] })]);
});

test("earlier arguments of a cell do not count", () => {
  const ledger = filled([
    [cell(3), [50, 10, "X"]],
    [cell(3), [100, 10, "B"]],
  ]);
  const [entry] = ledger.entries();
  expect(entry && asksFormula(entry)).toBe(true);
  expect(reviewed(ledger).errors).toEqual([]);
  expect(reviewed(ledger, "=SILL.WIND_PUSH(A1,10,A2)").errors).toEqual([]);
  expect(reviewed(ledger, "=SILL.WIND_PUSH(A1,10,A2)+SILL.WIND_PUSH(A3,10,A4)").errors).toHaveLength(1);
});

test("assumptions stand by the family of their function, in the order of the functions, none lost", () => {
  const found = (sentence: string, ...functions: string[]) => ({ sentence, functions, cells: [] });
  const list = [found("parts", "PART_COUNT"), found("flat", "WIND_PUSH"), found("both", "PART_COUNT", "WIND_PUSH")];
  expect(familiesOf(list, samples).map(([family, own]) => [family, own.map(({ sentence }) => sentence)])).toEqual([
    ["Wind", ["flat"]],
    ["Takeoff and cutting", ["parts", "both"]],
  ]);
});

test("a survey works in slices and remembers what it has worked out", () => {
  const ledger = filled(Array.from({ length: 9 }, (_, i) => [cell(i), [100 + (i % 3), 10, "B"]] as const));
  let runsOfPush = 0;
  const counting: typeof push = {
    ...push,
    run(args, tape) {
      runsOfPush++;
      return push.run(args, tape);
    },
  };
  const survey = new Survey(() => [counting]);
  survey.start(ledger.entries());
  let slices = 0;
  while (!survey.done) {
    let left = 2;
    survey.work(() => --left > 0);
    slices++;
  }
  expect(slices).toBe(5);
  expect(survey.cells).toHaveLength(9);
  expect(runsOfPush).toBe(3);
});

test("cells one below the other are one run", () => {
  const cells = [cell(3), cell(5), cell(4), cell(4), cell(4, 2), cell(9), cell(4, 1, "Wall 2")];
  expect(runs(cells).map((r) => r.text)).toEqual(["Wall!B4:B6", "Wall!B10", "Wall!C5", "'Wall 2'!B5"]);
});

test("the worksheet has four columns throughout, says every sentence and whether it is whole", () => {
  const ledger = filled([
    [cell(3), [50, 10, "B"]],
    [cell(4), [50, 10, "B"]],
    [cell(5), [100, 1, "X"]],
  ]);
  const survey = new Survey(() => samples);
  survey.start(ledger.entries());
  survey.work(() => true);
  const waiting = [cell(9)];
  const looked: Looked = {
    coverage: { ours: 4, calculated: 3, waiting, says: "3 of 4 cells calculated" },
    errors: [
      {
        address: cell(7),
        error: "#SPILL!",
        formula: "=B2#",
        said: { what: "The cell shows #SPILL!.", why: "Something stands in its way.", todo: "" },
      },
    ],
    unread: [],
  };
  const basis: NamedRows = {
    first: cell(20, 0),
    rows: [
      ["Basis", "Value", "Unit"],
      ["Site", "", ""],
      ["Wind speed", 110, "mph"],
    ],
    formulas: [],
  };
  const named: NamedCell[] = [
    { name: "Dead", address: cell(12), value: 12.5, formula: "", label: "Dead load", unit: "psf" },
    { name: "Free", address: cell(13), value: "", formula: "", label: "", unit: "" },
    { name: "Push", address: cell(3), value: 50, formula: "=SILL.WIND_PUSH(50,10,B2)", label: "", unit: "" },
    { name: "Twice", address: cell(14), value: 100.123456789, formula: "=2*Push", label: "Both sides", unit: "plf" },
  ];
  const rows = basisRows({ found: reviewed(ledger), cells: survey.cells, looked, basis, named });
  expect(rows.every((row) => row.length === 4)).toBe(true);
  expect(rows.map((row) => row[0])).toEqual(
    expect.arrayContaining([
      BASIS_SHEET,
      "Project",
      "NOT WHOLE: 3 of 4 cells calculated. Calculate the rest and write this sheet again.",
      "3 cells with SILL functions: 2 errors, 2 cautions, 1 assumption.",
      "Error #VALUE!",
      "Error #SPILL!",
      "Caution for these cells",
      "Caution for every use",
      "Assumption",
      "Source",
      "Result",
    ]),
  );
  expect(rows.find((row) => row[0] === "Caution for these cells")?.[3]).toBe("Wall!B4:B5");
  const listed = (heading: string) => {
    const start = rows.findIndex((row) => row[0] === heading);
    return rows.slice(
      start + 1,
      rows.findIndex((row, r) => r > start && row[0] === ""),
    );
  };
  expect(listed("Input")).toEqual([
    ["Wind speed", 110, "mph", "Wall!B23"],
    ["Dead load (Dead)", 12.5, "psf", "Wall!B13"],
  ]);
  expect(listed("Result")).toEqual([
    ["Push", 50, "psf", "Wall!B4"],
    ["Both sides (Twice)", 100.123, "plf", "Wall!B15"],
    ["WIND_PUSH", 50, "psf", "Wall!B5"],
    ["WIND_PUSH", "#VALUE!", "", "Wall!B6"],
  ]);
});

test("two editions of one standard in a workbook are a caution with the cells of the rarer one", () => {
  const edition = registry.find((fn) => fn.name === "WIND_KZ") as CellFunction;
  const ledger = new Ledger();
  [null, null, "7-10"].forEach((given, row) => {
    const basis = [
      ["Basis", "Value"],
      ["exposure", "C"],
      ["ASCE 7 edition", given],
    ];
    const args = [30, ...Array<null>(edition.params.length - 2).fill(null), basis];
    ledger.record(cell(row), { id: edition.id, args, outcome: invoke(edition, args) });
  });
  const survey = new Survey(() => [edition]);
  survey.start(ledger.entries());
  survey.work(() => true);
  const gathering = new Gathering();
  for (const found of survey.cells) gathering.add(found);
  expect(gathering.findings().mixed).toEqual([
    expect.objectContaining({
      sentence: "Mixed editions: ASCE 7 edition 7-10 in these cells, 7-22 in the others.",
      cells: [cell(2)],
    }),
  ]);
});

test("functions are found by name, by summary and by the words of their parameters", () => {
  expect(find(samples, "wind").map((f) => f.name)).toEqual(["WIND_PUSH"]);
  expect(find(samples, "upwind")).toEqual([push]);
  expect(find(samples, "SILL.PART_COUNT(")).toEqual([count]);
  expect(find(samples, "speed ground")).toEqual([push]);
  expect(find(samples, "nothing like it")).toEqual([]);
  expect(find(samples, " ")).toHaveLength(2);
});
