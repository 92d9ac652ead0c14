import { describe, expect, test } from "vitest";
import { registry } from "../../src/functions/registry.ts";
import { explained } from "../../src/functions/run/tables-on-demand.ts";
import { atCaret } from "../../src/pane/typing/at-caret.ts";
import { type PreviewPlace, previewOf } from "../../src/pane/typing/preview.ts";
import type { Host } from "../../src/workbook/host.ts";

/** The caret stands where the text has a bar. */
function at(text: string) {
  const caret = text.indexOf("|");
  return atCaret(text.replace("|", ""), caret, registry);
}

describe("what stands at the caret", () => {
  const names = (text: string) => {
    const found = at(text);
    return found?.kind === "name" ? found.found.map((fn) => fn.name) : [];
  };

  test("a name with or without SILL. finds its functions, and a word of the trade does", () => {
    for (const text of ["=dew|", "=SILL.DEW|", "=2*dew|", "=SUM(dew|"]) {
      expect(names(text), text).toContain("DEW_POINT");
      expect(
        names(text).every((name) => name.startsWith("DEW")),
        text,
      ).toBe(true);
    }
    expect(names("=drywall|")).toContain("LINING");
    expect(names("=si|").length).toBeGreaterThan(3);
    for (const text of ["dew|", '="dew|', "=B4|", "=d|", "=Site!dew|"]) expect(names(text), text).toEqual([]);
  });

  test.each([
    ["=SILL.WIND_KZ(|", "WIND_KZ", 0],
    ['=SILL.WIND_KZ(14,"C"|', "WIND_KZ", 1],
    ['=sill.wind_kz(|14,"C")', "WIND_KZ", 0],
    ["=SILL.WIND_KZ(SUM(B4,B5)|", "WIND_KZ", 0],
    ["=SILL.WIND_KZ(SUM(B4,|", "WIND_KZ", 0],
    ["=SILL.WIND_KZ(SILL.LENGTH(|", "LENGTH", 0],
    ["=SILL.WIND_KZ(SILL.LENGTH(B4),|", "WIND_KZ", 1],
    ['=SILL.R_STACK({"a, (b",1;"c",2|', "R_STACK", 0],
    ['=SILL.WIND_KZ("12\'-6""",|', "WIND_KZ", 1],
    ["=IF('Wall (1'!B4,SILL.WIND_KZ(14,|", "WIND_KZ", 1],
  ])("%s is argument %s of %s", (text, name, place) => {
    const found = at(text);
    expect(found?.kind === "call" && [found.fn.name, found.place]).toEqual([name, place]);
  });

  test("behind the last bracket there is no call any more", () => expect(at("=SILL.WIND_KZ(14)|")).toBeUndefined());

  test("the call is closed as it would have to be", () => {
    const call = (text: string) => {
      const found = at(text);
      return found?.kind === "call" ? found.call : undefined;
    };
    expect(call('=1+SILL.R_STACK({"plywood",0.5|')).toBe('=SILL.R_STACK({"plywood",0.5})');
    expect(call("=SILL.WIND_KZ(1|4)+2")).toBe("=SILL.WIND_KZ(14)");
  });
});

describe("the preview of a call", () => {
  const cells: Record<string, (string | number)[][]> = { B4: [[24]], "C1:C2": [["#DIV/0!"], [1]] };
  const host = {
    readRange: async (reference: string) => cells[reference],
    readName: async (name: string) => (name === "Height" ? { rows: [[24]] } : undefined),
  } as unknown as Host;
  const place: PreviewPlace = { functions: registry, explain: explained, host, sheet: "Site" };
  const kz = 2.41 * (24 / 2460) ** (2 / 9.8);
  const shown = async (call: string) => {
    const preview = await previewOf(call, place);
    if ("waits" in preview) return preview.waits;
    return preview.working.outcome.ok ? preview.working.outcome.value : preview.working.outcome.said.what;
  };

  test.each(['24,"C"', 'B4,"C"', 'Height,"C"', '"24 ft","C"', 'SILL.LENGTH(B4),"C"', '2400%,"C"'])(
    "reads %s as a cell would",
    async (args) => {
      // 2.41 (z/zg)^(2/alpha), ASCE/SEI 7-22 Table 26.10-1
      expect(await shown(`=SILL.WIND_KZ(${args})`)).toBeCloseTo(kz, 10);
    },
  );

  test("says what it still waits for", async () => {
    expect(await shown("=SILL.WIND_KZ()")).toMatch(/Still to come: height/);
    expect(await shown('=SILL.WIND_KZ(B4*2,"C")')).toMatch(/spreadsheet works out B4\*2/);
    expect(await shown('=SILL.WIND_KZ(SILL.LENGTH(B4)+SILL.LENGTH(B4),"C")')).toMatch(/works out SILL/);
  });

  test("says what is wrong, as the cell will", async () => {
    expect(await shown('=SILL.WIND_KZ("tall","C")')).toMatch(/"tall" is not a length/);
    expect(await shown("=SILL.R_STACK(C1:C2)")).toMatch(/#DIV\/0!/);
  });
});
