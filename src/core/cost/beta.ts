/** The beta curve, on 0 to 1. */

/** Lanczos' series for the gamma function, g = 7, nine terms. */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/** Natural logarithm of the gamma function; x of 1 or more. */
function logGamma(x: number): number {
  const z = x - 1;
  const t = z + 7.5;
  const series = LANCZOS.reduce((sum, c, i) => (i === 0 ? c : sum + c / (z + i)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(series);
}

/** Shapes that the beta curve takes in three-point estimates: 1 to 5 each. */
export interface BetaShape {
  readonly a: number;
  readonly b: number;
}

/**
 * Share of a beta quantity that lies below x: the incomplete beta function, by its power series, which stands on the side where it converges fast.
 * Source: NIST Digital Library of Mathematical Functions 8.17.
 */
export function betaShare(x: number, { a, b }: BetaShape): number {
  if (x > a / (a + b)) return x >= 1 ? 1 : 1 - lowerShare(1 - x, b, a);
  return x <= 0 ? 0 : lowerShare(x, a, b);
}

/** x^a (1-x)^b / (a B(a, b)) times the sum of (a+b)_n / (a+1)_n x^n, DLMF 8.17.8. */
function lowerShare(x: number, a: number, b: number): number {
  let [sum, term] = [1, 1];
  for (let n = 0; term > sum * 1e-16; n++) {
    term *= ((a + b + n) / (a + 1 + n)) * x;
    sum += term;
  }
  const logBeta = logGamma(a) + logGamma(b) - logGamma(a + b);
  return (Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta) / a) * sum;
}

/** The place below which a share of a beta quantity lies; `betaShare` turned round, by halving. */
export function betaPlace(share: number, shape: BetaShape): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (betaShare(middle, shape) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
