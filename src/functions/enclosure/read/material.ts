import { MATERIALS, type Material } from "../../../core/enclosure/tables/materials.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import { editDistance } from "./near.ts";

function key(name: string): string {
  return name
    .toLowerCase()
    .replaceAll("vapour", "vapor")
    .replaceAll("fibre", "fiber")
    .replace(/[-_,]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}

const BY_NAME: ReadonlyMap<string, Material> = new Map(
  MATERIALS.flatMap((m) => [m.name, ...m.also].map((name) => [key(name), m] as const)),
);

/** What builders write before a material: `5/8 drywall`, `1/2 in. plywood`, `R-13 batt`, `2x4 studs`. */
const SIZE = /^(?:(\d+)[ -])?(\d+(?:\.\d+)?|\d+\/\d+)(?: ?(?:in(?:ch)?\.?|"|''))? (.+)$/i;
const NOMINAL = /^[1-8]x\d{1,2} (.+)$/i;
const R_LABEL = /^r-? ?(\d+(?:\.\d+)?) (.+)$/i;

/** A material and what its name says of it beside. */
export interface NamedMaterial {
  readonly material: Material;
  /** "5/8 drywall" is 0.625 */
  readonly thicknessIn: number | undefined;
  /** "R-13 batt" is 13 */
  readonly rIp: number | undefined;
}

/** The built-in material of a name or one of its other names, in any case, with the size or R that stands before it. */
export function namedMaterial(name: string): NamedMaterial | undefined {
  const tidy = name.trim().replace(/\s+/g, " ");
  const whole = BY_NAME.get(key(tidy));
  if (whole !== undefined) return { material: whole, thicknessIn: undefined, rIp: undefined };
  const label = R_LABEL.exec(tidy);
  const labeled = BY_NAME.get(key(label?.[2] ?? ""));
  if (labeled !== undefined) return { material: labeled, thicknessIn: undefined, rIp: Number(label?.[1]) };
  const nominal = BY_NAME.get(key(NOMINAL.exec(tidy)?.[1] ?? ""));
  if (nominal !== undefined) return { material: nominal, thicknessIn: undefined, rIp: undefined };
  const size = SIZE.exec(tidy);
  const sized = BY_NAME.get(key(size?.[3] ?? ""));
  if (sized === undefined) return undefined;
  return { material: sized, thicknessIn: inchesOf(size?.[1], size?.[2] ?? ""), rIp: undefined };
}

function inchesOf(wholes: string | undefined, part: string): number {
  const [above = "0", below = "1"] = part.split("/");
  return Number(wholes ?? 0) + Number(above) / Number(below);
}

export function findMaterial(name: string): Material | undefined {
  return namedMaterial(name)?.material;
}

/** Built-in names that a mistyped one may have meant: nearest spelling or a shared word, nearest first, three at most. */
export function nearMaterials(name: string): readonly string[] {
  const wanted = key(name);
  const scored = new Map<string, number>();
  for (const [known, material] of BY_NAME) {
    const words = known.split(" ").filter((w) => w.length > 2 && wanted.split(" ").includes(w));
    const distance = editDistance(wanted, known) / Math.max(wanted.length, known.length, 1);
    const score = words.length > 0 ? Math.min(distance, 0.45) : distance;
    if (score <= 0.45) scored.set(material.name, Math.min(score, scored.get(material.name) ?? 1));
  }
  return [...scored]
    .sort(([a, x], [b, y]) => x - y || (a < b ? -1 : 1))
    .slice(0, 3)
    .map(([n]) => n);
}

/** @param where "row 4" */
export function unknownMaterial(name: string, where: string): BadInput {
  const near = nearMaterials(name);
  const meant = near.length > 0 ? ` Near names: ${near.join(", ")}` : "";
  return new BadInput(
    `The material "${shorten(name)}" in ${where} is not known`,
    "it is none of the built-in materials and its row gives no R or conductivity",
    `Give its R (such as 3.5 or "R 4.2/in") in the third column, or correct the name.${meant}`,
  );
}

function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
