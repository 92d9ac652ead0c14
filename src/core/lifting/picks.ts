import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { INCHES_IN } from "../units/length.ts";
import { bendingOfStrip } from "../wood/index.ts";

export interface PickRow {
  readonly pick: string;
  readonly fromLeftFt: number;
  /** with the impact factor; below 0 bends the piece over the pick */
  readonly momentFtLb: number;
}

export interface Picks {
  readonly picks: readonly PickRow[];
  /** from pick to pick; for one pick from the foot that the piece turns about */
  readonly spacingFt: number;
  /** greatest bending anywhere, either way, with the impact factor */
  readonly greatestFtLb: number;
}

/**
 * Overhang beyond the outer picks, as a share of the length, at which the greatest bending of an even piece is least. Two to four picks evenly spaced with
 * equal pulls: the bending over the outer picks equals that between. One pick: the piece turns about its foot, at the start of the tilt.
 */
const OVERHANG: Readonly<Record<number, { readonly share: number; readonly says: string; readonly source: string }>> = {
  1: { share: 1 - Math.SQRT1_2, says: "1 - 1/sqrt 2", source: "statics, turned about the foot; 0.293 from memory" },
  2: { share: (Math.SQRT2 - 1) / 2, says: "(sqrt 2 - 1)/2", source: "mechanics teaching site, two-point lift: 0.207" },
  3: { share: (Math.SQRT2 - 1) / 3, says: "(sqrt 2 - 1)/3", source: "statics, equal pulls" },
  4: { share: (Math.sqrt(7) - 2) / 6, says: "(sqrt 7 - 2)/6", source: "statics, equal pulls at even spacing" },
};

/**
 * Where to pick up a piece of even weight so that it bends least, lying level and lifted by its face.
 * @param lengthFt above 0
 * @param plf weight of a foot of its length, static
 * @param count 2 to 4 picks with equal pulls; 1 tilts the piece up about its left end
 * @param impact factor on the bending, 1 or more
 * Source: statics of a beam of even weight.
 */
export function liftPicks(lengthFt: number, plf: number, count: number, impact: number, tape?: Tape): Picks {
  const { share, says, source } = OVERHANG[count] ?? { share: 0, says: "", source: "" };
  const overhangFt = share * lengthFt;
  tape?.step("a", `${says} x L, beyond the outer pick`, overhangFt, "ft", source);
  const fromLeftFt = pickPlaces(lengthFt, overhangFt, count);
  const moment = momentAt(lengthFt, plf * impact, fromLeftFt);
  const picks = fromLeftFt.map((x, i) => ({ pick: `pick ${i + 1}`, fromLeftFt: x, momentFtLb: moment(x) }));
  for (const p of picks)
    tape?.step(
      "M",
      `${p.pick} at ${plain(p.fromLeftFt)} ft, x impact factor ${plain(impact)}`,
      p.momentFtLb,
      "ft lb",
      "statics",
    );
  const greatestFtLb = greatestMoment(lengthFt, moment, fromLeftFt);
  tape?.step(
    "M_max",
    `greatest anywhere = ${plain(greatestFtLb / (plf * impact * lengthFt ** 2))} w L^2`,
    greatestFtLb,
    "ft lb",
    "statics",
  );
  if (count > 2) {
    tape?.caution(
      "Equal pulls need rolling blocks or spreaders between the legs: with fixed legs two of them may carry all.",
    );
  }
  return { picks, spacingFt: spacingOf(fromLeftFt), greatestFtLb };
}

/**
 * Bending stress of a panel that is lifted so, over its strength: the greatest bending of a strip one foot wide.
 * @param sIn3PerFt section modulus of a foot of width
 * @param fbPsi bending strength without a factor for the short time
 * @returns 1 or less where the panel bears it
 * Source: statics; the panel's values from its evaluation report.
 */
export function panelBendingRatio(momentFtLb: number, sIn3PerFt: number, fbPsi: number, tape?: Tape): number {
  const momentLbIn = momentFtLb * INCHES_IN.ft;
  tape?.step("M_max", "of a strip one foot wide, no factor for the short time", momentLbIn, "lb in/ft", "statics");
  const { ratio } = bendingOfStrip(momentLbIn, sIn3PerFt, fbPsi, tape);
  if (ratio > 1) {
    tape?.caution(
      `The panel would bend beyond its strength: ratio ${plain(ratio)}. Use more picks or a stiffening beam.`,
    );
  }
  return ratio;
}

function pickPlaces(lengthFt: number, overhangFt: number, count: number): readonly number[] {
  if (count === 1) return [lengthFt - overhangFt];
  const spacingFt = (lengthFt - 2 * overhangFt) / (count - 1);
  return Array.from({ length: count }, (_, i) => overhangFt + i * spacingFt);
}

function spacingOf(fromLeftFt: readonly number[]): number {
  const [first = 0, second] = fromLeftFt;
  return second === undefined ? first : second - first;
}

/**
 * Bending of a piece of even weight at a place, below 0 where it hangs over a pick. Pulls are equal; a single pick shares the weight with the left end,
 * which rests on the ground.
 */
export function momentAt(lengthFt: number, plf: number, fromLeftFt: readonly number[]): (xFt: number) => number {
  const weightLb = plf * lengthFt;
  const [only = lengthFt] = fromLeftFt;
  const single = fromLeftFt.length === 1;
  const pullLb = single ? (weightLb * lengthFt) / 2 / only : weightLb / fromLeftFt.length;
  const footLb = single ? weightLb - pullLb : 0;
  return (xFt) => {
    const pulled = fromLeftFt.reduce((sum, at) => sum + pullLb * Math.max(0, xFt - at), 0);
    return footLb * xFt + pulled - (plf * xFt ** 2) / 2;
  };
}

/** Bending is greatest over a pick, or where no shear is left: with equal pulls at equal parts of the length. */
export function greatestMoment(
  lengthFt: number,
  moment: (xFt: number) => number,
  fromLeftFt: readonly number[],
): number {
  const parts = fromLeftFt.length;
  const level = parts === 1 ? [lengthFt - (lengthFt * lengthFt) / (2 * (fromLeftFt[0] ?? lengthFt))] : [];
  const even = Array.from({ length: parts - 1 }, (_, i) => ((i + 1) * lengthFt) / parts);
  return Math.max(...[...fromLeftFt, ...level, ...even].map((x) => Math.abs(moment(x))));
}
