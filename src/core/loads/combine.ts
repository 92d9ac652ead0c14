import { asce, type Edition } from "../kit/edition.ts";
import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { LoadCombinationsPicture } from "./pictures.ts";
import {
  COMBINATION_SECTION,
  COMBINATIONS,
  type Combination,
  type LoadSymbol,
  type Method,
  type Term,
} from "./tables/combinations.ts";

export type Loads = Readonly<Record<LoadSymbol, number>>;

export interface CombinedLoad {
  readonly number: string;
  /** "1.2 D + 1.6 L + 0.5 S" */
  readonly text: string;
  readonly value: number;
}

export interface Combined {
  readonly largest: CombinedLoad;
  readonly smallest: CombinedLoad;
  readonly all: readonly CombinedLoad[];
}

/** Every way to take a combination: terms whose load is 0 fall out, and ways that then read alike count once. */
function ways(combination: Combination, loads: Loads): readonly (readonly Term[])[] {
  const { always, oneOf = [[]], andOneOf = [[]] } = combination;
  const seen = new Map<string, readonly Term[]>();
  for (const first of oneOf) {
    for (const second of andOneOf) {
      const terms = [...always, ...second, ...first].filter(([, load]) => load === "D" || loads[load] !== 0);
      seen.set(textOf(terms), terms);
    }
  }
  return [...seen.values()];
}

function textOf(terms: readonly Term[]): string {
  return terms.map(([factor, load]) => (factor === 1 ? load : `${plain(factor)} ${load}`)).join(" + ");
}

/**
 * All load combinations of a method and edition, with the largest and the smallest. Loads in any one unit, uplift below 0.
 * @param f1 factor of a live load that accompanies others, 0.5 or 1
 * Source: ASCE/SEI 7-10, 7-16, 7-22 sections 2.3 (strength) and 2.4 (allowable stress).
 */
export function combine(loads: Loads, method: Method, f1: number, edition: Edition, tape?: Tape): Combined {
  const section = asce(edition, COMBINATION_SECTION[method]);
  const byText = new Map<string, CombinedLoad>();
  let memory = false;
  for (const combination of COMBINATIONS[method][edition](f1)) {
    for (const terms of ways(combination, loads)) {
      const text = textOf(terms);
      if (byText.has(text)) continue;
      const value = terms.reduce((sum, [factor, load]) => sum + factor * loads[load], 0);
      byText.set(text, { number: combination.number, text, value });
      if (combination.basis === "memory") memory = true;
      const from = combination.basis === "memory" ? `${section} (from memory)` : section;
      tape?.step(`combination ${combination.number}`, text, value, "", from);
    }
  }
  const all = [...byText.values()];
  const [first] = all as [CombinedLoad];
  const largest = all.reduce((most, c) => (c.value > most.value ? c : most), first);
  const smallest = all.reduce((least, c) => (c.value < least.value ? c : least), first);
  if (memory)
    tape?.caution(`Some combinations of ${section} are from memory, not from a print: check them against the section.`);
  tape?.show(picture(all, largest, smallest));
  return { largest, smallest, all };
}

function picture(all: readonly CombinedLoad[], largest: CombinedLoad, smallest: CombinedLoad): LoadCombinationsPicture {
  return {
    kind: "load-combinations",
    alt: `${all.length} combinations; the largest is ${largest.text} = ${plain(largest.value)}, the smallest ${smallest.text} = ${plain(smallest.value)}.`,
    unit: "",
    bars: all.map((c) => ({ name: c.text, value: c.value, governs: c === largest || c === smallest })),
  };
}

/** Largest and smallest on the first two rows, then every combination. */
export function combinedTable({
  largest,
  smallest,
  all,
}: Combined): readonly (readonly [string, string, string, number])[] {
  const row = (which: string, c: CombinedLoad) => [which, c.number, c.text, c.value] as const;
  return [row("largest", largest), row("smallest", smallest), ...all.map((c) => row("", c))];
}
