import { Random } from "../kit/random.ts";
import { normalShare } from "./normal.ts";

/** A fixed effort: the same answer on every machine. */
export const TRIALS = 20_000;

/** Uncertain quantities drawn together, trial by trial. */
export interface Draws {
  /** of each quantity, in the order given */
  readonly each: readonly Float64Array[];
  readonly totals: Float64Array;
}

/**
 * Draws quantities that rise and fall together: normal numbers with one part in common, each turned into its share and that into the quantity's own value
 * (a Gaussian copula with one correlation for all pairs).
 * @param quantiles value of each quantity below which a share lies
 * @param correlation of the normal numbers, 0 to 1
 * @param seed whole; the same seed gives the same draws
 */
export function draw(quantiles: readonly ((share: number) => number)[], correlation: number, seed: number): Draws {
  const normal = normalNumbers(new Random(seed));
  const each = quantiles.map(() => new Float64Array(TRIALS));
  const totals = new Float64Array(TRIALS);
  const [common, own] = [Math.sqrt(correlation), Math.sqrt(1 - correlation)];
  for (let trial = 0; trial < TRIALS; trial++) {
    const shared = common * normal();
    let total = 0;
    quantiles.forEach((quantile, i) => {
      const value = quantile(normalShare(shared + own * normal()));
      (each[i] as Float64Array)[trial] = value;
      total += value;
    });
    totals[trial] = total;
  }
  return { each, totals };
}

/** Normal numbers two at a time (Box and Muller 1958). */
function normalNumbers(random: Random): () => number {
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    const far = Math.sqrt(-2 * Math.log(1 - random.unit()));
    const turn = 2 * Math.PI * random.unit();
    spare = far * Math.sin(turn);
    return far * Math.cos(turn);
  };
}

/** The value that a share of the trials does not pass. */
export function notPassed(sorted: Float64Array, share: number): number {
  const place = Math.ceil(share * sorted.length - 1e-9) - 1;
  return sorted[Math.min(Math.max(place, 0), sorted.length - 1)] ?? 0;
}

/** Standard error of that value: half of what lies one deviation of the rank to either side. */
export function errorOf(sorted: Float64Array, share: number): number {
  const off = Math.sqrt((share * (1 - share)) / sorted.length);
  return (notPassed(sorted, share + off) - notPassed(sorted, share - off)) / 2;
}
