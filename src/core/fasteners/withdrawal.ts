import { BadInput, OutOfRange, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { adjusted, type Conditions, nds } from "./adjust.ts";
import type { Grain } from "./lateral.ts";
import { type FastenerType, GRAVITY_RANGE, LEAST_PENETRATION } from "./tables/fasteners.ts";

interface Formula {
  readonly clause: string;
  readonly text: string;
  readonly leastIn: number;
  readonly mostIn: number;
  lbPerIn(gravity: number, diameterIn: number): number;
}

/** NDS 2018 12.2.1 to 12.2.3; the coefficients are those of the printed Tables 12.2A, 11.2A and 11.2C. */
const FORMULAS: Readonly<Record<Exclude<FastenerType, "bolt">, Formula>> = {
  "lag screw": {
    clause: "12.2.1",
    text: "1800 G^1.5 D^0.75",
    leastIn: 0.25,
    mostIn: 1.25,
    lbPerIn: (g, d) => 1800 * g ** 1.5 * d ** 0.75,
  },
  "wood screw": {
    clause: "12.2.2",
    text: "2850 G^2 D",
    leastIn: 0.138,
    mostIn: 0.372,
    lbPerIn: (g, d) => 2850 * g * g * d,
  },
  nail: {
    clause: "12.2.3",
    text: "1380 G^2.5 D",
    leastIn: 0.099,
    mostIn: 0.375,
    lbPerIn: (g, d) => 1380 * g ** 2.5 * d,
  },
};

const LAG_END_GRAIN = 0.75;
const LONGEST_IN = 24;

function formulaOf(type: FastenerType): Formula {
  if (type !== "bolt") return FORMULAS[type];
  throw new BadInput(
    "The type is bolt",
    "a bolt is not held by threads in the wood: its washer bears on the face",
    "Check the washer's bearing, or give lag screw, wood screw or nail",
  );
}

/**
 * Reference withdrawal value of a fastener in side grain, lb for each inch of thread (lag and wood screws) or of length (nails).
 * @throws OutOfRange for a diameter or gravity outside the tables, BadInput for a bolt
 * Source: NDS 2018 12.2.1 to 12.2.3.
 */
export function withdrawalPerIn(type: FastenerType, diameterIn: number, gravity: number, edition: string, tape?: Tape) {
  const f = formulaOf(type);
  within(`The diameter of the ${type}`, diameterIn, f.leastIn, f.mostIn, "in", `NDS ${f.clause}`);
  within("The specific gravity", gravity, GRAVITY_RANGE.min, GRAVITY_RANGE.max, "", "NDS Tables 12.2A, 12.3.3");
  const value = f.lbPerIn(gravity, diameterIn);
  tape?.step("W", f.text, value, "lb/in", nds(edition, f.clause));
  return value;
}

function endGrainFactor(type: FastenerType, grain: Grain): number {
  if (grain === "side") return 1;
  if (type === "lag screw") return LAG_END_GRAIN;
  throw new BadInput(
    `A ${type} in withdrawal from end grain`,
    "the standard allows none (NDS 12.2)",
    "Use a lag screw, or hold the end by other means",
  );
}

/**
 * Adjusted withdrawal value of one fastener.
 * @param threadIn thread in the member without the tapered tip, of nails the length in it
 * @throws OutOfRange for less than the least penetration; BadInput for what the standard does not allow
 * Source: NDS 2018 12.2, 11.3.
 */
export function withdrawalValue(
  type: FastenerType,
  diameterIn: number,
  gravity: number,
  threadIn: number,
  grain: Grain,
  conditions: Conditions,
  tape?: Tape,
): number {
  const perIn = withdrawalPerIn(type, diameterIn, gravity, conditions.edition, tape);
  const leastIn = LEAST_PENETRATION * diameterIn;
  if (threadIn < leastIn - 1e-9) {
    throw new OutOfRange(
      `The thread in the wood is ${plain(threadIn)} in`,
      `at least ${plain(leastIn)} in is wanted, ${LEAST_PENETRATION} diameters without the tip (NDS 12.1.4 to 12.1.6)`,
      "Use a longer fastener, and check that the thread is in inches",
    );
  }
  within("The thread in the wood", threadIn, leastIn - 1e-9, LONGEST_IN, "in", "longer fasteners pull apart first");
  const ceg = endGrainFactor(type, grain);
  const value = perIn * threadIn * ceg;
  const ends = grain === "end" ? ` x Ceg ${ceg}` : "";
  tape?.step("W p", `${plain(perIn)} x ${plain(threadIn)} in${ends}`, value, "lb", nds(conditions.edition, "11.3"));
  if (type === "nail")
    tape?.assume("A smooth-shank nail; the standard has other values for ring-shank and stainless nails.");
  tape?.caution("The head may pull through the outer member first: see FASTENER_PULLTHROUGH.");
  tape?.caution("The tensile strength of the fastener's own steel is not checked.");
  return adjusted("W'", value, type, "withdrawal", conditions, tape);
}
