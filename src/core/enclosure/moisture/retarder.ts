import { cautionRecalled } from "../../kit/known.ts";
import { OutOfRange, plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { type Zone, zoneColumn, zoneName } from "../climate/zone.ts";
import {
  BARRED_2021,
  type ByStud,
  CLASS_CLAUSE,
  CLASS_II_R,
  CLASS_III_R,
  CLASS_LIMITS_PERM,
  FOAM_AS_CI_PERM,
  NO_RETARDER_2021,
  RETARDER_CLAUSE,
  RETARDER_ZONES,
  type RetarderEdition,
  VARIABLE_WET_CUP_PERM,
  VENTED_OVER,
} from "../tables/retarders.ts";
import { cautionSunDriven } from "./sun-driven.ts";

/**
 * Vapor retarder class of a permeance.
 * @param perm dry cup, 0 or more
 * @returns "I", "II", "III" or "none" (vapor permeable, above 10 perm)
 * Source: IRC 2021 R202.
 */
export function retarderClass(perm: number, tape?: Tape): string {
  within("The permeance", perm, 0, 1e6, "perm", "a permeance is 0 or more");
  const { I, II, III } = CLASS_LIMITS_PERM;
  const result = perm <= I ? "I" : perm <= II ? "II" : perm <= III ? "III" : "none";
  const rule = `${plain(perm)} perm: I to ${I}, II to ${II}, III to ${III} perm`;
  tape?.step("class", rule, result, "", CLASS_CLAUSE);
  return result;
}

export const SHEATHINGS = ["wood panel", "fiberboard", "gypsum", "other"] as const;
export type Sheathing = (typeof SHEATHINGS)[number];
export type Stud = keyof ByStud;

/** What a wall offers beside its inside retarder. */
export interface RetarderWall {
  readonly stud: Stud;
  /** continuous insulation outside the sheathing, h ft2 F/Btu */
  readonly outsideR: number;
  readonly ventedCladding: boolean;
  readonly sheathing: Sheathing;
}

/** A class of retarder inside and what the code says to it. */
export interface RetarderRow {
  readonly cls: "I" | "II" | "variable" | "III" | "none";
  readonly allowed: boolean;
  readonly why: string;
}

/**
 * Which class of vapor retarder the code lets stand on the inside of a framed wall.
 * @throws OutOfRange for zone 0
 * Source: IRC 2018 R702.7, Table R702.7.1; IRC 2021 R702.7, Tables R702.7(1) to (4) and their notes.
 */
export function retarderRule(
  zone: Zone,
  wall: RetarderWall,
  edition: RetarderEdition,
  tape?: Tape,
): readonly RetarderRow[] {
  const key = zoneColumn(zone, tape);
  if (zone.number === 0) {
    throw new OutOfRange("Zone 0 is not in the table", `${RETARDER_CLAUSE[edition]} begins with zone 1`, "Use zone 1");
  }
  const rows = edition === "2018" ? rows2018(key, wall) : rows2021(key, wall, zoneName(zone));
  notes(key, edition, wall, tape);
  cautionSunDriven(zone, wall.ventedCladding, tape);
  return rows;
}

const NOT_REQUIRED = "none is required here";
const ONE_OR_TWO = "class I or II is the rule here";

function rows2018(key: string, wall: RetarderWall): readonly RetarderRow[] {
  const wanted = RETARDER_ZONES.some((z) => z === key);
  const why = wanted ? ONE_OR_TWO : NOT_REQUIRED;
  return [
    { cls: "I", allowed: true, why },
    { cls: "II", allowed: true, why },
    classThree(key, wall),
    { cls: "none", allowed: !wanted, why },
  ];
}

function rows2021(key: string, wall: RetarderWall, name: string): readonly RetarderRow[] {
  const barred = BARRED_2021[key] ?? [];
  const free = NO_RETARDER_2021.some((z) => z === key);
  const bar = (cls: "I" | "II"): RetarderRow => ({ cls, allowed: false, why: `barred on the inside in zone ${name}` });
  return [
    barred.includes("I") ? bar("I") : { cls: "I", allowed: true, why: "class I or II is the rule here" },
    barred.includes("II") ? bar("II") : classTwo(key, wall),
    {
      cls: "variable",
      allowed: true,
      why: `class I or II by dry cup and over ${VARIABLE_WET_CUP_PERM} perm by wet cup stands in every zone (note a)`,
    },
    classThree(key, wall),
    {
      cls: "none",
      allowed: free,
      why: free ? NOT_REQUIRED : key === "4" ? "class II or III is wanted here" : ONE_OR_TWO,
    },
  ];
}

/** Note c: foam sheathing outside over a class II retarder wants the R of Table R702.7(4). */
function classTwo(key: string, { outsideR, stud }: RetarderWall): RetarderRow {
  const least = CLASS_II_R[key]?.[stud];
  if (outsideR === 0 || least === undefined) {
    return { cls: "II", allowed: true, why: "permitted, with no continuous insulation outside" };
  }
  const found = `R-${plain(outsideR)} outside, R-${plain(least)} wanted by Table R702.7(4)`;
  return { cls: "II", allowed: outsideR >= least, why: `${found}, and over ${VARIABLE_WET_CUP_PERM} perm by wet cup` };
}

function classThree(key: string, wall: RetarderWall): RetarderRow {
  const row = CLASS_III_R[key];
  if (row === undefined) return { cls: "III", allowed: true, why: "permitted here" };
  const least = row[wall.stud];
  const over = VENTED_OVER[key] ?? [];
  if (wall.outsideR >= least) {
    return { cls: "III", allowed: true, why: `R-${plain(wall.outsideR)} outside, R-${plain(least)} wanted` };
  }
  if (wall.ventedCladding && over.includes(wall.sheathing)) {
    return { cls: "III", allowed: true, why: `vented cladding over ${wall.sheathing}` };
  }
  const vented = over.length === 0 ? "" : `, or vented cladding over ${over.join(", ")}`;
  return { cls: "III", allowed: false, why: `wants R-${plain(least)} continuous outside (${wall.stud})${vented}` };
}

function notes(key: string, edition: RetarderEdition, wall: RetarderWall, tape: Tape | undefined): void {
  if (edition === "2018")
    cautionRecalled(tape, "The rule of IRC 2018 R702.7 (its table was found in print)", "the code");
  if (edition === "2024") {
    tape?.caution(
      "IRC 2024 adds a Table R702.7(5) that was not found in print; the answer is that of the 2021 tables.",
    );
  }
  const cold = RETARDER_ZONES.some((z) => z === key);
  if (cold || key === "4") {
    tape?.assume(
      "exceptions of R702.7 not used: basement walls, below-grade parts, and walls that moisture or freezing does not harm",
    );
  }
  if (cold) tape?.caution("Class I on both faces of a wall needs an approved design (Table R702.7(2) note b).");
  if (wall.outsideR > 0) {
    tape?.assume(
      `spray foam of up to ${FOAM_AS_CI_PERM} perm at its thickness, inside the sheathing, counts as continuous insulation too (R702.7.1)`,
    );
  }
  tape?.caution(
    "The tables are made for stud cavities. With a thick panel inside and all insulation outside, the panel is itself the vapor retarder: PERM_LAYER and RETARDER_CLASS give its class by its thickness. Check how the wall dries.",
  );
}
