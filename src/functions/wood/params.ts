import type { LoadDuration } from "../../core/kit/load-duration.ts";
import type { LoadLevel } from "../../core/kit/load-level.ts";
import type { Tape } from "../../core/kit/tape.ts";
import type { Check } from "../../core/wood/check.ts";
import type { Use } from "../../core/wood/use.ts";
import { needed, orElse } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { whole } from "../declare/scalar.ts";

export const CAUTION = preliminary("wood member");

export const spans = optional(whole({ says: "equal spans in a row: 1, 2 or 3", min: 1, max: 3 }), 1, "one simple span");

/** Terms that nearly every function of the family takes. */
export const loadDuration = needed("load duration");
export const deflectionLimit = needed("deflection limit");
export const woodService = orElse("wood service");
export const designMethod = orElse("design method");
export const woodStandard = orElse("wood standard");

interface UseArguments {
  readonly loadDuration: LoadDuration | number;
  readonly woodService: "dry" | "wet";
  readonly designMethod: LoadLevel;
  readonly woodStandard: string;
}

export function useOf(a: UseArguments, tape?: Tape): Use {
  tape?.step("standard", `NDS ${a.woodStandard}, ${a.designMethod} design`, `NDS ${a.woodStandard}`, "", "as asked");
  return {
    method: a.designMethod,
    duration: a.loadDuration,
    wet: a.woodService === "wet",
    edition: a.woodStandard,
  };
}

export const checkColumns = columnsOf<Check>(
  ["check", "", (c) => c.check],
  ["demand", "", (c) => c.demand],
  ["capacity", "", (c) => c.capacity],
  ["unit", "", (c) => c.unit],
  ["ratio", "", (c) => c.ratio],
  ["clause", "", (c) => c.clause],
);

/** Sources that the family shares. */
export const NDS_SOURCE =
  "NDS 2018 chapters 2 to 4, 8 and Appendix N: formulas and factors from memory, confirmed by printed examples as the tests list";
export const GRADES_FROM_MEMORY =
  "Generic grades: NDS Supplement 2018 Tables 4A, 4B, from memory; Fb and E agree with the spans printed in IRC 2018 Table R802.5.1(2)";
