import fc from "fast-check";
import { expect, test } from "vitest";
import { Random } from "../../../src/core/kit/random.ts";

const WORD = 2n ** 32n;

/** The same generator in whole numbers of any size, where no step can overflow: a counter, mixed by two multiplications. */
function* bits(seed: bigint): Generator<number, never> {
  for (let state = seed; ; ) {
    state = (state + 0x9e3779b9n) % WORD;
    let z = ((state ^ (state >> 16n)) * 0x21f0aaadn) % WORD;
    z = ((z ^ (z >> 15n)) * 0x735a2d97n) % WORD;
    yield Number(z ^ (z >> 15n));
  }
}

test("32 bits at a time, as exact arithmetic gives them", () => {
  fc.assert(
    fc.property(fc.nat(), (seed) => {
      const random = new Random(seed);
      const exact = bits(BigInt(seed));
      for (let i = 0; i < 20; i++) expect(random.bits()).toBe(exact.next().value);
    }),
  );
});

test("a number from 0 to 1 and a whole number below a limit are its share of all 32 bits", () => {
  const exact = bits(9n);
  const random = new Random(9);
  for (let i = 0; i < 50; i++) {
    const share = exact.next().value / 2 ** 32;
    expect(i % 2 === 0 ? random.unit() : random.below(1000)).toBe(i % 2 === 0 ? share : Math.floor(share * 1000));
  }
});

test("whole numbers below a limit come about equally often", () => {
  const random = new Random(1);
  const seen = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < 6000; i++) {
    const n = random.below(6);
    seen[n] = (seen[n] ?? 0) + 1;
  }
  // Five standard deviations of a fair die.
  for (const n of seen) expect(Math.abs(n - 1000)).toBeLessThan(5 * Math.sqrt((6000 * 5) / 36));
});
