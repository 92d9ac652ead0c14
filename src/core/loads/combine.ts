import { asce, type Edition } from "../kit/edition.ts";
import { cautionRecalled } from "../kit/known.ts";
import { ALLOWABLE_WIND, type LoadLevel } from "../kit/load-level.ts";
import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { LoadCombinationsPicture } from "./pictures.ts";
import {
  COMBINATION_SECTION,
  type Combination,
  combinations,
  EARTH_FACTOR,
  LOADS,
  type LoadSymbol,
  type Method,
  type Term,
} from "./tables/combinations.ts";

/** A load of one kind; several of one kind are cases of which one acts at a time. */
export interface LoadCase {
  readonly load: LoadSymbol;
  /** in any one unit, uplift below 0 */
  readonly value: number;
}

export interface CombineInput {
  readonly loads: readonly LoadCase[];
  readonly method: Method;
  /** factor of a live load that accompanies others, 0.5 or 1 */
  readonly liveFactor: number;
  /** level of the wind load given */
  readonly windLevel: LoadLevel;
  readonly edition: Edition;
}

export interface CombinedLoad {
  readonly number: string;
  /** "1.2 D + 1.6 L + 0.5 S"; a load with several cases names its case: "W case 2" */
  readonly text: string;
  readonly value: number;
}

export interface Combined {
  readonly largest: CombinedLoad;
  readonly smallest: CombinedLoad;
  readonly all: readonly CombinedLoad[];
}

/** One load of each kind that acts, with its name in a sum. */
type Acting = ReadonlyMap<LoadSymbol, { readonly name: string; readonly value: number }>;

/** Every choice of one case of each load; loads of 0 fall out, the dead load apart. */
function choices(loads: readonly LoadCase[]): readonly Acting[] {
  return LOADS.reduce<readonly Acting[]>(
    (sofar, load) => {
      const cases = loads.filter((l) => l.load === load && (load === "D" || l.value !== 0));
      if (cases.length === 0) return sofar;
      return sofar.flatMap((acting) =>
        cases.map(({ value }, i) => {
          const name = cases.length === 1 ? load : `${load} case ${i + 1}`;
          return new Map([...acting, [load, { name, value }]]);
        }),
      );
    },
    [new Map()],
  );
}

/** Every way to take a combination, those that read alike once; earth pressure stands in as adding and as left out. */
function ways(combination: Combination, acting: Acting, earth: number): readonly (readonly Term[])[] {
  const { always, oneOf = [[]], andOneOf = [[]] } = combination;
  const earths: readonly (readonly Term[])[] = acting.has("H") ? [[[earth, "H"]], []] : [[]];
  return earths.flatMap((soil) =>
    oneOf.flatMap((first) =>
      andOneOf.map((second) => [...always, ...second, ...first, ...soil].filter(([, load]) => acting.has(load))),
    ),
  );
}

function textOf(terms: readonly Term[], acting: Acting): string {
  const name = (load: LoadSymbol) => acting.get(load)?.name ?? load;
  return terms.map(([factor, load]) => (factor === 1 ? name(load) : `${plain(factor)} ${name(load)}`)).join(" + ");
}

const GRAVITY: readonly LoadSymbol[] = ["D", "L", "Lr", "S", "R"];

/** Gravity loads below 0 turn the largest and the smallest round, and no dead load at all is likely a blank cell. */
function askSigns(loads: readonly LoadCase[], tape: Tape | undefined): void {
  const below = loads.find(({ load, value }) => GRAVITY.includes(load) && value < 0);
  if (below !== undefined) {
    tape?.caution(
      `${below.load} is ${plain(below.value)}: loads of gravity are above 0 here and uplift below 0, so that the smallest is the uplift. Is its sign meant?`,
    );
  }
  if (loads.some(({ load, value }) => load === "D" && value === 0)) tape?.caution("D is 0: is its cell blank?");
}

/**
 * All load combinations of a method and edition, with the largest and the smallest.
 * @throws BadInput without a dead load, and for wind at the allowable level in strength combinations
 * Source: ASCE/SEI 7-10, 7-16, 7-22 sections 2.3 (strength) and 2.4 (allowable stress).
 */
export function combine(input: CombineInput, tape?: Tape): Combined {
  const { loads, method, liveFactor, windLevel, edition } = input;
  checkLoads(input);
  askSigns(loads, tape);
  const section = asce(edition, COMBINATION_SECTION[method]);
  const wind = windLevel === "allowable" ? 1 : ALLOWABLE_WIND;
  const byText = new Map<string, CombinedLoad>();
  let memory = loads.some((l) => l.load === "H");
  for (const acting of choices(loads)) {
    for (const combination of combinations(method, edition, liveFactor, wind)) {
      for (const terms of ways(combination, acting, EARTH_FACTOR[method])) {
        const text = textOf(terms, acting);
        if (byText.has(text)) continue;
        const value = terms.reduce((sum, [factor, load]) => sum + factor * (acting.get(load)?.value ?? 0), 0);
        byText.set(text, { number: combination.number, text, value });
        if (combination.known === "memory") memory = true;
        const from = combination.known === "memory" ? `${section} (from memory)` : section;
        tape?.step(`combination ${combination.number}`, text, value, "", from);
      }
    }
  }
  const all = [...byText.values()];
  const [first] = all as [CombinedLoad];
  const largest = all.reduce((most, c) => (c.value > most.value ? c : most), first);
  const smallest = all.reduce((least, c) => (c.value < least.value ? c : least), first);
  if (memory) cautionRecalled(tape, `Some combinations of ${section}`, "the section");
  tape?.show(picture(all, largest, smallest));
  return { largest, smallest, all };
}

function checkLoads({ loads, method, windLevel }: CombineInput): void {
  const dead = loads.filter((l) => l.load === "D");
  if (dead.length !== 1) {
    throw new BadInput(
      dead.length === 0 ? "The dead load is missing" : `The dead load D stands in ${dead.length} rows`,
      "every combination holds one dead load",
      dead.length === 0 ? "Add a row D, 0 where there is none" : "Add the dead loads up in one row",
    );
  }
  if (method === "strength" && windLevel === "allowable" && loads.some((l) => l.load === "W" && l.value !== 0)) {
    throw new BadInput(
      "The wind load is at the allowable level",
      "strength combinations take wind at strength level, factor 1.0",
      "Set wind level to strength, or design method to allowable",
    );
  }
}

function picture(all: readonly CombinedLoad[], largest: CombinedLoad, smallest: CombinedLoad): LoadCombinationsPicture {
  return {
    kind: "load-combinations",
    alt: `${all.length} combinations; the largest is ${largest.text} = ${plain(largest.value)}, the smallest ${smallest.text} = ${plain(smallest.value)}.`,
    unit: "",
    bars: all.map((c) => ({ name: c.text, value: c.value, governs: c === largest || c === smallest })),
  };
}

/** A row of the answer: the largest and the smallest first, then every combination. */
export interface CombinedRow extends CombinedLoad {
  readonly which: "largest" | "smallest" | "";
}

export function combinedRows({ largest, smallest, all }: Combined): readonly CombinedRow[] {
  return [
    { which: "largest", ...largest },
    { which: "smallest", ...smallest },
    ...all.map((c): CombinedRow => ({ which: "", ...c })),
  ];
}
