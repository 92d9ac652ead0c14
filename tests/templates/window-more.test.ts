import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/core/kit/tape.ts";
import { HeadlessWorkbook } from "../../src/hosts/tryout/engine/headless.ts";
import { demo } from "../../src/templates/demo.ts";
import { templateNamed } from "../../src/templates/insert.ts";
import type { WorkbookTemplate } from "../../src/templates/kit/template.ts";
import { parseRange } from "../../src/workbook/named-rows.ts";
import { isErrorText } from "../../src/workbook/scan.ts";

/** A workbook in the real engine, with what a person does to its tables. */
class Sheets {
  readonly workbook: HeadlessWorkbook;
  readonly #template: WorkbookTemplate;

  private constructor(workbook: HeadlessWorkbook, template: WorkbookTemplate) {
    this.workbook = workbook;
    this.#template = template;
  }

  static async open(template: WorkbookTemplate): Promise<Sheets> {
    const workbook = await HeadlessWorkbook.open(template);
    await workbook.arrived();
    return new Sheets(workbook, template);
  }

  range(name: string) {
    const range = parseRange(this.#template.names.find(([known]) => known === name)?.[1] ?? "");
    if (range === undefined) throw new Error(`no cells are named ${name}`);
    return range;
  }

  /** The cells of a name, those that a spill left free as "". */
  rows(name: string): Cell[][] {
    const { first, rows, columns } = this.range(name);
    const letters = (column: number) =>
      column < 26
        ? String.fromCharCode(65 + column)
        : `${String.fromCharCode(64 + Math.floor(column / 26))}${String.fromCharCode(65 + (column % 26))}`;
    return Array.from({ length: rows }, (_, r) =>
      Array.from(
        { length: columns },
        (_, c) => this.workbook.valueAt(`'${first.sheet}'!${letters(first.column + c)}${first.row + r + 1}`) ?? "",
      ),
    );
  }

  row(name: string, first: string): Cell[] {
    return this.rows(name).find(([cell]) => cell === first) ?? [];
  }

  value(name: string): number {
    return Number(this.rows(name)[0]?.[0]);
  }

  errors(): string[] {
    return this.workbook
      .file("")
      .sheets.flatMap((sheet) =>
        [...sheet.cells].flatMap(([key, { value, formula }]) =>
          isErrorText(value) ? [`${sheet.name} ${key} ${value} ${formula}`] : [],
        ),
      );
  }

  /** Writes rows into the free rows of a table, all at once. */
  async add(name: string, added: readonly (readonly Cell[])[]): Promise<void> {
    const { first } = this.range(name);
    const free = this.rows(name).findIndex(([cell]) => cell === "");
    const sheet = this.workbook.api.getActiveWorkbook()?.getSheetByName(first.sheet);
    const values = added.map((row) => row.map((v) => (typeof v === "string" ? { v, t: 4, f: null } : { v, f: null })));
    sheet
      ?.getRange(first.row + free, first.column, added.length, added[0]?.length ?? 0)
      .setValues(values as Parameters<ReturnType<typeof sheet.getRange>["setValues"]>[0]);
    await this.workbook.arrived();
  }
}

const MORE = {
  south: ["window S6", "2'-0\"", "4'-6\"", 1, "2'-9\"", "23'-0\"", "south"],
  north: ["window N3", "3'-0\"", "2'-0\"", 1, "6'-0\"", "22'-6\"", "north"],
  east: ["window E3", "3'-0\"", "4'-6\"", 1, "2'-9\"", "12'-0\"", "east"],
  west: ["window W2", "3'-0\"", "4'-6\"", 1, "2'-9\"", "9'-0\"", "west"],
} as const;

const H = 9.875;
const door = (40 / 12) * (83 / 12);

/** The pull of a wall by SDPWS 4.3.3.5, from its part and what lies in it: pieces narrower than half the height count 2 w/h. */
function pull(shear: number, part: number, pieces: readonly number[], openings: readonly number[]): number {
  const sum = pieces.reduce((all, w) => all + w * Math.min(1, (2 * w) / H), 0);
  const r = 1 / (1 + openings.reduce((a, b) => a + b, 0) / (H * sum));
  const co = Math.min(1, ((r / (3 - 2 * r)) * part) / sum);
  return openings.length === 0 ? (0.6 * shear * H) / sum : (0.6 * shear * H) / (co * sum);
}

describe("the hold-downs follow the table of openings", () => {
  let sheets: Sheets;
  beforeAll(async () => {
    sheets = await Sheets.open(templateNamed("Hold-down schedule"));
  }, 120_000);
  afterAll(() => sheets.workbook.dispose());

  const shear = (wall: string) => Number(sheets.row("ShearLines", wall)[1]);
  const pullOf = (wall: string) => Number(sheets.row("PiercedHoldDowns", wall)[3]);

  test("as they stand", () => {
    expect(sheets.row("PartEnds", "south").slice(1)).toEqual([6, 42]);
    expect(pullOf("south")).toBeCloseTo(
      pull(shear("south"), 36, [4, 18 + 4 / 12 - 14, 26 - (21 + 8 / 12), 4, 4], [18, door, 18, 18]),
      6,
    );
    expect(pullOf("west")).toBeCloseTo(pull(shear("west"), 12.5, [12.5], []), 6);
  });

  test.each([
    // A new window cuts the piece beside the door in two that are too narrow.
    ["south", 36, [4, 13 / 3, 4, 4], [18, door, 9, 18, 18]],
    ["north", 47.75, [10.5, 9, 9, 10.25], [6, 6, 6]],
    ["east", 21, [6.5, 10 / 3, 29 / 6], [13.5, door]],
    ["west", 12.5, [3.5, 6], [13.5]],
  ] as const)("with a window more in the %s wall", async (wall, part, pieces, openings) => {
    await sheets.add("Openings", [MORE[wall]]);
    expect(sheets.errors()).toEqual([]);
    expect(sheets.row("LeftByOpenings", wall)[1]).toBe(openings.length);
    expect(pullOf(wall)).toBeCloseTo(pull(shear(wall), part, pieces, openings), 6);
  });

  test("a wall whose pieces are all too narrow says so and shows no error", async () => {
    const before = sheets.range("Openings").first;
    // The window of the west wall grows over the whole room beside the wide opening.
    const at = sheets.rows("Openings").findIndex(([name]) => name === "window W2");
    await sheets.workbook.set(`Walls!B${before.row + at + 1}`, "8'-6\"");
    await sheets.workbook.set(`Walls!F${before.row + at + 1}`, "7'-6\"");
    await sheets.workbook.arrived();
    expect(sheets.errors()).toEqual([]);
    expect(sheets.row("LeftByOpenings", "west").slice(1)).toEqual([0, 1, 0]);
    expect(sheets.row("PiercedHoldDowns", "west")).toEqual([]);
    const checks = sheets.workbook
      .file("")
      .sheets.flatMap(({ cells }) => [...cells.values()].map(({ value }) => value));
    expect(checks).toContain("a wall has none that counts");
  });

  test("a door more shortens the sill that it stands in", async () => {
    const before = Number(sheets.row("Sills", "north")[1]);
    const at = sheets.rows("Openings").findIndex(([name]) => name === "window N3");
    const { first } = sheets.range("Openings");
    await sheets.workbook.set(`Walls!E${first.row + at + 1}`, "0'-0\"");
    await sheets.workbook.arrived();
    expect(sheets.row("Sills", "north")[1]).toBeCloseTo(before - 3, 9);
  });
});

test("the demo with a window more in each wall: no error, and each is counted wherever openings are", {
  timeout: 240_000,
}, async () => {
  const sheets = await Sheets.open(demo);
  const named = ["WindowCount", "WindowArea", "OpeningArea", "NetWallArea"] as const;
  const before = Object.fromEntries(named.map((name) => [name, sheets.value(name)]));
  const bucks = sheets.value("BuckLengths");
  await sheets.add("Openings", Object.values(MORE));
  expect(sheets.errors()).toEqual([]);
  expect(sheets.value("WindowCount")).toBe((before.WindowCount ?? 0) + 4);
  const area = 9 + 6 + 13.5 + 13.5;
  expect(sheets.value("WindowArea")).toBeCloseTo((before.WindowArea ?? 0) + area, 6);
  expect(sheets.value("OpeningArea")).toBeCloseTo((before.OpeningArea ?? 0) + area, 6);
  expect(sheets.value("NetWallArea")).toBeCloseTo((before.NetWallArea ?? 0) - area, 6);
  expect(sheets.value("BuckLengths")).toBeGreaterThan(bucks);
  for (const wall of Object.keys(MORE)) {
    const inside = sheets.rows("Inside").filter((row) => row[6] === wall).length;
    expect(sheets.row("LeftByOpenings", wall)[1], wall).toBe(inside);
    expect(inside, wall).toBeGreaterThan(0);
  }
  sheets.workbook.dispose();
});
