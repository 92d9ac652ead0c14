/** Units of work between two looks at the caller's safety stop. */
const LOOK_EVERY = 100_000;

/**
 * The work a search may do, counted in elementary steps and not in time, so that the answer does not depend on the
 * machine. `expired` is the caller's safety stop (a clock, a cancel button); the core never reads a clock itself.
 */
export class Effort {
  #left: number;
  #sinceLook = 0;
  #stopped = false;
  readonly #expired: () => boolean;

  constructor(units: number, expired: () => boolean = () => false) {
    this.#left = units;
    this.#expired = expired;
  }

  /** Counts `units` steps; false when nothing is left. */
  spend(units: number): boolean {
    this.#left -= units;
    this.#sinceLook += units;
    if (this.#sinceLook >= LOOK_EVERY) {
      this.#sinceLook = 0;
      if (!this.#stopped && this.#expired()) this.#stopped = true;
    }
    return this.#left > 0 && !this.#stopped;
  }

  get over(): boolean {
    return this.#left <= 0 || this.#stopped;
  }

  /** True when the caller's safety stop ended the search: only then may another run give another answer. */
  get cut(): boolean {
    return this.#stopped;
  }

  get remaining(): number {
    return this.#stopped ? 0 : Math.max(0, this.#left);
  }

  /** A part of this effort for one stage, which is not booked here. */
  part(units: number): Effort {
    return new Effort(Math.min(units, this.remaining), () => {
      if (!this.#stopped && this.#expired()) this.#stopped = true;
      return this.#stopped;
    });
  }

  /** Runs a stage with at most `units`; what it leaves stays here. */
  stage<T>(units: number, run: (effort: Effort) => T): T {
    const stage = this.part(units);
    const result = run(stage);
    this.#left -= Math.min(units, this.remaining) - Math.max(0, stage.#left);
    return result;
  }
}
