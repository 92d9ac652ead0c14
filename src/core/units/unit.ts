import { divide, multiply, ONE, power, type Rational, rational } from "./rational.ts";
import { BASE_UNITS, BASES, KINDS, UNITS, type UnitRow } from "./table.ts";
import { folded } from "./text.ts";

/** A unit that has been read: products, quotients and powers of units of the table. */
export interface Unit {
  /** how many of the base units one of it is */
  readonly factor: Rational;
  /** powers of the base units, in the order of BASES */
  readonly powers: readonly number[];
  /** whether a mass was written, up or down: a permeance is a time over a length that was made of masses */
  readonly ofMasses: boolean;
}

const PLAIN: Unit = { factor: ONE, powers: BASES.map(() => 0), ofMasses: false };
const MASS = BASES.indexOf("[mass]");

let byWord: ReadonlyMap<string, UnitRow> | undefined;
const known = new Map<string, Unit>();

function rowOf(word: string): UnitRow | undefined {
  byWord ??= new Map(UNITS.flatMap((row) => row.words.split("|").map((w) => [w, row] as const)));
  return byWord.get(word);
}

/** The text of a unit with its ways of writing made one. */
export function unitText(text: string): string {
  return folded(text)
    .toLowerCase()
    .replaceAll("²", "2")
    .replaceAll("³", "3")
    .replace(/[\u0394\u03b4]/g, "delta")
    .replace(/[·×*]/g, " ")
    .replaceAll("µ", "u")
    .replace(/[.°_^]/g, (c) => (c === "." || c === "_" ? " " : ""))
    .replace(/\s+/g, " ")
    .trim();
}

/** The unit that a text means, or undefined: a word of the table, or words with powers, products and quotients. */
export function unitOf(text: string): Unit | undefined {
  const tidied = unitText(text);
  return wordUnit(tidied.replaceAll(" ", "")) ?? expressionUnit(tidied);
}

function expressionUnit(text: string): Unit | undefined {
  const expression = new Expression(text);
  const unit = expression.product();
  return expression.ended() ? unit : undefined;
}

function wordUnit(word: string): Unit | undefined {
  const row = rowOf(word);
  if (row === undefined) return undefined;
  const before = known.get(row.words);
  if (before !== undefined) return before;
  const base = BASES.indexOf(row.of);
  const of = base < 0 ? (expressionUnit(row.of) ?? PLAIN) : baseUnit(base);
  const made = { ...of, factor: multiply(rational(row.is), of.factor) };
  known.set(row.words, made);
  return made;
}

function baseUnit(base: number): Unit {
  return { factor: ONE, powers: BASES.map((_, i) => Number(i === base)), ofMasses: base === MASS };
}

function joined(a: Unit, b: Unit, sign: 1 | -1): Unit {
  return {
    factor: sign === 1 ? multiply(a.factor, b.factor) : divide(a.factor, b.factor),
    powers: a.powers.map((p, i) => p + sign * (b.powers[i] ?? 0)),
    ofMasses: a.ofMasses || b.ofMasses,
  };
}

function raised(a: Unit, exponent: number): Unit {
  return { ...a, factor: power(a.factor, exponent), powers: a.powers.map((p) => p * exponent) };
}

/** Reads `btu in/(h ft2 f)` from left to right. What follows a bar stands below it, as the trade writes `Btu/h ft2 F`. */
class Expression {
  readonly #text: string;
  #at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  ended(): boolean {
    return this.#at === this.#text.length;
  }

  product(): Unit | undefined {
    let unit = this.#group();
    let below = false;
    while (unit !== undefined && !this.ended() && this.#text[this.#at] !== ")") {
      if (this.#skip("/")) below = true;
      else this.#skip("-");
      const next = this.#group();
      if (next === undefined) return undefined;
      unit = joined(unit, next, below ? -1 : 1);
    }
    return unit;
  }

  #skip(mark: string): boolean {
    this.#spaces();
    if (this.#text[this.#at] !== mark) return false;
    this.#at++;
    this.#spaces();
    return true;
  }

  #spaces(): void {
    while (this.#text[this.#at] === " ") this.#at++;
  }

  /** A word or a bracket, with its power. */
  #group(): Unit | undefined {
    if (!this.#skip("(")) return this.#word();
    const inner = this.product();
    if (inner === undefined || this.#text[this.#at] !== ")") return undefined;
    this.#at++;
    const unit = raised(inner, this.#exponent());
    this.#spaces();
    return unit;
  }

  #word(): Unit | undefined {
    const word = this.#take(/[a-z$]+|["']+|1(?=\/)/y);
    if (word === "1") return PLAIN;
    const times = { sq: 2, square: 2, cu: 3, cubic: 3 }[word];
    this.#spaces();
    const of = times === undefined ? "" : this.#take(/[a-z]+/y);
    return times === undefined || of === "" ? this.#powered(word, 1) : this.#powered(of, times);
  }

  #powered(word: string, times: number): Unit | undefined {
    const unit = wordUnit(word);
    if (unit === undefined) return undefined;
    const out = raised(unit, times * this.#exponent());
    this.#spaces();
    return out;
  }

  /** A power behind a word: at most one digit, with or without a minus. */
  #exponent(): number {
    const digits = this.#take(/-?[1-9](?!\d)/y);
    return digits === "" ? 1 : Number(digits);
  }

  #take(pattern: RegExp): string {
    pattern.lastIndex = this.#at;
    const found = pattern.exec(this.#text)?.[0] ?? "";
    this.#at += found.length;
    return found;
  }
}

/** What a unit measures, as a key: alike for units that convert into each other. */
function kindKey(unit: Unit): string {
  const ofMass = unit.powers[MASS] === 0 && unit.ofMasses ? "of masses" : "";
  return `${unit.powers.join(",")}${ofMass}`;
}

let kinds: ReadonlyMap<string, string> | undefined;

/** What a unit measures, in words: "a pressure". */
export function kindOf(unit: Unit): string {
  kinds ??= new Map(KINDS.map(([kind, word]) => [kindKey(unitOf(word) ?? PLAIN), kind]));
  return kinds.get(kindKey(unit)) ?? `a quantity in ${baseText(unit)}`;
}

function baseText(unit: Unit): string {
  const parts = BASE_UNITS.flatMap((base, i) => {
    const p = unit.powers[i] ?? 0;
    return p === 0 ? [] : [p === 1 ? base : `${base}^${p}`];
  });
  return parts.join(" ");
}

/** Standard gravity, exact: NIST SP 811 (2008) B.8. */
const GRAVITY: Unit = { factor: rational("9.80665"), powers: [1, 0, -2, 0, 0, 0], ofMasses: false };

/**
 * How many of `to` one of `from` is, or undefined where they measure different things. A mass counts as its weight under standard gravity
 * where the other one is a force, and the other way round.
 */
export function ratio(from: Unit, to: Unit): Rational | undefined {
  for (const [a, b] of [
    [from, to],
    [joined(from, GRAVITY, 1), to],
    [from, joined(to, GRAVITY, 1)],
  ] as const) {
    const weighed = a === from && b === to;
    if (kindKey(a) === kindKey(b) && (weighed || from.powers[MASS] === 1)) return divide(a.factor, b.factor);
  }
  return undefined;
}
