import { BadInput, OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

export interface SpacingRules {
  readonly rows: number;
  readonly leastIn: number;
  readonly mostIn: number;
}

/** Spacings are laid out to the whole inch. */
const STEP_IN = 1;

/** Down to the whole inch; the dust of calculation does not cost one. */
export function roundedDownIn(spacingIn: number): number {
  return STEP_IN * Math.floor(spacingIn / STEP_IN + 1e-9);
}

/**
 * Spacing of fasteners along a line load: the exact spacing rounded down to the whole inch, no wider than the greatest.
 * @throws OutOfRange where the load asks for less than the least spacing; BadInput where that is above the greatest
 * Source: statics; whole inches are common practice, no source.
 */
export function spacingIn(demandPlf: number, capacityLb: number, rules: SpacingRules, tape?: Tape): number {
  if (rules.leastIn > rules.mostIn) {
    throw new BadInput(
      `The least spacing is ${plain(rules.leastIn)} in`,
      `the greatest is ${plain(rules.mostIn)} in`,
      "Check the two",
    );
  }
  const exact = (12 * rules.rows * capacityLb) / demandPlf;
  tape?.step("s", `12 x ${rules.rows} x ${plain(capacityLb)} / ${plain(demandPlf)}`, exact, "in", "statics");
  const value = Math.min(roundedDownIn(exact), rules.mostIn);
  if (value < rules.leastIn) {
    throw new OutOfRange(
      `The load asks for a fastener every ${plain(exact)} in`,
      `the least spacing is ${plain(rules.leastIn)} in`,
      "Use more rows, or a fastener that carries more",
    );
  }
  tape?.assume("Demand and capacity are of one level: both allowable, or both strength.");
  tape?.step(
    "s",
    `rounded down to the inch, at most ${plain(rules.mostIn)} in`,
    value,
    "in",
    "common practice, no source",
  );
  return value;
}
