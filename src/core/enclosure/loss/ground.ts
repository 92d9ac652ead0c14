import { BadInput, OutOfRange, plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import {
  BASEMENT_SOURCE,
  BASEMENTS,
  CRAWL_SOURCE,
  FLOORS,
  OPEN_FLOOR_SOURCE,
  SLAB_F,
  SLAB_SOURCE,
} from "../tables/ground.ts";

export const GROUND_KINDS = ["slab", "heated slab", "basement", "crawl space", "open crawl space"] as const;
export type GroundKind = (typeof GROUND_KINDS)[number];

/** Heat that goes into the ground, and the edge factor it rests on. */
export interface GroundLoss {
  readonly btuH: number;
  /** Btu/(h ft F) of edge; "" for a crawl space, which goes by the area of its floor */
  readonly fFactor: number | "";
}

/** What stands on or in the ground. */
export interface Ground {
  readonly kind: GroundKind;
  readonly perimeterFt: number;
  /** of the walls below grade, or of the floor over a crawl space; undefined for a slab on grade */
  readonly areaFt2: number | undefined;
  /** as the tables write it: "R-10 2 ft vertical", "R-19 interior", "R-19 perimeter", "R-30 floor", "none" */
  readonly insulation: string;
}

/**
 * Heat loss of a slab on grade (F P dT), of a basement's walls below grade and slab (U A dT + F P dT), or of the floor over a crawl space (U A dT).
 * @throws BadInput for an insulation that the table has no row for; OutOfRange for a depth that is not in it
 * Source: Washington Administrative Code 51-11C-61061 Table A106.1; 51-11-0530 Table 5-1; 51-11C-61051 Tables A105.1.
 */
export function groundLoss(g: Ground, insideF: number, outsideF: number, tape?: Tape): GroundLoss {
  within("The perimeter", g.perimeterFt, 0, 100_000, "ft", "a building's edge");
  const dT = insideF - outsideF;
  if (g.kind === "crawl space" || g.kind === "open crawl space") return crawlSpace(g, dT, tape);
  const { fFactor, wallBtuHF } = g.kind === "basement" ? basement(g, tape) : slab(g, tape);
  const perDegree = fFactor * g.perimeterFt + wallBtuHF;
  const btuH = perDegree * dT;
  const walls = wallBtuHF === 0 ? "" : ` + ${plain(wallBtuHF)}`;
  const rule = `(${plain(fFactor)} x ${plain(g.perimeterFt)}${walls}) x ${plain(dT)}`;
  tape?.step("q", rule, btuH, "Btu/h", g.kind === "basement" ? BASEMENT_SOURCE : SLAB_SOURCE);
  return { btuH, fFactor };
}

function slab(g: Ground, tape: Tape | undefined): { fFactor: number; wallBtuHF: number } {
  const own = SLAB_F.filter((row) => row.kind === g.kind);
  const row = own.find((r) => r.insulation === g.insulation);
  if (row === undefined) throw noRow(g, own);
  tape?.assume("6 in of concrete with its bottom at grade, soil of k 0.75 Btu/(h ft F)");
  tape?.step("F", `${g.kind}, insulation ${g.insulation}`, row.f, "Btu/(h ft F)", SLAB_SOURCE);
  return { fFactor: row.f, wallBtuHF: 0 };
}

function basement(g: Ground, tape: Tape | undefined): { fFactor: number; wallBtuHF: number } {
  const own = BASEMENTS.filter((row) => row.insulation === g.insulation);
  if (own.length === 0) throw noRow(g, BASEMENTS);
  if (g.areaFt2 === undefined) {
    throw new BadInput(
      "The basement has no area",
      "its walls below grade count by their area, and the area over the perimeter is their depth",
      "Give the area of the walls below grade",
    );
  }
  const depthFt = g.areaFt2 / g.perimeterFt;
  // The table has three depths; between them the shallower one is the larger U, and the safe one.
  const row = [...own].reverse().find((r) => r.depthFt <= depthFt + 1e-9);
  const deepest = own.at(-1)?.depthFt ?? 0;
  if (row === undefined || depthFt > deepest + 1e-9) {
    throw new OutOfRange(
      `The walls reach ${plain(depthFt)} ft below grade`,
      `the table holds depths from ${own[0]?.depthFt} to ${deepest} ft (${BASEMENT_SOURCE})`,
      "Check area and perimeter, or use a method made for the case",
    );
  }
  if (row.slabF === undefined) {
    throw new OutOfRange(
      `The slab factor is not printed for ${g.insulation}`,
      `${BASEMENT_SOURCE} was read with its wall only`,
      `Use one of ${[...new Set(BASEMENTS.filter((b) => b.slabF !== undefined).map((b) => b.insulation))].join(", ")}`,
    );
  }
  const wallBtuHF = row.wallU * g.areaFt2;
  tape?.assume(`the row of ${row.depthFt} ft stands for a depth of ${plain(Number(depthFt.toPrecision(3)))} ft`);
  tape?.step("U", `wall below grade, ${g.insulation}`, row.wallU, "Btu/(h ft2 F)", BASEMENT_SOURCE);
  tape?.step("UA", `${row.wallU} x ${plain(g.areaFt2)}`, wallBtuHF, "Btu/(h F)", BASEMENT_SOURCE);
  tape?.step("F", "slab at the foot of the wall", row.slabF, "Btu/(h ft F)", BASEMENT_SOURCE);
  return { fFactor: row.slabF, wallBtuHF };
}

/** The heat goes by the floor's area: the tables fold the edge into U. */
function crawlSpace(g: Ground, dT: number, tape: Tape | undefined): GroundLoss {
  const own = FLOORS.filter((row) => row.kind === g.kind);
  const row = own.find((r) => r.insulation === g.insulation);
  if (row === undefined) throw noRow(g, own);
  if (g.areaFt2 === undefined) {
    throw new BadInput(
      `The ${g.kind} has no area`,
      "its heat goes by the area of the floor above it",
      "Give the area of the floor",
    );
  }
  const greatest = g.perimeterFt ** 2 / (4 * Math.PI);
  if (g.areaFt2 > greatest) {
    throw new BadInput(
      `A floor of ${plain(g.areaFt2)} ft2 has a longer edge than ${plain(g.perimeterFt)} ft`,
      `even a round one of that edge has ${plain(Math.round(greatest))} ft2`,
      "Check perimeter and area",
    );
  }
  const heated = g.kind === "crawl space";
  tape?.assume(
    heated
      ? "the crawl space serves as a heated plenum; insulation from the rim joist down to its floor and 24 in inward on the ground cover"
      : "wood joists 16 in on centers over outdoor air, insulation under the subfloor; carpet on a pad",
  );
  const source = heated ? CRAWL_SOURCE : OPEN_FLOOR_SOURCE;
  tape?.step("U", `floor over ${g.kind}, ${g.insulation}`, row.u, "Btu/(h ft2 F)", source);
  const btuH = row.u * g.areaFt2 * dT;
  tape?.step("q", `${row.u} x ${plain(g.areaFt2)} x ${plain(dT)}`, btuH, "Btu/h", source);
  return { btuH, fFactor: "" };
}

function noRow(g: Ground, rows: readonly { readonly insulation: string }[]): BadInput {
  return new BadInput(
    `The insulation "${g.insulation}" is not in the table for a ${g.kind}`,
    "only printed rows are used, never a value between them",
    `Use one of: ${[...new Set(rows.map((r) => r.insulation))].join("; ")}`,
  );
}
