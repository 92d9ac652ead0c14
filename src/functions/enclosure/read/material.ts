import { MATERIALS, type Material } from "../../../core/enclosure/tables/materials.ts";
import { BadInput } from "../../../core/kit/refusal.ts";

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

/** The built-in material of a name or one of its other names, in any case. */
export function findMaterial(name: string): Material | undefined {
  return BY_NAME.get(key(name));
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

/** Levenshtein distance, with long names cut: no material's name is longer. */
function editDistance(a: string, b: string): number {
  const left = a.slice(0, 40);
  const right = b.slice(0, 40);
  let row = Array.from({ length: right.length + 1 }, (_, i) => i);
  for (let i = 1; i <= left.length; i++) {
    const next = [i];
    for (let j = 1; j <= right.length; j++) {
      const cost = left[i - 1] === right[j - 1] ? 0 : 1;
      next.push(Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + cost));
    }
    row = next;
  }
  return row[right.length] ?? 0;
}
