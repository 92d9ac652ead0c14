/** A refusal as data: what is wrong, why, and what to do. Hosts join the parts at the very edge, by `sentence`. */
export interface Said {
  readonly what: string;
  readonly why: string;
  readonly todo: string;
}

/** The three parts as one text. */
export function sentence({ what, why, todo }: Said): string {
  return `${what}: ${why}. ${todo.replace(/\.$/, "")}.`;
}

/**
 * Why a calculation gives no number. The sentence has three parts: what is wrong, why, and what to do.
 * A host turns `BadInput` into #VALUE! and `OutOfRange` into #N/A, each with the sentence.
 */
export abstract class Refusal extends Error implements Said {
  readonly what: string;
  readonly why: string;
  readonly todo: string;

  /**
   * @param what the fact, naming the input and its value, without a final stop: "The height is 700 ft"
   * @param why the rule it meets, without a final stop: "the method holds up to 500 ft (ASCE 7-16 Table 26.10-1)"
   * @param todo what the reader can do, as a sentence without a final stop: "Use a height of 500 ft or less"
   */
  constructor(what: string, why: string, todo: string) {
    super(sentence({ what, why, todo }));
    this.what = what;
    this.why = why;
    this.todo = todo;
  }
}

/** An input that cannot be read or cannot be: unknown material, negative thickness, two layers of the same role. */
export class BadInput extends Refusal {
  override readonly name = "BadInput";
}

/** An input that is readable but outside what the method or table covers. Never extrapolate: throw this. */
export class OutOfRange extends Refusal {
  override readonly name = "OutOfRange";
}

/** A number as people write it in a sentence: at most six significant digits, no exponent for everyday sizes. */
export function plain(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** Most digits that tell two numbers apart. */
const ALL_DIGITS = 17;

/** A refused number with as many digits as it takes to see that it is not inside: 392.00001, where six digits would print the 392 that is allowed. */
export function refused(value: number, inside: (printed: number) => boolean): string {
  const printed = Number(plain(value));
  for (let digits = 7; inside(printed) && digits <= ALL_DIGITS; digits++) {
    const longer = Number(value.toPrecision(digits));
    if (!inside(longer)) return String(longer);
  }
  return String(printed);
}

/**
 * Refuses a value outside a method's limits (inclusive) and NaN.
 * @param name the quantity with its article: "The height"
 * @param unit unit after the numbers, "" where there is none
 * @param source clause that sets the limit
 */
export function within(name: string, value: number, min: number, max: number, unit: string, source: string): void {
  const inside = (x: number) => x >= min && x <= max;
  if (inside(value)) return;
  const u = unit === "" ? "" : ` ${unit}`;
  throw new OutOfRange(
    `${name} is ${refused(value, inside)}${u}`,
    `the method holds from ${plain(min)} to ${plain(max)}${u} (${source})`,
    "Use a value inside that range, or a method made for the case",
  );
}
