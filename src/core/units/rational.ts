/** Exact fractions, so that a definition with decimals converts without a rounding of its own. */
export interface Rational {
  readonly over: bigint;
  readonly under: bigint;
}

export const ONE: Rational = { over: 1n, under: 1n };

/** A decimal, or a fraction of two: "0.45359237", "5/9", "1e-12". */
export function rational(text: string): Rational {
  const [over = "", under] = text.split("/");
  return under === undefined ? decimal(over) : divide(decimal(over), decimal(under));
}

function decimal(text: string): Rational {
  const [digits = "", power = "0"] = text.split("e");
  const [whole = "", part = ""] = digits.split(".");
  const shift = Number(power) - part.length;
  const over = BigInt(whole + part);
  return shift < 0 ? reduced(over, 10n ** BigInt(-shift)) : reduced(over * 10n ** BigInt(shift), 1n);
}

export function multiply(a: Rational, b: Rational): Rational {
  return reduced(a.over * b.over, a.under * b.under);
}

export function divide(a: Rational, b: Rational): Rational {
  return reduced(a.over * b.under, a.under * b.over);
}

export function power(a: Rational, exponent: number): Rational {
  const size = BigInt(Math.abs(exponent));
  return exponent < 0
    ? { over: a.under ** size, under: a.over ** size }
    : { over: a.over ** size, under: a.under ** size };
}

function reduced(over: bigint, under: bigint): Rational {
  let [a, b] = [over, under];
  while (b !== 0n) [a, b] = [b, a % b];
  return { over: over / a, under: under / a };
}

/** Times a number; exact where the number and the parts of the fraction are small. */
export function times(value: number, by: Rational): number {
  return (value * Number(by.over)) / Number(by.under);
}
