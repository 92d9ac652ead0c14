import { FIXING_W_MK } from "../../../core/enclosure/layers/fixings.ts";
import { BadInput } from "../../../core/kit/refusal.ts";

type FixingKind = keyof typeof FIXING_W_MK;

/** Words in a fixing's name that say what it is made of; the first that is found counts. */
const WORDS: readonly (readonly [RegExp, FixingKind])[] = [
  [/stainless/, "stainless"],
  [/alumin/, "aluminum"],
  [/fiber ?glass|glass fiber|frp|basalt/, "fiberglass"],
  [/plastic|nylon|polymer|composite/, "plastic"],
  [/wood|timber|dowel|bamboo/, "wood"],
  [/steel|galvani[sz]ed|screw|nail|lag|bolt|metal|tie|bracket|fastener|spike/, "steel"],
];

/**
 * Conductivity of a fixing in W/(m K), from the words of its name where none is given.
 * @throws BadInput for a name that says nothing of its material
 */
export function fixingConductivity(name: string, where: string): number {
  const tidy = name.trim().toLowerCase();
  const found = WORDS.find(([word]) => word.test(tidy));
  if (found !== undefined) return FIXING_W_MK[found[1]];
  throw new BadInput(
    `The fixing "${name}" in ${where} says nothing of its material`,
    "its conductivity decides what it adds to U",
    `Name it with one of ${Object.keys(FIXING_W_MK).join(", ")}, such as "steel screw", or give its conductivity in the last column`,
  );
}
