import { expect, test } from "vitest";
import type { Cell } from "../../src/core/kit/tape.ts";
import { readStation } from "../../src/functions/enclosure/read/station.ts";
import { functionNamed, registry } from "../../src/functions/registry.ts";
import { explained } from "../../src/functions/run/tables-on-demand.ts";
import { composed } from "../../src/pane/site/compose.ts";
import { offersFor } from "../../src/pane/site/offers.ts";
import { type Drafts, entryOf, heldIn, SITE_GROUPS, stateOf } from "../../src/pane/site/terms.ts";
import { typed } from "../../src/pane/site/typed.ts";
import { assumedOf, usesOf } from "../../src/pane/site/use.ts";
import type { LedgerEntry } from "../../src/workbook/ledger.ts";

const NONE: Drafts = new Map();

/** A named range from rows of name, value, unit. */
function held(rows: readonly (readonly Cell[])[], formulas: Readonly<Record<number, string>> = {}) {
  return heldIn({
    first: { sheet: "Site", row: 2, column: 0 },
    rows,
    formulas: rows.map((row, r) => row.map((_, c) => (c === 1 ? (formulas[r] ?? "") : ""))),
  });
}

function sound(...given: Parameters<typeof held>) {
  const found = held(...given);
  if (!found.ok) throw new Error(found.said.what);
  return found;
}

const HEAD = ["Basis", "Value", "Unit"];

test.each([
  ["110", "quantity", 110],
  ["1,200", "number", 1200],
  ["-8", "quantity", -8],
  [".5", "number", 0.5],
  ["6:12", "quantity", "6:12"],
  ["10%", "number", "10%"],
  ["1/8", "length", "1/8"],
  ["32'-0\"", "length", "32'-0\""],
  ["2021", "choice", "2021"],
  [" 007 ", "text", "007"],
  ["20 m/s", "quantity", "20 m/s"],
  ["", "number", ""],
  ["-", "number", "-"],
] as const)("%s typed for a %s is held as %s", (text, kind, cell) => expect(typed(text, kind)).toBe(cell));

test("the groups hold every term once, in the order of the glossary", () => {
  const all = SITE_GROUPS.flatMap(({ terms }) => terms);
  expect(new Set(all).size).toBe(all.length);
  expect(SITE_GROUPS[0]?.terms[0]).toBe("wind speed");
});

test("a term shows its row under any of its words, with the unit that the row gives", () => {
  const found = sound([
    HEAD,
    ["Site and codes", "", ""],
    ["Basic wind speed (m/s)", 50, ""],
    ["Kzt", "", ""],
    ["enclosure", "Partially Enclosed", ""],
    ["Simple rafters", true, ""],
    ["zone", "", ""],
    ["Climate zone", "marine 4", ""],
  ]);
  const state = (term: Parameters<typeof stateOf>[0]) => stateOf(term, found, NONE);
  expect(state("wind speed")).toMatchObject({ text: "50", unit: "m/s", rows: [3], refused: undefined });
  expect(state("wind speed").read).toMatch(/= 111\.8/);
  expect(state("topographic factor")).toMatchObject({ text: "", unit: "", rows: [] });
  expect(state("enclosure")).toMatchObject({ text: "Partially Enclosed", chosen: "partially enclosed" });
  expect(state("simple rafters")).toMatchObject({ chosen: "yes" });
  expect(state("climate zone")).toMatchObject({ chosen: "4C" });
  expect(state("eave height")).toMatchObject({ text: "", unit: "ft", label: "Eave height" });
  expect(state("exposure").hint).toBe("exposure: roughness of the ground upwind");
  expect(state("eave height").hint).toMatch(/ft, or text such as 12'-6 1\/2"/);
});

test("what the term's own reader refuses is said in three parts, a slip in a caution, a zero as left out", () => {
  const state = (term: Parameters<typeof stateOf>[0], text: string) =>
    stateOf(term, sound([HEAD]), new Map([[term, text]]));
  const wrong = state("mean roof height", "900");
  expect(wrong.refused).toMatchObject({ what: "Mean roof height is 900 ft" });
  expect(wrong.refused?.why).toMatch(/must be/);
  expect(wrong.refused?.todo).toMatch(/^Use a value inside that range/);
  expect(state("roof slope", "8").refused?.what).toMatch(/bare number 8/);
  expect(state("exposure", "E").refused?.why).toMatch(/one of B, C, D/);
  expect(state("wind speed", "60")).toMatchObject({ refused: undefined, drafted: true });
  expect(state("wind speed", "60").cautions[0]).toMatch(/below the usual 95/);
  expect(state("sheet waste", "0").cautions).toEqual(["A 0 counts as left out. To write nothing, type none."]);
  expect(state("sheet waste", "none")).toMatchObject({ refused: undefined, cautions: [] });
  expect(state("sheet waste", "")).toMatchObject({ refused: undefined, cautions: [] });
});

test("rows that give a term twice, and a value that a formula gives, are told", () => {
  const found = sound([HEAD, ["County", "Brown", ""], ["county name", "Dane", ""], ["Exposure", "C", ""]], {
    3: "=A1",
  });
  expect(stateOf("county", found, NONE)).toMatchObject({ text: "Brown", rows: [2, 3], formula: false });
  expect(stateOf("exposure", found, NONE).formula).toBe(true);
});

test("a range that is no basis is refused with its sentence", () => {
  expect(held([["x"], ["y"]])).toMatchObject({ ok: false, said: { what: "The range Basis has one column" } });
  expect(
    held([
      ["Basis", "Value"],
      ["County", "x"],
    ]),
  ).toMatchObject({ said: { what: "The range Basis has two columns" } });
  expect(held([HEAD, [12, "Wind speed", ""]])).toMatchObject({
    said: { what: "Row 2 of the range Basis has 12 for a name" },
  });
});

test("what is typed goes into the term's own row; all other rows stay; new terms follow", () => {
  const found = sound([HEAD, ["Foreman", "on leave", "x"], ["Kd", 0.85, ""], ["Wind speed", 110, "mph"]]);
  const drafts: Drafts = new Map([
    ["directionality factor", "0.9"],
    ["wind speed", ""],
    ["eave height", "11'-0\""],
    ["ASCE 7 edition", "7-16"],
    ["roof slope", "6:12"],
    ["ground snow", "60"],
    ["exposure", " "],
  ]);
  const rows = composed(found, drafts);
  expect(rows.slice(0, 4)).toEqual([HEAD, ["Foreman", "on leave", "x"], ["Kd", 0.9, ""], ["Wind speed", "", "mph"]]);
  expect(rows.slice(4).map((row) => row.slice(0, 3))).toEqual([
    ["Eave height", "11'-0\"", "ft"],
    ["ASCE 7 edition", "7-16", ""],
    ["Roof slope", "6:12", ""],
    ["Ground snow", 60, "psf"],
  ]);
  expect(rows[4]?.[3]).toBe(entryOf("eave height").param.says);
});

test("free rows at the end of the range are taken first, and a wide range gets no note", () => {
  const blank = ["", "", "", ""];
  const found = sound([[...HEAD, "by"], ["County", "Brown", "", "me"], blank]);
  const rows = composed(
    found,
    new Map([
      ["state", "WI"],
      ["exposure", "C"],
    ] as const),
  );
  expect(rows).toEqual([
    [...HEAD, "by"],
    ["County", "Brown", "", "me"],
    ["State", "WI", "", ""],
    ["Exposure", "C", "", ""],
  ]);
});

test("a fresh basis has its heading and the groups that hold something, in order, and reads back", () => {
  const drafts: Drafts = new Map([
    ["crew size", "5"],
    ["exposure", "C"],
    ["wind speed", "110"],
    ["state", ""],
  ]);
  const rows = composed(heldIn(undefined) as Parameters<typeof composed>[0], drafts);
  expect(rows.map((row) => row.slice(0, 3))).toEqual([
    HEAD,
    ["Site and codes", "", ""],
    ["Wind speed", 110, "mph"],
    ["Exposure", "C", ""],
    ["Labor", "", ""],
    ["Crew size", 5, ""],
  ]);
  const again = sound(rows.map((row) => row.slice(0, 3)));
  expect(stateOf("wind speed", again, NONE)).toMatchObject({ text: "110", refused: undefined, drafted: false });
});

test("a term is used where a function that takes it was given a range with its row", () => {
  const basis = [HEAD, ["Wind speed", 110, "mph"], ["County", "Brown", ""], ["Exposure", "C", ""]];
  const entry = (row: number, name: string, args: readonly (readonly (readonly Cell[])[])[]): LedgerEntry => ({
    address: { sheet: "Wall", row, column: 0 },
    calls: [{ id: functionNamed(name)?.id ?? "", args, outcome: { ok: true, value: 1 } }],
  });
  const uses = usesOf(
    [entry(1, "WIND_PRESSURE", [basis]), entry(2, "WIND_PRESSURE", [basis]), entry(3, "CLIMATE_ZONE", [])],
    registry,
  );
  expect(uses.get("wind speed")).toBe(2);
  expect(uses.get("exposure")).toBe(2);
  expect(uses.has("county")).toBe(false);
  expect(uses.has("mean roof height")).toBe(false);
});

test("what is assumed: the default of the glossary, else what the functions say, and who asks for it", () => {
  const assumed = (term: Parameters<typeof entryOf>[0]) => assumedOf(term, entryOf(term).omitted, registry);
  expect(assumed("topographic factor")).toBe("topographic factor 1: flat site");
  expect(assumed("climate zone")).toMatch(/made from the county and its state/);
  expect(assumed("county")).toMatch(/CLIMATE_ZONE refuses without it/);
});

test("a county and its state bring a zone and the stations of the state, those of the zone first", async () => {
  const offers = await offersFor({ county: "Tompkins", state: "NY", energyCode: "2018" }, registry, explained);
  expect(offers.zone).toBe("6A");
  expect(offers.refused).toEqual([]);
  expect(offers.stations.length).toBeGreaterThan(1);
  const zones = offers.stations.map(({ zone }) => zone === "6A");
  expect(zones).toEqual([...zones].sort((a, b) => Number(b) - Number(a)));
  for (const { place } of offers.stations) expect(`${readStation(place).name} NY`).toBe(place);
});

test("a county that is not in the list brings its refusal and nothing else", async () => {
  const offers = await offersFor({ county: "Tomkins", state: "NY", energyCode: "" }, registry, explained);
  expect(offers).toMatchObject({ zone: undefined, stations: [] });
  expect(offers.refused.map(({ todo }) => todo)).toEqual([expect.stringContaining("Tompkins")]);
});

test("a state without a station brings the zone and the sentence", async () => {
  const offers = await offersFor({ county: "Kent", state: "DE", energyCode: "" }, registry, explained);
  expect(offers).toMatchObject({ zone: "4A", stations: [] });
  expect(offers.refused.map(({ todo }) => todo)).toEqual([expect.stringContaining("Philadelphia International Ap PA")]);
});
