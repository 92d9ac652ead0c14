import { BadInput, OutOfRange, plain } from "../kit/refusal.ts";
import type { Table, Tape } from "../kit/tape.ts";
import {
  BARRED_2021,
  CLASS_CLAUSE,
  CLASS_III_R,
  CLASS_LIMITS_PERM,
  RETARDER_CLAUSE,
  RETARDER_ZONES,
  type RetarderEdition,
  UNVENTED_ROOF_CLAUSE,
  UNVENTED_ROOF_FOUND,
  UNVENTED_ROOF_R,
  VENTED_OVER,
} from "./tables/retarders.ts";
import { isMarine4, type Zone, zoneName } from "./zone.ts";

/**
 * Vapor retarder class of a permeance.
 * @param perm dry cup, 0 or more
 * @returns "I", "II", "III" or "none" (vapor permeable, above 10 perm)
 * Source: IRC 2021 R202.
 */
export function retarderClass(perm: number, tape?: Tape): string {
  if (!(perm >= 0))
    throw new BadInput(`The permeance is ${perm} perm`, "it is 0 or more", "Give the dry-cup permeance");
  const { I, II, III } = CLASS_LIMITS_PERM;
  const result = perm <= I ? "I" : perm <= II ? "II" : perm <= III ? "III" : "none";
  const rule = `${plain(perm)} perm: I to ${I}, II to ${II}, III to ${III} perm`;
  tape?.step("class", rule, result, "", CLASS_CLAUSE);
  return result;
}

export const SHEATHINGS = ["wood panel", "fiberboard", "gypsum", "other"] as const;
export type Sheathing = (typeof SHEATHINGS)[number];
export type Stud = "2x4" | "2x6";

/** What a wall offers beside its inside retarder. */
export interface RetarderWall {
  readonly stud: Stud;
  /** continuous insulation outside the sheathing, h ft2 F/Btu */
  readonly outsideR: number;
  readonly ventedCladding: boolean;
  readonly sheathing: Sheathing;
}

/**
 * Which class of vapor retarder the code lets stand on the inside of a framed wall.
 * @returns rows for class I, II, III and none: class, "allowed" or "not allowed", why
 * Source: IRC 2018 R702.7, Table R702.7.1; IRC 2021 R702.7, Tables R702.7(1) to (3).
 */
export function retarderRule(zone: Zone, wall: RetarderWall, edition: RetarderEdition, tape?: Tape): Table {
  const key = isMarine4(zone, tape) ? "4C" : String(zone.number);
  const clause = RETARDER_CLAUSE[edition];
  if (zone.number === 0) {
    throw new OutOfRange("Zone 0 is not in the table", `${clause} begins with zone 1`, "Use the row of zone 1");
  }
  const wanted = RETARDER_ZONES.some((z) => z === key);
  const barred = edition === "2021" ? (BARRED_2021[key] ?? []) : [];
  const three = classThree(key, wall, wanted);
  const oneOrTwo = (cls: "I" | "II") =>
    barred.includes(cls)
      ? [cls, "not allowed", `barred on the inside in zone ${zoneName(zone)}`]
      : [cls, "allowed", wanted ? "class I or II is the rule here" : "none is required here"];
  const rows = [
    oneOrTwo("I"),
    oneOrTwo("II"),
    ["III", three.allowed ? "allowed" : "not allowed", three.why],
    ["none", wanted ? "not allowed" : "allowed", wanted ? "class I or II is the rule here" : "none is required here"],
  ];
  tape?.step("rule", `zone ${zoneName(zone)}, ${wall.stud}, R-${plain(wall.outsideR)} outside`, rows, "", clause);
  retarderNotes(key, edition, wanted, wall, tape);
  return rows;
}

function classThree(key: string, wall: RetarderWall, wanted: boolean): { allowed: boolean; why: string } {
  if (!wanted) return { allowed: true, why: "none is required here" };
  const least = CLASS_III_R[key]?.[wall.stud] ?? Number.POSITIVE_INFINITY;
  const over = VENTED_OVER[key] ?? [];
  if (wall.outsideR >= least)
    return { allowed: true, why: `R-${plain(wall.outsideR)} outside, R-${plain(least)} wanted` };
  if (wall.ventedCladding && over.includes(wall.sheathing)) {
    return { allowed: true, why: `vented cladding over ${wall.sheathing}` };
  }
  const vented = over.length === 0 ? "" : `, or vented cladding over ${over.join(", ")}`;
  return { allowed: false, why: `wants R-${plain(least)} continuous outside (${wall.stud})${vented}` };
}

function retarderNotes(
  key: string,
  edition: RetarderEdition,
  wanted: boolean,
  wall: RetarderWall,
  tape: Tape | undefined,
): void {
  if (edition === "2021" && key === "4") tape?.caution("That class I is barred in zone 4 (not marine) is from memory.");
  if (edition === "2018") tape?.caution("IRC 2018 R702.7 itself is from memory; its table was found in print.");
  if (edition === "2021" && wanted && wall.outsideR > 0) {
    tape?.caution(
      "With a class I or II retarder inside and insulation outside, IRC 2021 Table R702.7(4) asks a least R that was not found in print: check it.",
    );
  }
  if (wanted) {
    tape?.assume(
      "exceptions of R702.7 not used: basement walls, below-grade parts, and walls that moisture or freezing does not harm",
    );
  }
  tape?.caution(
    "The table is made for stud cavities. With a thick panel inside and all insulation outside, the panel is itself the vapor retarder (often class II when dry): check how the wall dries.",
  );
}

/**
 * Least R of air-impermeable insulation for condensation control in an unvented attic or roof.
 * @returns h ft2 F/Btu
 * @throws OutOfRange for zone 0
 * Source: IRC Table R806.5.
 */
export function unventedRoofR(zone: Zone, tape?: Tape): number {
  const key = isMarine4(zone, tape) ? "4C" : String(zone.number);
  const rIp = UNVENTED_ROOF_R[key];
  if (rIp === undefined) {
    throw new OutOfRange(
      `Zone ${zoneName(zone)} is not in the table`,
      `${UNVENTED_ROOF_CLAUSE} begins with zone 1`,
      "Ask the building department",
    );
  }
  if (!UNVENTED_ROOF_FOUND.some((z) => z === key)) {
    tape?.caution(`This cell of ${UNVENTED_ROOF_CLAUSE} is from memory: check it against the code.`);
  }
  if ((key === "2" || key === "3") && zone.regime === "B") {
    tape?.assume("the exception for tile roofs in zones 2B and 3B is not used");
  }
  tape?.step("R", `zone ${zoneName(zone)}`, rIp, "h ft2 F/Btu", UNVENTED_ROOF_CLAUSE);
  return rIp;
}
