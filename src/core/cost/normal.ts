/** The normal curve. */

/** Beyond this many deviations nothing is left that counts. */
const FAR = 8;

/**
 * Share of a normal quantity that lies below a number of deviations from its mean.
 * Source: G. Marsaglia, Evaluating the Normal Distribution, Journal of Statistical Software 11(4), 2004: a series that ends where its terms vanish.
 */
export function normalShare(deviations: number): number {
  if (deviations < -FAR) return 0;
  if (deviations > FAR) return 1;
  let [sum, term, before] = [deviations, deviations, 0];
  for (let n = 3; sum !== before; n += 2) {
    before = sum;
    term *= (deviations * deviations) / n;
    sum += term;
  }
  return 0.5 + (sum * Math.exp(-(deviations * deviations) / 2)) / Math.sqrt(2 * Math.PI);
}

/**
 * Deviations from the mean below which a share of a normal quantity lies; `normalShare` turned round, by halving.
 * @param share above 0 and below 1
 */
export function normalDeviations(share: number): number {
  let [low, high] = [-FAR, FAR];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (normalShare(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
