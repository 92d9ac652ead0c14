/**
 * A small seeded generator (32-bit counter mixed by multiply and shift), so that a search repeats on every machine.
 * All arithmetic is on 32-bit integers and gives the same numbers in every engine.
 */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed | 0;
  }

  /** The next 32 bits as an unsigned integer. */
  bits(): number {
    this.#state = (this.#state + 0x9e3779b9) | 0;
    let z = this.#state;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return (z ^ (z >>> 15)) >>> 0;
  }

  /** A number from 0 (in) to 1 (out). */
  unit(): number {
    return this.bits() / 4294967296;
  }

  /** A whole number from 0 (in) to `end` (out). */
  below(end: number): number {
    return Math.floor(this.unit() * end);
  }
}
