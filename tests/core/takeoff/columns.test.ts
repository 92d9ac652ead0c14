import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput, Refusal } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { type ColumnRules, columnRows, wallColumns } from "../../../src/core/takeoff/wall/columns.ts";
import { type PlacedOpening, placedOpenings } from "../../../src/core/takeoff/wall/opening.ts";
import { SHED } from "./joinery-shed.ts";

const RULES: ColumnRules = { spacingFt: 8, layout: "module", columnFt: 4.5 / 12, jambFt: 2.1875 };

function opening(name: string, leftFt: number, widthFt: number, sillFt = 3): PlacedOpening {
  return { name, widthFt, heightFt: 4, count: 1, sillFt, leftFt };
}

const positions = (lengthFt: number, openings: readonly PlacedOpening[], over: Partial<ColumnRules> = {}) =>
  wallColumns("w", lengthFt, openings, { ...RULES, ...over }).map((c) => c.xFt);

describe("columns", () => {
  test("a blank wall has its module", () => {
    expect(positions(48, [])).toEqual([0, 8, 16, 24, 32, 40, 48]);
    expect(positions(50, [])).toEqual([0, 8, 16, 24, 32, 40, 48, 50]);
    expect(positions(50, [], { layout: "even" })).toHaveLength(8);
  });

  test("columns of the module within reach stand for those beside an opening", () => {
    expect(positions(48, [opening("W1", 9, 5), opening("W2", 25, 5)])).toEqual([0, 8, 16, 24, 32, 40, 48]);
  });

  test("none within reach: one at each edge, and the needless one of the module goes", () => {
    const at = positions(48, [opening("D1", 35, 38 / 12, 0)]);
    expect(at).toContain(35 - 4.5 / 24);
    expect(at).not.toContain(32 + 4.5 / 24);
  });

  test("a column in an opening moves to its edges", () => {
    const at = positions(24, [opening("W1", 7, 3)], { jambFt: 0 });
    expect(at).toEqual([0, 7 - 4.5 / 24, 10 + 4.5 / 24, 16, 24]);
  });

  test("the last column of the module goes too where an opening makes it needless", () => {
    // Beside an opening from 42 to 46 ft stand columns at 41.8125 and 46.1875; from there to the end are 3.8 ft, so 48 goes.
    expect(positions(50, [opening("W1", 42, 4)], { jambFt: 0 })).toEqual([0, 8, 16, 24, 32, 40, 41.8125, 46.1875, 50]);
  });

  test("a column of the module whose face just clears an opening stays", () => {
    // Half of its 4.5 in reach 0.1875 ft: from 8 ft to an opening at 8.3 ft they are clear, to one at 8.18 ft they are not.
    expect(positions(16, [opening("W1", 8.3, 3)])).toContain(8);
    expect(positions(16, [opening("W1", 8.18, 3)])).not.toContain(8);
  });

  test("no room for a column is refused", () => {
    expect(() => positions(24, [opening("A", 4, 3), opening("B", 7.2, 3)])).toThrow(/A and B/);
    expect(() => positions(24, [opening("A", 0.1, 3)])).toThrow(BadInput);
    expect(() => placedOpenings([{ ...opening("A", 1, 3), leftFt: undefined }])).toThrow(/left edge/);
    expect(() => placedOpenings([{ ...opening("A", 1, 3), count: 2 }])).toThrow(/stands for 2/);
    expect(() => wallColumns("w", 24, [], { ...RULES, spacingFt: 0.01 })).toThrow(
      /spacings in w is 2400: the method holds from 0 to 2000/,
    );
  });

  test("ends, none in an opening, one each side within reach, bays no wider than the spacing but over openings", () => {
    const at = fc.double({ min: 0.1, max: 90, noNaN: true });
    const size = fc.double({ min: 0.5, max: 14, noNaN: true });
    const openings = fc.array(fc.tuple(at, size), { maxLength: 5 });
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 100, noNaN: true }),
        openings,
        fc.double({ min: 2, max: 16, noNaN: true }),
        fc.constantFrom("module" as const, "even" as const),
        fc.double({ min: 0, max: 4, noNaN: true }),
        (lengthFt, list, spacingFt, layout, jambFt) => {
          const rules = { ...RULES, spacingFt, layout, jambFt };
          const os = list.map(([leftFt, widthFt], i) => opening(`W${i}`, leftFt, widthFt));
          let columns: readonly { readonly xFt: number }[];
          try {
            columns = wallColumns("w", lengthFt, os, rules);
          } catch (error) {
            expect(error).toBeInstanceOf(Refusal);
            return;
          }
          const x = columns.map((c) => c.xFt);
          const half = rules.columnFt / 2;
          expect(x[0]).toBe(0);
          expect(x.at(-1)).toBeCloseTo(lengthFt, 9);
          for (const o of os) {
            const [left, right] = [o.leftFt ?? 0, (o.leftFt ?? 0) + o.widthFt];
            expect(x.some((c) => c + half > left + 1e-5 && c - half < right - 1e-5)).toBe(false);
            const far = Math.max(jambFt, half) + 1e-5;
            expect(x.some((c) => c + half <= left + 1e-5 && left - c <= far)).toBe(true);
            expect(x.some((c) => c - half >= right - 1e-5 && c - right <= far)).toBe(true);
          }
          x.slice(1).forEach((c, i) => {
            const before = x[i] ?? 0;
            expect(c).toBeGreaterThan(before);
            const open = os.some((o) => (o.leftFt ?? 0) > before - 1e-5 && (o.leftFt ?? 0) + o.widthFt < c + 1e-5);
            if (!open) expect(c - before).toBeLessThanOrEqual(spacingFt + 1e-5);
          });
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe("at the limits", () => {
  test("a column that only touches an opening stays, one that reaches into it goes", () => {
    // Half a column is 2-1/4 in: at 8 ft it reaches to 8.1875 ft.
    expect(positions(24, [opening("W1", 8.1875, 4)])).toContain(8);
    expect(positions(24, [opening("W1", 8.18, 4)])).not.toContain(8);
    expect(positions(24, [opening("W1", 4, 3.8125)])).toContain(8);
    expect(positions(24, [opening("W1", 4, 3.82)])).not.toContain(8);
  });

  test("a column nearer than its own width to an edge is the one beside it", () => {
    expect(positions(24, [opening("W1", 8.25, 4)])).toEqual([0, 8, 12.25 + 0.1875, 16, 24]);
  });

  test("the last of the module stays where the end column leaves it room, else it moves to the middle", () => {
    expect(positions(16.375, [])).toEqual([0, 8, 16, 16.375]);
    expect(positions(16.25, [])).toEqual([0, 8, (8 + 16.25) / 2, 16.25]);
  });

  test("even bays: one where the spacing allows it, no more than needed elsewhere", () => {
    const even = { layout: "even" as const };
    expect(positions(8, [], even)).toEqual([0, 8]);
    expect(positions(8.1, [], even)).toEqual([0, 4.05, 8.1]);
    expect(positions(24, [], even)).toEqual([0, 8, 16, 24]);
  });

  test("openings in any order", () => {
    const openings = [opening("A", 3, 3), opening("B", 12, 3), opening("C", 20, 2)];
    expect(positions(30, [...openings].reverse())).toEqual(positions(30, openings));
    expect(() => positions(24, [opening("B", 7.2, 3), opening("A", 4, 3)])).toThrow(/A and B of w leave 0.2 ft/);
    expect(() => positions(24, [opening("A", 4, 3), opening("B", 7.375, 3)])).not.toThrow();
    expect(() => positions(24, [opening("A", 4, 3), { ...opening("A2", 4, 3), sillFt: 7.5 }])).not.toThrow();
  });
});

describe("columns of the module that others make needless", () => {
  const half = 4.5 / 24;
  const far = opening("B", 12.3, 3);
  test("one between two columns beside openings goes where these are no farther apart than the spacing", () => {
    // Beside A and B stand columns at 4.7875 and 12.1125 ft, 7.325 ft apart: the one at 8 ft is not needed. Those at 16 and 0 ft are.
    const near = opening("A", 1, 3.6);
    const others = [0, 1 - half, 4.6 + half, 12.3 - half, 15.3 + half, 16, 24];
    expect(positions(24, [near, far], { jambFt: 0 })).toEqual(others);
    expect(positions(24, [near, far], { jambFt: 0, spacingFt: 7.3 })).toContain(7.3);
  });

  test("one that is the column beside an opening stays", () => {
    // 8 ft is 2 ft from the right edge of A, within 2.1875 ft; the columns around it are 7.8 ft apart.
    expect(positions(24, [opening("A", 4.5, 1.5), far])).toEqual([0, 4.5 - half, 8, 12.3 - half, 16, 24]);
  });

  test("one that reaches into a wide opening gives way to the one beside it", () => {
    expect(positions(32, [opening("A", 8.18, 9)], { jambFt: 0 })).toEqual([0, 8.18 - half, 17.18 + half, 24, 32]);
  });
});

test("the end columns leave all but half of themselves to openings", () => {
  const half = 4.5 / 24;
  for (const o of [opening("A", half, 3), opening("A", 24 - half - 3, 3)])
    expect(() => positions(24, [o])).not.toThrow();
  expect(() => positions(24, [opening("A", half - 0.01, 3)])).toThrow(/end columns leave 0.1875 to 23.8125 ft/);
  expect(() => positions(24, [opening("A", 24 - half - 2.99, 3)])).toThrow(/reaches from 20.8225 to 23.8225 ft/);
});

test("openings one over the other share their columns only where both edges meet", () => {
  const over = (leftFt: number, widthFt: number) => [opening("A", 4, 3), opening("B", leftFt, widthFt, 7.5)];
  expect(() => positions(24, over(4, 3))).not.toThrow();
  expect(() => positions(24, over(4, 3.5))).toThrow(/A and B of w leave 0 ft/);
  expect(() => positions(24, over(4.5, 3))).toThrow(/A and B/);
});

test("columns stand without the sill heights of openings; the picture has them from the foot to the top", () => {
  const tape = new Tape();
  const wall = { name: "w", lengthFt: 16, heightFt: 8, riseFt: 4, top: "shed" } as const;
  columnRows([{ wall, openings: [{ ...opening("A", 3, 2), sillFt: undefined }] }], RULES, tape);
  expect(tape.pictures[0]).toMatchObject({
    openings: [{ name: "A", sillFt: 0, leftFt: 3 }],
    uprights: [
      { xFt: 0, bottomFt: 0, topFt: 8 },
      { xFt: 3 - 4.5 / 24, bottomFt: 0, topFt: 8 + (3 - 4.5 / 24) / 4 },
      { xFt: 5 + 4.5 / 24, bottomFt: 0 },
      { xFt: 8, bottomFt: 0, topFt: 10 },
      { xFt: 16, bottomFt: 0, topFt: 12 },
    ],
  });
});

test("a bay just as wide as the spacing is no wide one", () => {
  const tape = new Tape();
  const wall = { name: "w", lengthFt: 16, heightFt: 8, riseFt: 0, top: "gable" } as const;
  columnRows([{ wall, openings: [] }], RULES, tape);
  expect(tape.cautions).toEqual([]);
  expect(() => wallColumns("w", 16, [], { ...RULES, spacingFt: 0.008 })).not.toThrow();
});

describe("the jamb distance is from the edge to the center line", () => {
  const door = opening("D", 18 + 4 / 12, 40 / 12, 0);
  test("28 in is held by 28 in, and by no less", () => {
    // Columns at 16 and 24 ft are 2'-4" from the edges of the door.
    expect(positions(32, [door], { jambFt: 28 / 12 })).toEqual([0, 8, 16, 24, 32]);
    expect(positions(32, [door], { jambFt: 27.9 / 12 })).toHaveLength(7);
    expect(positions(32, [door], { jambFt: 27.9 / 12 })).toContain(door.leftFt - 4.5 / 24);
  });
});

describe("columns of all walls of the shed", () => {
  const rules = { spacingFt: 8, layout: "module", columnFt: 0.375, jambFt: 2.5 } as const;
  const rows = columnRows(SHED, rules);
  const at = (wall: string) => rows.filter((r) => r.wall === wall).map((r) => r.positionFt);

  test("the module at both ends and every 8 ft; one fewer where it falls into the wide opening", () => {
    expect(at("south")).toEqual([0, 8, 16, 24, 32, 40, 47.75]);
    expect(at("north")).toEqual([0, 8, 16, 24, 32, 40, 47.75]);
    expect(at("east")).toEqual([0, 8, 16, 24, 32]);
    expect(at("west")).toEqual([0, 8, 16, 32]);
  });

  test("bays add up to the wall, begin at nothing, and the wide one is a caution", () => {
    const tape = new Tape();
    columnRows(SHED, rules, tape);
    expect(tape.cautions).toEqual([
      "The widest bay of west is 16 ft, over an opening: wider than the spacing of 8 ft. Check the header and the columns beside it.",
    ]);
    expect(tape.pictures).toHaveLength(4);
    for (const { wall } of SHED) {
      const bays = rows.filter((r) => r.wall === wall.name).map((r) => r.bayFt);
      expect(bays[0]).toBe(0);
      expect(bays.reduce((a, b) => a + b, 0)).toBeCloseTo(wall.lengthFt, 9);
    }
    expect(rows.at(-1)?.stands).toBe("end");
    expect(tape.steps.at(-1)?.value).toBe(rows.length);
  });
});
