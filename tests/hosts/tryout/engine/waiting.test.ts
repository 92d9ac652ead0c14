import { afterEach, describe, expect, test, vi } from "vitest";
import type { Cell } from "../../../../src/core/kit/tape.ts";
import { registry } from "../../../../src/functions/registry.ts";
import { invoke, type Outcome } from "../../../../src/functions/run/invoke.ts";
import { learn, recall } from "../../../../src/functions/run/remember.ts";
import { HeadlessWorkbook } from "../../../../src/hosts/tryout/engine/headless.ts";
import { doubling } from "../../../workbook/search-stubs.ts";
import { workbook } from "../sheet/sheet.ts";

let sheet: HeadlessWorkbook | undefined;
afterEach(() => sheet?.dispose());

/** A sheet whose searches are answered when the test says so. */
async function open(name: string, rows: readonly (readonly Cell[])[]) {
  const { fn } = doubling(name);
  const answers = new Map<string, { promise: Promise<Outcome>; give: () => void }>();
  const opened = await HeadlessWorkbook.open(workbook({ Sheet: rows }), [...registry, fn], (asked, raw) => {
    if (!asked.heavy) return invoke(asked, raw);
    const known = recall(asked, raw);
    if (known !== undefined) return known;
    const key = JSON.stringify(raw);
    let resolve: (outcome: Outcome) => void = () => {};
    const promise = new Promise<Outcome>((settle) => {
      resolve = settle;
    });
    const give = () => {
      learn(asked, raw, invoke(asked, raw));
      resolve(invoke(asked, raw));
    };
    const begun = answers.get(key) ?? { promise, give };
    answers.set(key, begun);
    return begun.promise;
  });
  sheet = opened;
  const arrive = async (value: number) => {
    answers.get(`[${value}]`)?.give();
    await opened.arrived();
  };
  return { opened, arrive, asked: () => [...answers.keys()] };
}

describe("a search whose answer comes later", () => {
  test("the cell waits while the rest of the sheet calculates, then it and what depends on it calculate", async () => {
    const { opened, arrive } = await open("LATER_ONE", [
      [3, "=SILL.LATER_ONE(A1)", "=B1+1", '=SILL.LENGTH("2 ft")'],
      [1, "=A2+1", "=SILL.LATER_ONE(A1)+SILL.LATER_ONE(A1)"],
    ]);
    expect(opened.valueAt("Sheet!B1")).toBe("#GETTING_DATA");
    expect(opened.valueAt("Sheet!C1")).toBe("#GETTING_DATA");
    expect(opened.valueAt("Sheet!D1")).toBe(2);
    expect(opened.ledger.at({ sheet: "Sheet", row: 0, column: 1 })).toBeUndefined();
    await opened.set("Sheet!A2", 10);
    expect(opened.valueAt("Sheet!B2")).toBe(11);
    await arrive(3);
    expect(opened.valueAt("Sheet!B1")).toBe(6);
    expect(opened.valueAt("Sheet!C1")).toBe(7);
    expect(opened.valueAt("Sheet!C2")).toBe(12);
    expect(opened.ledger.at({ sheet: "Sheet", row: 0, column: 1 })?.calls).toEqual([
      { id: "LATERONE", args: [3], outcome: { ok: true, value: 6 } },
    ]);
  });

  test("an answer that comes after its input has changed does not show", async () => {
    const { opened, arrive, asked } = await open("LATER_TWO", [[3, "=SILL.LATER_TWO(A1)"]]);
    await opened.set("Sheet!A1", 4);
    expect(asked()).toEqual(["[3]", "[4]"]);
    void arrive(3);
    await new Promise((done) => setTimeout(done, 400));
    expect(opened.valueAt("Sheet!B1")).toBe("#GETTING_DATA");
    await arrive(4);
    expect(opened.valueAt("Sheet!B1")).toBe(8);
    await opened.set("Sheet!A1", 3);
    expect(opened.valueAt("Sheet!B1")).toBe(6);
  });

  test("a cell that was moved meanwhile gets its answer where it stands", async () => {
    const { opened, arrive } = await open("LATER_THREE", [[3, "=SILL.LATER_THREE(A1)"]]);
    opened.api.getActiveWorkbook()?.getSheetByName("Sheet")?.insertRowBefore(0);
    await new Promise((done) => setTimeout(done, 700));
    await arrive(3);
    await vi.waitFor(() => expect(opened.valueAt("Sheet!B2")).toBe(6), 5000);
  });
});
