import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type FurringCase, furringFasteners } from "../../../src/core/fasteners/furring.ts";
import { FOAM, FURRING_FASTENERS, FURRING_TABLES } from "../../../src/core/fasteners/tables/furring.ts";
import { BadInput, OutOfRange } from "../../../src/core/kit/refusal.ts";
import { Tape } from "../../../src/core/kit/tape.ts";

const base: FurringCase = {
  insulationIn: 2,
  claddingPsf: 11,
  fastener: "1/4 lag screw",
  table: "furred",
  furringIn: 24,
  edition: "2021",
};
const ask = (c: Partial<FurringCase>) => furringFasteners({ ...base, ...c });

describe("furring over foam", () => {
  test("the widest spacing whose thickness holds, in words", () => {
    expect(ask({ insulationIn: 1.1 })).toEqual({
      fastener: "1/4 lag screw",
      penetrationIn: 1.5,
      spacingIn: 16,
      row: "Table R703.15.2: 1/4 lag screw, furring 24 in, 11 psf, every 16 in: up to 1.1 in",
    });
    expect(ask({ insulationIn: 1.11 }).spacingIn).toBe(12);
    expect(ask({ insulationIn: 0.5 }).spacingIn).toBe(24);
    expect(ask({ insulationIn: 1.7 })).toMatchObject({
      spacingIn: undefined,
      row: "Table R703.15.2: 1/4 lag screw, furring 24 in, 11 psf: design required",
    });
    expect(ask({ table: "direct", fastener: "0.162 nail", furringIn: 16, insulationIn: 1 }).row).toBe(
      "Table R703.15.1: 0.162 nail, framing 16 in, 11 psf, every 12 in: up to 1.6 in",
    );
  });

  test("between columns the next heavier cladding and the wider furring", () => {
    const at = (claddingPsf: number, edition = "2021") => ask({ claddingPsf, edition, furringIn: 16 }).row;
    expect(at(3)).toContain("16 in, 3 psf");
    expect(at(3.1)).toContain(" 11 psf");
    expect(at(11.1)).toContain(" 15 psf");
    expect(at(15)).toContain(" 15 psf");
    expect(at(11.1, "2018")).toContain(" 18 psf");
    expect(at(15, "2018")).toContain(" 18 psf");
    expect(at(18.5)).toContain(" 25 psf");
    expect(ask({ furringIn: 12 }).row).toContain("furring 16 in");
    expect(ask({ furringIn: 16.1 }).row).toContain("furring 24 in");
  });

  test("penetration by fastener", () => {
    const of = (fastener: FurringCase["fastener"]) => ask({ fastener, insulationIn: 0.5 }).penetrationIn;
    expect([of("0.131 nail"), of("0.162 nail"), of("No. 10 wood screw"), of("1/4 lag screw")]).toEqual([
      1.25, 1.25, 1, 1.5,
    ]);
    const direct = (fastener: FurringCase["fastener"]) =>
      ask({ fastener, table: "direct", insulationIn: 0.5 }).penetrationIn;
    expect([direct("0.113 nail"), direct("0.120 nail")]).toEqual([1.25, 1.25]);
  });

  test("nothing beyond the table", () => {
    for (const c of [
      { insulationIn: 4.01 },
      { insulationIn: 0.09 },
      { claddingPsf: 25.1 },
      { claddingPsf: 0.09 },
      { furringIn: 24.1 },
      { furringIn: 0.9 },
      { fastener: "0.113 nail" as const },
      { fastener: "No. 10 wood screw" as const, table: "direct" as const },
    ])
      expect(() => ask(c)).toThrow(OutOfRange);
    expect(() => ask({ fastener: "0.113 nail" })).toThrow(/0.131 nail, 0.162 nail, No. 10 wood screw, 1\/4 lag screw/);
    expect(ask({ insulationIn: 4, claddingPsf: 3 }).spacingIn).toBe(16);
    for (const c of [
      { insulationIn: 0.1 },
      { claddingPsf: 25 },
      { claddingPsf: 0.1 },
      { furringIn: 24 },
      { furringIn: 1 },
    ])
      expect(ask(c).fastener).toBe("1/4 lag screw");
  });

  test("editions that are not held are refused", () => {
    expect(() => ask({ edition: "2024" })).toThrow(BadInput);
    expect(() => ask({ edition: "2018", table: "direct", fastener: "0.131 nail" })).toThrow(
      /table of 2018 is not held/,
    );
    expect(ask({ edition: "2018", insulationIn: 0.5 }).spacingIn).toBe(24);
  });

  test("more foam, more weight, wider spacing: each cell is no better than the one before it", () => {
    for (const table of FURRING_TABLES) {
      for (const fastener of FURRING_FASTENERS) {
        let above: readonly (number | undefined)[] | undefined;
        for (const row of FOAM[table][fastener] ?? []) {
          for (const cells of [row.at16, row.at24]) {
            expect(cells).toHaveLength(5);
            cells.forEach((foam, i) => {
              expect(foam ?? 0).toBeLessThanOrEqual(cells[i - 1] ?? (i === 0 ? 4 : 0));
            });
          }
          row.at24.forEach((foam, i) => {
            expect(foam ?? 0).toBeLessThanOrEqual(row.at16[i] ?? 0);
          });
          row.at16.forEach((foam, i) => {
            expect(foam ?? 0).toBeLessThanOrEqual(above === undefined ? 4 : (above[i] ?? 0));
          });
          above = row.at16;
        }
      }
    }
  });

  test("more insulation, weight or furring spacing never allows a wider spacing", () => {
    const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const spacing = (c: Partial<FurringCase>) => ask(c).spacingIn ?? 0;
    fc.assert(
      fc.property(
        fc.constantFrom("0.131 nail", "0.162 nail", "No. 10 wood screw", "1/4 lag screw"),
        finite(0.2, 2),
        finite(1, 12),
        finite(8, 16),
        finite(0, 2),
        finite(0, 12),
        finite(0, 8),
        (fastener, insulationIn, claddingPsf, furringIn, thicker, heavier, wider) => {
          const c = { fastener, insulationIn, claddingPsf, furringIn } as const;
          expect(spacing({ ...c, insulationIn: insulationIn + thicker })).toBeLessThanOrEqual(spacing(c));
          expect(spacing({ ...c, claddingPsf: claddingPsf + heavier })).toBeLessThanOrEqual(spacing(c));
          expect(spacing({ ...c, furringIn: furringIn + wider })).toBeLessThanOrEqual(spacing(c));
        },
      ),
    );
  });

  test("the working lists the rows", () => {
    const tape = new Tape();
    furringFasteners({ ...base, insulationIn: 1 }, tape);
    expect(tape.steps.map((s) => [s.symbol, s.value])).toEqual([
      ["cladding", 11],
      ["furring", 24],
      ["foam at 12 in", 1.65],
      ["foam at 16 in", 1.1],
      ["foam at 24 in", 0.5],
    ]);
    expect(tape.assumptions.join()).toContain("Furring of 1x wood");
    expect(tape.cautions.join()).toContain("mineral wool");
    const direct = new Tape();
    furringFasteners({ ...base, table: "direct", fastener: "0.113 nail", claddingPsf: 25, insulationIn: 1 }, direct);
    expect(direct.steps[1]?.value).toBe(24);
    expect(direct.steps[2]?.value).toBe("DR");
    expect(direct.assumptions.join()).not.toContain("1x wood");
  });
});
