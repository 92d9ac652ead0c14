import fc from "fast-check";
import { expect, test } from "vitest";
import { formulaOf, positional } from "../../src/functions/declare/formula.ts";
import type { ParamKind } from "../../src/functions/declare/param.ts";
import { registry } from "../../src/functions/registry.ts";
import { answered, explained } from "../../src/functions/run/tables-on-demand.ts";
import { exampleTexts, fieldValue, fieldValues, formulaFrom, missing } from "../../src/pane/functions/form.ts";
import { arrayConstant, quoted } from "../../src/pane/parts/literals.ts";
import { previewOf } from "../../src/pane/typing/preview.ts";
import { count, push } from "./samples.ts";

const written = (text: string, kind: ParamKind) => {
  const v = fieldValue(text, kind);
  return v.kind === "omitted" ? "" : v.formula;
};

test.each<[string, ParamKind, string]>([
  ["12.5", "number", "12.5"],
  [" 1,200 ", "number", "1200"],
  ["-3", "number", "-3"],
  ["12'-6\"", "length", '"12\'-6"""'],
  ["6-1/2", "length", '"6-1/2"'],
  ["6:12", "quantity", '"6:12"'],
  ["10%", "number", '"10%"'],
  ["A1", "length", "A1"],
  ["$b$4", "number", "$b$4"],
  ["Wall!B4", "number", "Wall!B4"],
  ["'Wall 1'!B4", "text", "'Wall 1'!B4"],
  ["B2:C9", "table", "B2:C9"],
  ["Wall!A:C", "table", "Wall!A:C"],
  ["C5#", "table", "C5#"],
  ["Layers[#All]", "table", "Layers[#All]"],
  ["layers", "table", "layers"],
  ["wind_speed", "quantity", "wind_speed"],
  ["ft2", "text", '"ft2"'],
  ["B4", "text", "B4"],
  ["psf", "text", '"psf"'],
  ["B", "choice", '"B"'],
  ["7-16", "choice", '"7-16"'],
  ["true", "flag", "TRUE"],
  ['"B4"', "text", '"B4"'],
  ["=B4*2", "number", "B4*2"],
  ['{"a",1;"b",2}', "table", '{"a",1;"b",2}'],
  ["  ", "number", ""],
])("%s in a %s field is written %s", (text, kind, formula) => expect(written(text, kind)).toBe(formula));

test("a formula leaves out the end and keeps the places between", () => {
  const formula = (texts: Record<string, string>) => formulaFrom(push, fieldValues(push, texts));
  expect(formula({ speed: "100", height: "12'-6\"", exposure: "C" })).toBe('=SILL.WIND_PUSH(100, "12\'-6""", "C")');
  expect(formula({ speed: "100", exposure: "C" })).toBe('=SILL.WIND_PUSH(100, , "C")');
  expect(formula({})).toBe("=SILL.WIND_PUSH()");
  expect(missing(push, fieldValues(push, { speed: "100" }))).toEqual(["height", "exposure"]);
});

test("a choice may be read from a cell", () => {
  const values = fieldValues(push, { speed: "A1", height: "8", exposure: "C2" }, new Set(["exposure"]));
  expect(formulaFrom(push, values)).toBe("=SILL.WIND_PUSH(A1, 8, C2)");
});

test("every text comes back from its quotes, and an array constant from its text", () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.string(), fc.integer(), fc.boolean()), { minLength: 1, maxLength: 4 }), (rows) => {
      const text = `{${rows.map((r) => r.map((c) => (typeof c === "string" ? quoted(c) : String(c).toUpperCase())).join(",")).join(";")}}`;
      expect(arrayConstant(text)).toEqual(rows);
    }),
  );
  expect(arrayConstant("{1,2;3}")).toBeUndefined();
  expect(arrayConstant("{A1}")).toBeUndefined();
});

test.each([...registry, push, count].map((fn) => [fn.name, fn] as const))(
  "the example of %s through the form gives the same formula and answer",
  async (_, fn) => {
    const formula = formulaFrom(fn, fieldValues(fn, exampleTexts(fn)));
    expect(formula).toBe(formulaOf(fn, fn.example.args, "SILL"));
    const place = { functions: [fn], explain: explained, host: undefined, sheet: "", searches: true };
    const preview = await previewOf(formula, place);
    const working = "waits" in preview ? preview.waits : preview.working.outcome;
    expect(working).toEqual(await answered(fn, positional(fn, fn.example.args)));
  },
);
