import { describe, expect, test } from "vitest";
import { sentence } from "../../../src/core/kit/refusal.ts";
import type { Table } from "../../../src/core/kit/tape.ts";
import type { CellFunction } from "../../../src/functions/declare/cell-function.ts";
import type { Raw, RawArgument } from "../../../src/functions/declare/raw.ts";
import { explain, invoke } from "../../../src/functions/run/invoke.ts";
import { argumentsKey } from "../../../src/functions/run/sources.ts";
import { lengthProbe, probe, rowProbe } from "./probe.ts";

type Rows = readonly (readonly Raw[])[];

const BASIS: Rows = [
  ["Basis", "Value", "Unit"],
  ["Wind speed", 115, "mph"],
];

function got(fn: CellFunction, ...raw: RawArgument[]): Record<string, unknown> {
  const outcome = invoke(fn, raw);
  if (!outcome.ok) throw new Error(sentence(outcome.said));
  return Object.fromEntries((outcome.value as Table).map(([what, value]) => [String(what), value]));
}

function refusal(fn: CellFunction, ...raw: RawArgument[]): string {
  const outcome = invoke(fn, raw);
  expect(outcome.ok).toBe(false);
  return outcome.ok ? "" : sentence(outcome.said);
}

describe("what is a basis", () => {
  test("a range in a place for one value that may be left out, wherever it stands", () => {
    expect(got(probe, 1, BASIS).speed).toBe("115");
    expect(got(probe, 1, "6:12", BASIS)).toMatchObject({ speed: "115", slope: expect.stringMatching(/^26.56/) });
    expect(got(probe, 1, null, null, null, null, null, BASIS).speed).toBe("115");
  });

  test("after it only bases follow, blank places aside; the first that holds a term wins, an own argument over all", () => {
    const open: Rows = [["enclosure", "partially enclosed"]];
    const both = [...BASIS, ["Enclosure", "enclosed", ""]];
    expect(got(probe, 1, open, both).enclosure).toBe("partially enclosed");
    expect(got(probe, 1, both, null, null, open).enclosure).toBe("enclosed");
    expect(got(probe, 1, null, "partially open", both).enclosure).toBe("partially open");
    expect(refusal(probe, 1, BASIS, "enclosed")).toMatch(/follows the basis/);
  });

  test("in a place for a table or list only with the word in its first cell", () => {
    expect(got(probe, 1, null, null, null, BASIS).speed).toBe("115");
    expect(got(probe, 1, null, null, null, [["a", 2]], BASIS)).toMatchObject({ rows: "1", speed: "115" });
    expect(refusal(probe, 1, null, null, null, [["Wind speed", 115]], BASIS)).toMatch(/write basis in its first cell/i);
    const unread = [
      ["Wind speed", 115],
      ["project", "shed"],
    ];
    expect(refusal(probe, 1, null, null, null, null, unread, BASIS)).toMatch(/if this is a basis, write Basis/);
  });

  test("never in a place that must be filled", () => {
    expect(refusal(rowProbe, BASIS)).toBe(
      "Rows is missing: a basis stands in its place. Give it first; the basis comes last.",
    );
    expect(refusal(probe, BASIS)).toMatch(/^Own is a range of 2 x 3 cells/);
    expect(got(rowProbe, [["Wind speed", 3]], null)).toEqual({ "1": 0 });
  });

  test("one cell in its own place is refused", () => {
    expect(refusal(rowProbe, [["a", 1]], null, "Basis")).toMatch(/basis is one cell/);
  });
});

describe("how a basis is read", () => {
  const withRow = (...row: Raw[]): Rows => [...BASIS, row];

  test("names: case, underscores, colon, aliases, unit in brackets or after a comma", () => {
    for (const name of [
      "BASIC WIND SPEED",
      "wind_speed:",
      "Design wind speed",
      "Wind speed, mph",
      "wind speed (mph)",
    ]) {
      expect(
        got(probe, 1, [
          ["Name", "Value"],
          [name, 120],
        ]).speed,
        name,
      ).toBe("120");
    }
  });

  test("units: in the third column for a bare number, one in the value wins, one of another kind is refused", () => {
    expect(Number(got(probe, 1, [["Wind speed", 185, "km/h"]]).speed)).toBeCloseTo(114.954, 3);
    expect(Number(got(probe, 1, [["Wind speed", "185", "km/h"]]).speed)).toBeCloseTo(114.954, 3);
    expect(Number(got(probe, 1, [["Wind speed", "185 km/h", "mph"]]).speed)).toBeCloseTo(114.954, 3);
    expect(refusal(probe, 1, [["Wind speed", 185, "psf"]])).toMatch(/wind speed in row 1 of the basis/i);
    expect(refusal(probe, 1, [["Wind speed, mph", 185, "km/h"]])).toMatch(/two units/);
    expect(got(probe, 1, withRow("roof slope", 6, ":12")).slope).toMatch(/^26.56/);
    expect(got(probe, 1, withRow("enclosure", "enclosed", "any")).enclosure).toBe("enclosed");
  });

  test("a percent beside a small number is a question", () => {
    expect(got(probe, 1, withRow("membrane waste", 10, "%")).waste).toBe("0.1");
    expect(got(probe, 1, withRow("membrane waste", "10%", "")).waste).toBe("0.1");
    expect(refusal(probe, 1, withRow("membrane waste", 0.1, "%"))).toMatch(/10%/);
  });

  test("null, empty text and 0 are a blank; a 0 that could be meant is said, none writes nothing", () => {
    for (const blank of [null, "", "  ", 0]) {
      expect(got(probe, 1, withRow("kerf", blank, "in")).kerf).toBe(0.125);
      expect(got(probe, 1, null, null, blank, BASIS).kerf).toBe(0.125);
    }
    expect(got(probe, 1, withRow("kerf", "none")).kerf).toBe(0);
    expect(got(probe, 1, null, null, "none", BASIS).kerf).toBe(0);
    expect(explain(probe, [1, withRow("kerf", 0)]).cautions.join()).toMatch(
      /Row 3 of the basis, kerf, is 0 and is read as a blank/,
    );
    expect(explain(probe, [1, null, null, 0, BASIS]).cautions.join()).toMatch(/Kerf is 0 and is read as a blank/);
    expect(explain(probe, [1, withRow("kerf", null)]).cautions).toEqual([]);
  });

  test("a term twice is refused with both rows, by name or alias, equal or not", () => {
    expect(refusal(probe, 1, withRow("design wind speed", 115))).toMatch(/twice, in rows 2 and 3/);
    expect(got(probe, 1, withRow("design wind speed", "")).speed).toBe("115");
  });

  test("an error in a row hurts only functions that take the term", () => {
    expect(got(probe, 1, withRow("ground snow", { error: "#N/A" })).speed).toBe("115");
    expect(refusal(probe, 1, withRow("kerf", { error: "#N/A" }))).toMatch(/#N\/A/);
  });

  test("a word that terms share asks, where the term stands nowhere by its name", () => {
    expect(refusal(probe, 1, withRow("edition", "7-16"))).toMatch(/is ASCE 7 edition or energy code/);
    expect(got(probe, 1, [...BASIS, ["edition", "7-16"], ["ASCE 7 edition", "7-10"]]).edition).toBe("7-10");
  });

  test("near misses, values without a name and a basis without a term of the function are cautions", () => {
    const found = explain(probe, [1, [...BASIS, ["enclosrue", "enclosed"], ["", 5], ["project", "shed"]]]).cautions;
    expect(found).toEqual([
      "Row 4 of the basis has a value without a name.",
      'Row 3 of the basis, "enclosrue", is no term and is left alone: is enclosure meant?',
    ]);
    expect(explain(lengthProbe, [12, BASIS]).cautions.join()).toMatch(/holds nothing that LENGTH_PROBE takes/);
    expect(refusal(lengthProbe, BASIS, [["eave height", 11]])).toMatch(/first basis holds nothing/);
  });

  test("a range without any term, numbers for names and one column are refused", () => {
    expect(refusal(probe, 1, [["a", 1]])).toMatch(/holds no term/);
    expect(refusal(probe, 1, [[12, "Wind speed"]])).toMatch(/names stand in the first column/);
    expect(refusal(probe, 1, [["Wind speed"], ["exposure"]])).toMatch(/one column/);
    expect(
      refusal(
        probe,
        1,
        Array.from({ length: 501 }, () => ["Wind speed", 1]),
      ),
    ).toMatch(/at most 500/);
  });

  test("a missing term is named", () => {
    expect(refusal(probe, 1)).toBe(
      "Wind speed is missing: it stands neither in the call nor in the basis. Give it, or a row Wind speed in the basis.",
    );
  });

  test("a narrow term wins over a broad one, which stands in for it", () => {
    expect(got(probe, 1, withRow("waste", "5%")).waste).toBe("0.05");
    expect(got(probe, 1, [...BASIS, ["waste", "5%"], ["membrane waste", "8%"]]).waste).toBe("0.08");
  });

  test("the working says where each argument came from", () => {
    const { arguments: shown } = explain(probe, [1, "6:12", BASIS]);
    expect(shown.find((a) => a.name === "windSpeed")).toMatchObject({ from: "basis, row 2", omitted: false });
    expect(shown.find((a) => a.name === "roofSlope")).toMatchObject({ from: "", omitted: false });
    expect(shown.find((a) => a.name === "kerf")).toMatchObject({ omitted: true });
  });
});

describe("headings and lengths", () => {
  test("a table has headings unless told otherwise, one row only when asked", () => {
    const [first] = (invoke(probe, [1, BASIS]) as { value: Table }).value;
    expect(first).toEqual(["what", "got, ft"]);
    expect((invoke(probe, [1, [...BASIS, ["headings", "no"]]]) as { value: Table }).value[0]).toEqual(["own", 1]);
    expect(invoke(rowProbe, [[["a", 1]]])).toEqual({ ok: true, value: [[1, 0]] });
    expect(invoke(rowProbe, [[["a", 1]], [["headings", "yes"]]])).toMatchObject({
      value: [
        ["count", "spacing, in"],
        [1, 0],
      ],
    });
  });

  test("lengths in feet and inches, in place, to the sixteenth", () => {
    const inches: Rows = [
      ["lengths", "feet and inches"],
      ["column spacing", 99.75],
    ];
    expect(invoke(rowProbe, [[["a", 1]], inches])).toMatchObject({ value: [[1, "8'-3 3/4\""]] });
    expect(invoke(lengthProbe, [11.5, [["lengths", "feet and inches"]]])).toEqual({ ok: true, value: "11'-6\"" });
  });
});

test("an answer is remembered by own arguments and the terms taken", () => {
  const key = (rows: Rows) => argumentsKey(probe, [1, rows]);
  expect(key([...BASIS, ["crew wage", 30]])).toBe(key([...BASIS, ["crew wage", 41]]));
  expect(key([...BASIS, ["kerf", 0.25]])).not.toBe(key([...BASIS, ["kerf", 0.5]]));
});
