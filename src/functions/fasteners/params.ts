import type { Conditions } from "../../core/fasteners/adjust.ts";
import type { Material, Member } from "../../core/fasteners/bearing.ts";
import { GRAINS } from "../../core/fasteners/lateral.ts";
import { FASTENER_TYPES, GRAVITY_RANGE, PANEL_BEARING } from "../../core/fasteners/tables/fasteners.ts";
import type { Duration } from "../../core/kit/load-duration.ts";
import type { LoadLevel } from "../../core/kit/load-level.ts";
import { BadInput } from "../../core/kit/refusal.ts";
import { needed, orElse } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { length, mapped, measure, number, quantity } from "../declare/scalar.ts";
import { choice, text } from "../declare/word.ts";

/** Parameters that the functions of fasteners share. */

export const CAUTION = preliminary("fastener");

export const type = choice(FASTENER_TYPES, {
  says: "kind of fastener",
  also: { lag: "lag screw", screw: "wood screw", "common nail": "nail" },
});

export const diameter = length("in", {
  says: "nominal diameter, such as 0.162 or 3/8",
  min: 0.09,
  max: 1.25,
  source: "the wood standard's tables",
});

export const gravity = number({
  says: "specific gravity of the wood: Douglas fir-larch 0.50, southern pine 0.55, hem-fir 0.43, spruce-pine-fir 0.42",
  ...GRAVITY_RANGE,
  source: "NDS Tables 12.2A and 12.3.3",
});

export const grain = optional(
  choice(GRAINS, {
    says: "side grain or end grain of the member that holds the point",
    also: { "side grain": "side", "end grain": "end" },
  }),
  "side",
  "into side grain",
);

export const force = (says: string) =>
  quantity("lb", { says, above: 0, max: 1e6, usual: { min: 10, max: 20_000, ask: "is it in pounds?" } });

/** Terms of every adjusted value: those with a place, and those without. */
export const placedTerms = { loadDuration: needed("load duration"), woodService: orElse("wood service") } as const;
export const namedTerms = { designMethod: orElse("design method"), woodStandard: orElse("wood standard") } as const;

export function conditionsOf(a: {
  readonly loadDuration: Duration;
  readonly woodService: "dry" | "wet";
  readonly designMethod: LoadLevel;
  readonly woodStandard: string;
}): Conditions {
  return { duration: a.loadDuration, service: a.woodService, method: a.designMethod, edition: a.woodStandard };
}

/** What a member is made of: its specific gravity, or the word for steel or a panel. */
function materialOf(word: string, at: string): Material {
  if (word.toLowerCase() === "steel") return { kind: "steel" };
  const panel = Object.keys(PANEL_BEARING).find((name) => name.toLowerCase() === word.toLowerCase());
  if (panel !== undefined) return { kind: "panel", name: panel };
  const value = Number(word);
  if (word !== "" && Number.isFinite(value)) return { kind: "wood", gravity: value };
  throw new BadInput(
    `${at[0]?.toUpperCase()}${at.slice(1)} is "${word}"`,
    `a specific gravity such as 0.5 is wanted, or steel, ${Object.keys(PANEL_BEARING).join(", ")}`,
    "Type one of these",
  );
}

/** The columns of members that the functions of fasteners share. */
export const memberColumns = {
  member: text({ says: "side or main, and second side where there are three", heads: ["name"] }),
  thickness: length("in", {
    says: "thickness; of the member that holds the point the penetration without the tip",
    min: 0.01,
    max: 24,
  }),
  gravity: mapped(
    text({
      says: "specific gravity of the wood, or steel, OSB, plywood, Structural I plywood",
      heads: ["material", "gravity or steel", "specific gravity", "g"],
    }),
    materialOf,
  ),
  angle: optional(measure("deg", { says: "angle of the load to the grain", min: 0, max: 90 }), 0, "along the grain"),
} as const;

export interface MemberRow {
  readonly member: string;
  readonly thickness: number;
  readonly gravity: Material;
  readonly angle: number;
}

export interface Roles<R> {
  readonly side: R;
  readonly main: R;
  readonly second: R | undefined;
}

/**
 * Which row is which: by the word main, else the last of two and the middle of three.
 * @throws BadInput for a row called main in another place than these, or several
 */
export function rolesOf<R extends { readonly member: string }>(rows: readonly R[]): Roles<R> {
  const mains = rows.filter((r) => /\bmain\b/i.test(r.member));
  const [first, next, last] = rows as readonly [R, R, R?];
  const [named] = mains;
  if (mains.length > 1 || (rows.length === 3 && named !== undefined && named !== next)) {
    throw new BadInput(
      mains.length > 1 ? "Two members are called main" : `${named?.member} does not stand between its sides`,
      "members go from the head: side, main, and the second side in double shear",
      "Put the rows in that order",
    );
  }
  if (last !== undefined) return { side: first, main: next, second: last };
  return named === first
    ? { side: next, main: first, second: undefined }
    : { side: first, main: next, second: undefined };
}

export function memberOf(row: MemberRow): Member {
  return { name: row.member, thicknessIn: row.thickness, material: row.gravity, angleDeg: row.angle };
}
