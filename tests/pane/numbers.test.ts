import fc from "fast-check";
import { expect, test } from "vitest";
import { copyText, fullText, shownNumber } from "../../src/pane/parts/numbers.ts";

test.each([
  [0, "0"],
  [-0, "0"],
  [17, "17"],
  [17.12, "17.12"],
  [17.120034, "17.120"],
  [12.541666666666666, "12.542"],
  [0.1 + 0.2, "0.3"],
  [0.99999999, "1.0000"],
  [1.0000004, "1.0000"],
  [9999, "9999"],
  [10000, "10,000"],
  [1234567.89, "1,234,568"],
  [99999.96, "100,000"],
  [-1234.5678, "−1234.6"],
  [0.00256, "0.00256"],
  [0.000123456, "0.00012346"],
  [0.0000123456, "1.2346 × 10⁻⁵"],
  [-2e-7, "−2 × 10⁻⁷"],
  [2.5e18, "2.5 × 10¹⁸"],
])("%d is shown as %s", (value, shown) => expect(shownNumber(value)).toBe(shown));

test("a shown number is within half of its fifth digit of the value", () => {
  const back = (s: string) =>
    Number(
      s
        .replaceAll(",", "")
        .replaceAll("−", "-")
        .replace(
          / × 10(.+)/,
          (_, p: string) =>
            `e${[...p]
              .map((c) => "⁰¹²³⁴⁵⁶⁷⁸⁹".indexOf(c))
              .join("")
              .replace("-1", "-")}`,
        )
        .replace("⁻", "-"),
    );
  fc.assert(
    fc.property(fc.double({ min: -1e15, max: 1e15, noNaN: true }), (x) => {
      fc.pre(Math.abs(x) >= 1e-4);
      expect(Math.abs(back(shownNumber(x)) - x)).toBeLessThanOrEqual(Math.abs(x) * 5.001e-5);
    }),
  );
});

test("copies keep every digit and go back into cells", () => {
  expect(fullText(0.1 + 0.2)).toBe("0.30000000000000004");
  expect(
    copyText([
      ["a\tb", 1.23456789],
      [true, 2],
    ]),
  ).toBe("a b\t1.23456789\nTRUE\t2");
});
