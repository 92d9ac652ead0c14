import { expect, test } from "vitest";
import { positional } from "../../src/functions/declare/formula.ts";
import type { RawArgument } from "../../src/functions/declare/param.ts";
import { invoke } from "../../src/functions/run/invoke.ts";
import { callsOf, latestCalls, namesIn, spillsOver } from "../../src/pane/working/calls.ts";
import { errorIn, noteFor } from "../../src/pane/working/cell-notes.ts";
import { Ledger, type LedgerCall } from "../../src/workbook/ledger.ts";
import { count, push, samples } from "./samples.ts";

test("the functions that a formula names", () => {
  expect(namesIn("=SILL.WIND_PUSH(sill.Part_Count(A1:B2),\"SILL.NO(\",'SILL.NO('!A1)")).toEqual([
    "WIND_PUSH",
    "PART_COUNT",
  ]);
  expect(namesIn("=OTHERSILL.WIND_PUSH(1)+MY.SILL.WIND_PUSH(1)")).toEqual([]);
  expect(namesIn('="it\'s "&SILL.WIND_PUSH(1)&"\'"')).toEqual(["WIND_PUSH"]);
  expect(namesIn("SILL.WIND_PUSH(1)")).toEqual([]);
});

const call = (fn: (typeof samples)[number], ...args: RawArgument[]): LedgerCall => ({
  id: fn.id,
  args,
  outcome: invoke(fn, args),
});
const speeds = (chosen: readonly { call: LedgerCall }[]) => chosen.map((c) => c.call.args[0]);

test("only calls of the formula, latest first, and no more of a function than the formula has", () => {
  const calls = [call(push, 1, 1, "B"), call(count, [["a", 1]]), call(push, 2, 1, "B"), call(push, 3, 1, "B")];
  expect(speeds(callsOf("=SILL.WIND_PUSH(A1,1,A2)", calls, samples))).toEqual([3]);
  expect(speeds(callsOf("=SILL.WIND_PUSH(SILL.WIND_PUSH(1,1,A1),1,A2)", calls, samples))).toEqual([3, 2]);
  expect(speeds(callsOf("=MAP(A1:A3,LAMBDA(s,SILL.WIND_PUSH(s,1,A2)))", calls, samples))).toEqual([3, 2, 1]);
  expect(callsOf("=A1+1", calls, samples)).toEqual([]);
  expect(latestCalls(calls, samples).map((c) => c.fn.name)).toEqual(["WIND_PUSH", "PART_COUNT"]);
});

test("the cell that a table comes from", () => {
  const ledger = new Ledger();
  const at = { sheet: "Wall", row: 4, column: 1 };
  ledger.record(at, call(count, ...positional(count, count.example.args)));
  const over = (row: number, column: number, sheet = "Wall") => spillsOver({ sheet, row, column }, ledger.entries());
  expect(over(5, 2)).toEqual([at]);
  expect(over(4, 2)).toEqual([at]);
  expect(over(4, 1)).toEqual([]);
  expect(over(6, 2)).toEqual([]);
  expect(over(5, 2, "Roof")).toEqual([]);
});

test("a cell without a call says why and what to do", () => {
  const note = (formula: string, value: string | number | undefined) =>
    noteFor({ formula, value, names: namesIn(formula), known: samples.map((fn) => fn.name) });
  expect(note("", undefined).what).toBe("This cell is empty.");
  expect(note("=A1", 3).what).toBe("This cell holds no Sillwork function.");
  expect(note("=SILL.WIND_PUHS(1)", "#NAME?").why).toBe("The nearest name is SILL.WIND_PUSH.");
  expect(note("=SILL.QQQQQQ(1)", "#NAME?").why).toBe("No function has a name like it.");
  expect(note("=1/0", "#DIV/0!").why).toContain("divides by zero");
  expect(note("=SILL.WIND_PUSH(A1)", "#DIV/0!").what).toBe("The cell shows #DIV/0!, and SILL.WIND_PUSH has not run.");
  expect(note("=SILL.WIND_PUSH(A1)", 3).todo).toContain("Calculate the cell again");
});

test("errors that a cell shows", () => {
  expect(["#VALUE!", "#N/A", "#NAME?", "#DIV/0!", "#SPILL!"].map(errorIn)).not.toContain(undefined);
  expect([12, "#4 rebar", "", undefined].map(errorIn)).toEqual([undefined, undefined, undefined, undefined]);
});

test("a cell that takes a basis which is not there is sent to Site; another unknown name is not", () => {
  const facts = { value: "#NAME?", names: ["WIND_PUSH"], known: samples.map((fn) => fn.name) };
  expect(noteFor({ ...facts, formula: "=SILL.WIND_PUSH(Basis)" }).todo).toBe("Make it in Site.");
  expect(noteFor({ ...facts, formula: "=SILL.WIND_PUSH(Speed)" }).todo).toMatch(/Check the spelling/);
});
